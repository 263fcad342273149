import type { AnyRow } from '../../catalogue/types';
import { call } from '../../cells/call';
import { type CellError, type ErrorCode, errorNamed, isCellError } from '../../formula/errors';

type Excel = typeof CustomFunctions;

/** The error values that Excel takes from a custom function. It knows more, but turns those into #VALUE! itself. */
const OUT: Partial<Record<ErrorCode, keyof typeof CustomFunctions.ErrorCode>> = {
  '#VALUE!': 'invalidValue',
  '#N/A': 'notAvailable',
  '#NUM!': 'invalidNumber',
  '#DIV/0!': 'divisionByZero',
  '#NULL!': 'nullReference',
};

/**
 * Tells Excel which code answers for which function.
 *
 * This has to happen while the page is still loading: Excel calculates an opened workbook at once, and writes #NAME? where
 * it finds nothing. `CustomFunctions.Error` comes only later, with the part of the library made for the host, and so is looked
 * up when a function runs.
 */
export function register(excel: Excel, rows: readonly AnyRow[]): void {
  for (const row of rows) {
    // Excel's own last argument, about the call itself, comes after those that were typed.
    excel.associate(row.id, (...given: unknown[]) => {
      const cells = given.slice(0, -1).map((argument) => fromExcel(excel, argument));
      return toExcel(excel, call(row, cells));
    });
  }
}

const fromExcel = (excel: Excel, argument: unknown): unknown =>
  Array.isArray(argument)
    ? (argument as unknown[][]).map((line) => line.map((cell) => cellFromExcel(excel, cell)))
    : cellFromExcel(excel, argument);

/** Errors become ours; of a cell that holds more than a value (a formatted number, an entity) the plain value counts. */
function cellFromExcel(excel: Excel, cell: unknown): unknown {
  if (cell instanceof excel.Error) return errorNamed(cell.code);
  if (typeof cell !== 'object' || cell === null || !('basicValue' in cell)) return cell;
  const rich = cell as { basicValue: unknown; basicType?: unknown; type?: unknown };
  return rich.type === 'Error' || rich.basicType === 'Error' ? errorNamed(rich.basicValue) : rich.basicValue;
}

/** The functions are declared to give a range, so a single answer is a range of one cell. */
function toExcel(excel: Excel, answer: ReturnType<typeof call>): unknown[][] {
  const block = Array.isArray(answer) ? answer : [[answer]];
  const only = block.length === 1 && block[0]?.length === 1 ? block[0][0] : undefined;
  if (isCellError(only)) throw errorToExcel(excel, only); // thrown, its sentence travels with every code
  return block.map((line) => line.map((cell) => (isCellError(cell) ? errorToExcel(excel, cell) : cell)));
}

const errorToExcel = (excel: Excel, { error, message }: CellError): CustomFunctions.Error =>
  new excel.Error(excel.ErrorCode[OUT[error] ?? 'invalidValue'], message);
