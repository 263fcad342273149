import type { Fail, FailKind } from '../exposure/core/result';

/** The error values that cells hold. A host that has fewer says the nearest. */
export type ErrorCode =
  '#VALUE!' | '#NUM!' | '#N/A' | '#DIV/0!' | '#REF!' | '#NAME?' | '#NULL!' | '#SPILL!' | '#CALC!' | '#BUSY!';

/** An error value, coming in from a cell or going out to one. Ours carry a sentence for the person at the sheet. */
export interface CellError {
  readonly error: ErrorCode;
  readonly message?: string;
}

const CODES: Readonly<Record<FailKind, ErrorCode>> = {
  unreadable: '#VALUE!',
  domain: '#NUM!',
  'no-answer': '#N/A',
};

export const cellError = (error: ErrorCode, message?: string): CellError =>
  message === undefined ? { error } : { error, message };
export const isCellError = (x: unknown): x is CellError =>
  typeof x === 'object' && x !== null && 'error' in x;
export const fromFail = ({ fail, message }: Fail): CellError => ({ error: CODES[fail], message });
