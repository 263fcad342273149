import type { Fail, FailKind } from '../exposure/core/result';

/** The error values that cells hold. A host that has fewer says the nearest. */
/* prettier-ignore */
export const ERROR_CODES = ['#VALUE!', '#NUM!', '#N/A', '#DIV/0!', '#REF!', '#NAME?', '#NULL!', '#SPILL!', '#CALC!', '#BUSY!'] as const;
export type ErrorCode = (typeof ERROR_CODES)[number];

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
/** A cell's value where a host tells errors as texts: "#N/A" is an error, everything else itself. */
export const errorFromText = (value: unknown): unknown =>
  (ERROR_CODES as readonly unknown[]).includes(value) ? cellError(value as ErrorCode) : value;
export const isCellError = (x: unknown): x is CellError =>
  typeof x === 'object' &&
  x !== null &&
  'error' in x &&
  (ERROR_CODES as readonly unknown[]).includes(x.error);
/** The error that a host names. One that cells of ours do not hold is #VALUE!. */
export function errorNamed(name: unknown): CellError {
  const known = errorFromText(name);
  return isCellError(known) ? known : cellError('#VALUE!');
}
export const fromFail = ({ fail, message }: Fail): CellError => ({ error: CODES[fail], message });
