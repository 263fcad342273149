import type { Nullable } from '@univerjs/core';
import {
  ArrayValueObject,
  BaseFunction,
  type BaseValueObject,
  BooleanValueObject,
  type ErrorType,
  type ErrorValueObject,
  NumberValueObject,
  StringValueObject,
} from '@univerjs/engine-formula';
import { CATALOGUE } from '../catalogue';
import type { AnyRow } from '../catalogue/types';
import { functionName } from '../catalogue/words';
import { call } from '../cells/call';
import { type CellError, cellError, type ErrorCode } from '../formula/errors';
import { at } from '../exposure/core/at';
import { type FailureReport, Refusal } from './failures';
import { MENDED } from './mends';
import type { Executor } from './mends/nativeFunction';
import { refusals } from './mends/lackingFunctions';
import { PLACES } from './places';

export type { Cleared, Failure, FailureReport } from './failures';

type Cell = number | string | boolean | null | CellError;

/**
 * The catalogue as functions of the engine, for its option `formula.function`, behind the plain ones that are mended. They
 * are pure: where a workbook has array formulas the engine calculates cells twice. `onFailure` hears which cells show a
 * refusal and which no longer do.
 */
export function executors(onFailure: (report: FailureReport) => void = () => {}): Array<[Executor, string]> {
  const ours = CATALOGUE.map((row): [Executor, string] => [executor(row, onFailure), functionName(row)]);
  const plain = [...PLACES, ...MENDED].map(([mended, name]): [Executor, string] => [mended, name]);
  return [...plain, ...ours, ...refusals(onFailure)];
}

function executor(row: AnyRow, onFailure: (report: FailureReport) => void): Executor {
  return class extends BaseFunction {
    // -1 leaves the number of arguments to `call`, which says what is missing; the engine only says #N/A.
    override minParams = -1;
    override maxParams = -1;

    override calculate(...values: BaseValueObject[]) {
      const errors = new Map<CellError, ErrorValueObject>();
      const answer = call(
        row,
        values.map((value) => argument(value, errors)),
      );
      const result = (cell: Exclude<Cell, null>): BaseValueObject => {
        if (typeof cell === 'number') return NumberValueObject.create(cell);
        if (typeof cell === 'boolean') return BooleanValueObject.create(cell);
        // Not the engine's own factory, which would make a date of "1/60" and a number of "8".
        if (typeof cell === 'string') return StringValueObject.create(cell);
        // An error that only passes through keeps the sentence of the function that refused first.
        return (
          errors.get(cell) ??
          new Refusal(cell.error as ErrorType, cell.message ?? '', functionName(row), onFailure)
        );
      };
      if (!Array.isArray(answer)) return result(answer);
      return ArrayValueObject.create({
        calculateValueList: answer.map((cells) => cells.map(result)),
        rowCount: answer.length,
        columnCount: answer[0]?.length ?? 0,
        unitId: '',
        sheetId: '',
        row: -1,
        column: -1,
      });
    }
  };
}

/** A value of the engine as a cell or cells; a range of one cell is that cell. */
function argument(value: BaseValueObject, errors: Map<CellError, ErrorValueObject>): Cell | Cell[][] {
  if (!value.isArray()) return cellOf(value, errors);
  const cells = value.getArrayValue().map((row) => Array.from(row, (member) => cellOf(member, errors)));
  const [first] = cells;
  return cells.length === 1 && first?.length === 1 ? at(first, 0) : cells;
}

function cellOf(value: Nullable<BaseValueObject>, errors: Map<CellError, ErrorValueObject>): Cell {
  if (!value || value.isNull()) return null;
  if (value.isError()) {
    const error = value as ErrorValueObject;
    const cell = cellError(error.getErrorType() as ErrorCode, error.getErrorContent() || undefined);
    errors.set(cell, error);
    return cell;
  }
  if (value.isLambda()) return cellError('#VALUE!', 'A LAMBDA is no value: give it its arguments.');
  return value.getValue();
}
