import { failed, refusedBy } from '../../pane/sentences';

interface Refusal {
  readonly happened: string;
  readonly todo: string;
}

const EDITING: Refusal = {
  happened: 'A cell is being typed in, and Excel takes nothing else meanwhile.',
  todo: 'Press Enter or Esc in that cell, then try again.',
};
const PROTECTED: Refusal = {
  happened: 'The workbook or the sheet is protected, or open for reading only.',
  todo: 'Take the protection off, or save a copy of the workbook and work there.',
};
const TOO_LARGE: Refusal = {
  happened: 'That was more than Excel takes or gives at once.',
  todo: 'Close other large workbooks, or try in a new workbook.',
};
const LOST: Refusal = {
  happened: 'The connection to Excel broke off.',
  todo: 'Check the network, wait until the workbook answers again, then try again.',
};
const TOO_OLD: Refusal = {
  happened: 'This Excel is too old for that.',
  todo: 'Update Excel, or open the workbook in Excel on the web.',
};
const BUSY: Refusal = {
  happened: 'Excel is busy with something else, or waits for an answer.',
  todo: 'Close any window that Excel has open, wait a moment, then try again.',
};
const NOT_HERE: Refusal = {
  happened: 'This does not work on the sheet or in the cells that are selected.',
  todo: 'Go to an ordinary sheet, select one cell, then try again.',
};
const MEANWHILE: Refusal = {
  happened: 'Somebody or something changed the workbook at the same moment.',
  todo: 'Try again.',
};

/** What Excel's and its library's codes mean to a person. */
export const REFUSALS: Readonly<Record<string, Refusal>> = {
  InvalidOperationInCellEditMode: EDITING,
  AccessDenied: PROTECTED,
  RequestPayloadSizeLimitExceeded: TOO_LARGE,
  ResponsePayloadSizeLimitExceeded: TOO_LARGE,
  OperationCellsExceedLimit: TOO_LARGE,
  RangeExceedsLimit: TOO_LARGE,
  ConnectionFailure: LOST,
  InvalidOrTimedOutSession: LOST,
  Timeout: LOST,
  RequestAborted: LOST,
  ApiNotFound: TOO_OLD,
  NotImplemented: TOO_OLD,
  UnsupportedFeature: TOO_OLD,
  ActivityLimitReached: BUSY,
  WriteNotSupportedWhenModalDialogOpen: BUSY,
  InvalidOperation: NOT_HERE,
  InvalidSelection: NOT_HERE,
  UnsupportedOperation: NOT_HERE,
  UnsupportedSheet: NOT_HERE,
  InactiveWorkbook: NOT_HERE,
  Conflict: MEANWHILE,
  ItemAlreadyExists: MEANWHILE,
  ItemNotFound: MEANWHILE,
};

const property = (of: unknown, name: string): unknown =>
  typeof of === 'object' && of !== null ? (of as Record<string, unknown>)[name] : undefined;
const text = (value: unknown): string => (typeof value === 'string' ? value : '');

/** The code of an error of Excel's, such as AccessDenied; empty for any other. */
export const codeOf = (error: unknown): string => text(property(error, 'code'));
/** The member that Excel refused, such as WorksheetCollection.add; empty where it does not say. */
export const locationOf = (error: unknown): string =>
  text(property(property(error, 'debugInfo'), 'errorLocation'));

function unknownRefusal(error: unknown): Refusal {
  const reason = codeOf(error) || text(property(error, 'message'));
  return {
    happened: refusedBy('Excel', reason),
    todo: 'Try again, or in a new workbook; if it stays, restart Excel.',
  };
}

/** An error as a person can use it: what happened, what was kept, what to do. */
export function excelRefusal(error: unknown, kept: string): string {
  const code = codeOf(error);
  const { happened, todo } = (Object.hasOwn(REFUSALS, code) && REFUSALS[code]) || unknownRefusal(error);
  return failed(happened, kept, todo);
}
