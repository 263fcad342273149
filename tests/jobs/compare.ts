import { isCellError } from '../../src/formula/errors';
import {
  isContains,
  isRefused,
  type Margin,
  MARGINS,
  type Refused,
  rowsOf,
  type Step,
  type Value,
  type Within,
} from './job';
import type { Answer } from './work';

const marginOf = (within: Within): Margin => (typeof within === 'string' ? MARGINS[within] : within);

/** How far below and above a number an answer may lie. */
export function reachOf(wanted: number, within: Within): { readonly under: number; readonly over: number } {
  const { absolute = 0, relative = 0, under = 0, over = 0 } = marginOf(within);
  const both = absolute + relative * Math.abs(wanted);
  return { under: both + under, over: both + over };
}

const shown = (value: unknown): string => JSON.stringify(value);

function wrongNumber(found: unknown, wanted: number, within: Within | undefined): string | undefined {
  if (within === undefined) return `how near to ${wanted} it must come is not said`;
  if (typeof found !== 'number') return `${shown(found)} instead of ${wanted}`;
  const { under, over } = reachOf(wanted, within);
  return found >= wanted - under && found <= wanted + over ? undefined : `${found} instead of ${wanted}`;
}

function wrongCell(found: unknown, wanted: Value, within: Within | undefined): string | undefined {
  if (wanted === null) return isCellError(found) ? shown(found) : undefined;
  if (typeof wanted === 'number') return wrongNumber(found, wanted, within);
  return found === wanted ? undefined : `${shown(found)} instead of ${shown(wanted)}`;
}

function notRefused(found: unknown, { error, says }: Refused): string | undefined {
  if (!isCellError(found) || found.error !== error) return `${shown(found)} instead of ${error}`;
  if (!found.message) return `${error} without a sentence`;
  if (says === undefined || found.message.includes(says)) return undefined;
  return `${error} says ${shown(found.message)}, and not ${shown(says)}`;
}

const size = (rows: Answer): string => `${rows.length} × ${rows[0]?.length ?? 0}`;

function wrongRows(
  answer: Answer,
  wanted: readonly (readonly Value[])[],
  within: Within | undefined,
): string[] {
  if (size(answer) !== size(wanted))
    return [`${size(answer)} cells instead of ${size(wanted)}: ${shown(answer)}`];
  return wanted.flatMap((row, i) =>
    row.flatMap((value, j) => wrongCell(answer[i]?.[j], value, within) ?? []),
  );
}

/** What is wrong with the answer to a step; nothing where it comes out as it must. */
export function faults(answer: Answer, { expect, within }: Pick<Step, 'expect' | 'within'>): string[] {
  if (answer.flat().length === 0) return ['no cell at all'];
  // how many cells a refusal takes is not laid down
  if (isRefused(expect)) return answer.flat().flatMap((cell) => notRefused(cell, expect) ?? []);
  if (!isContains(expect)) return wrongRows(answer, rowsOf(expect), within);
  const [[text] = []] = answer;
  if (size(answer) === '1 × 1' && typeof text === 'string' && text.includes(expect.contains)) return [];
  return [`${shown(answer)} does not contain ${shown(expect.contains)}`];
}
