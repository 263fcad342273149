import { CellValueType, type ICellData, type IRange, type Nullable, type Worksheet } from '@univerjs/core';
import { ERROR_TYPE_SET } from '@univerjs/engine-formula';
import { at } from '../../exposure/core/at';

/** A column that rows are sorted by, and whether the largest comes first. */
export interface SortBy {
  readonly column: number;
  readonly largestFirst: boolean;
}

/** In the order in which kinds of values follow each other; an empty cell comes last whichever way it is sorted. */
type Key =
  | { readonly kind: 0; readonly value: number }
  | { readonly kind: 1; readonly value: string }
  | { readonly kind: 2; readonly value: number }
  | { readonly kind: 3 | 4 };

const EMPTY = 4;

const { compare: orderOfTexts } = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

const FIGURE = String.raw`(\d+(?:\.\d+)?)`;
const APERTURE = new RegExp(`^f\\s*/?\\s*${FIGURE}$`, 'i');
const FRACTION = new RegExp(`^${FIGURE}\\s*/\\s*${FIGURE}(?:\\s*s)?$`);

/** A mark that was kept as text goes by its figure, among the numbers: f/5.6, 8, f/11; 1/250, 1/60. */
function figureOf(text: string): number | undefined {
  const aperture = APERTURE.exec(text);
  if (aperture) return Number(aperture[1]);
  const fraction = FRACTION.exec(text);
  const [over, under] = [Number(fraction?.[1]), Number(fraction?.[2])];
  return under > 0 ? over / under : undefined;
}

function keyOf(cell: Nullable<ICellData>): Key {
  const value = cell?.v ?? cell?.p?.body?.dataStream.replace(/\r\n$/, '');
  if (value === undefined || value === '') return { kind: EMPTY };
  if (cell?.t === CellValueType.BOOLEAN || typeof value === 'boolean')
    return { kind: 2, value: Number(value) };
  if (typeof value === 'number') return { kind: 0, value };
  if (ERROR_TYPE_SET.has(value as never)) return { kind: 3 };
  const figure = figureOf(value.trim());
  return figure === undefined ? { kind: 1, value } : { kind: 0, value: figure };
}

function compared(a: Key, b: Key): number {
  if (a.kind !== b.kind) return a.kind - b.kind;
  if (a.kind === 1 && b.kind === 1) return orderOfTexts(a.value, b.value);
  return 'value' in a && 'value' in b ? Number(a.value) - Number(b.value) : 0;
}

function inOrder(a: Key, b: Key, largestFirst: boolean): number {
  const order = compared(a, b);
  return largestFirst && a.kind !== EMPTY && b.kind !== EMPTY ? -order : order;
}

/**
 * Which row, counted in the range, comes to stand in each. Rows that are alike keep their order; those that are hidden, by a
 * filter or by hand, stay where they are.
 */
export function orderOf(sheet: Worksheet, range: IRange, by: readonly SortBy[]): readonly number[] {
  const all = Array.from({ length: range.endRow - range.startRow + 1 }, (_, i) => i);
  const shown = all
    .filter((i) => sheet.getRowVisible(range.startRow + i))
    .map((row) => ({
      row,
      keys: by.map(({ column, largestFirst }) => ({
        key: keyOf(sheet.getCellRaw(range.startRow + row, column)),
        largestFirst,
      })),
    }));
  const sorted = [...shown].sort((a, b) => {
    for (const [k, { key, largestFirst }] of a.keys.entries()) {
      const order = inOrder(key, at(b.keys, k).key, largestFirst);
      if (order !== 0) return order;
    }
    return 0;
  });
  const from = [...all];
  for (const [k, { row }] of shown.entries()) from[row] = at(sorted, k).row;
  return from;
}
