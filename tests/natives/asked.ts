import type { Draws } from '../hostile/draws';
import type { Answer } from './answers';

/** Who says what a formula is to give. */
export type Judge =
  /** LibreOffice calculates the formula itself. */
  | { readonly by: 'LibreOffice' }
  /** It lacks a function and calculates the same from older ones. */
  | { readonly by: 'older functions'; readonly formula: string }
  /** It lacks LET, LAMBDA and what calls them, and calculates the formula with the values put in for the names. */
  | { readonly by: 'substitution'; readonly formula: string }
  /** It lacks SEQUENCE and calculates the one element that is asked for. */
  | { readonly by: 'element by element'; readonly formula: string }
  /** The documentation prints the answer, or a rule that leaves no choice. */
  | {
      readonly by: 'documentation';
      readonly answer: Answer;
      readonly source: string;
      readonly digits?: number;
    };

export interface Asked {
  readonly formula: string;
  readonly judge: Judge;
}

/** Draws one formula of a family. */
export type Family = (draw: Draws) => Asked;

const OFFICE = { by: 'LibreOffice' } as const;
export const asks = (formula: string): Asked => ({ formula: `=${formula}`, judge: OFFICE });
export const older = (formula: string, same: string): Asked => ({
  formula: `=${formula}`,
  judge: { by: 'older functions', formula: `=${same}` },
});
export const substituted = (formula: string, same: string): Asked => ({
  formula: `=${formula}`,
  judge: { by: 'substitution', formula: `=${same}` },
});
export const element = (formula: string, same: string): Asked => ({
  formula: `=${formula}`,
  judge: { by: 'element by element', formula: `=${same}` },
});
export const documented = (formula: string, answer: Answer, source: string, digits?: number): Asked => ({
  formula: `=${formula}`,
  judge: { by: 'documentation', answer, source, ...(digits === undefined ? {} : { digits }) },
});
