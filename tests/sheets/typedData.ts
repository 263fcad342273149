import { CellValueType, type ICellData } from '@univerjs/core';
import type { BookCell } from '../../src/book/book';
import { isCellError } from '../../src/formula/errors';

/** As data that leaves nothing of what the cell held before. */
export function typedData({
  formula,
  value,
}: {
  readonly formula?: string | undefined;
  readonly value: BookCell['value'];
}): ICellData {
  if (formula !== undefined) return { f: formula, v: null, t: null };
  if (value === null) return { v: null, t: null, f: null };
  if (typeof value === 'string') return { v: value, t: CellValueType.STRING, f: null };
  if (typeof value === 'boolean') return { v: value ? 1 : 0, t: CellValueType.BOOLEAN, f: null };
  return { v: isCellError(value) ? value.error : value, t: null, f: null };
}
