import type { Area } from '../../../../formula/area';
import { LEAST } from '../afterEdit';
import type { SheetView } from '../../grid/sheetView';

/** What a person does with a chart. */
export type Wish = 'move' | 'size';

type Measures = Pick<SheetView, 'rows' | 'columns' | 'rowStart' | 'columnStart'>;

const within = (least: number, value: number, most: number): number =>
  Math.max(least, Math.min(value, Math.max(least, most)));

/** The edge of a row or column that is nearest to a place in pixels. */
function nearest(at: number, start: (index: number) => number, count: number): number {
  let index = 0;
  while (index < count && start(index + 1) <= at) index++;
  return index < count && at - start(index) > start(index + 1) - at ? index + 1 : index;
}

/** Where something is that is moved along rows or columns: it keeps its size, as near as whole ones allow, and stays on the sheet. */
function moved(
  from: number,
  length: number,
  steps: number,
  least: number,
  start: (index: number) => number,
  count: number,
): [from: number, length: number] {
  const to = within(0, from + steps, count - Math.min(least, length));
  if (to === from) return [from, length];
  const end = nearest(start(to) + start(from + length) - start(from), start, count);
  return [to, within(Math.min(least, length), end - to, count - to)];
}

/** A chart so many rows and columns further, or so many larger: on the sheet, and large enough to be read. */
export function byCells(place: Area, wish: Wish, down: number, right: number, sheet: Measures): Area {
  if (wish === 'move') {
    const [row, rows] = moved(place.row, place.rows, down, LEAST.rows, (r) => sheet.rowStart(r), sheet.rows);
    const [column, columns] = moved(
      place.column,
      place.columns,
      right,
      LEAST.columns,
      (c) => sheet.columnStart(c),
      sheet.columns,
    );
    return { row, rows, column, columns };
  }
  const larger = (length: number, by: number, least: number, room: number): number =>
    within(Math.min(least, length), length + by, room);
  return {
    ...place,
    rows: larger(place.rows, down, LEAST.rows, sheet.rows - place.row),
    columns: larger(place.columns, right, LEAST.columns, sheet.columns - place.column),
  };
}

/** The same by pixels of the sheet: a corner that is dragged lies on the corner of a cell. */
export function byPixels(place: Area, wish: Wish, right: number, down: number, sheet: Measures): Area {
  const isSize = wish === 'size';
  const [row, column] = [place.row + (isSize ? place.rows : 0), place.column + (isSize ? place.columns : 0)];
  const toRow = nearest(sheet.rowStart(row) + down, (r) => sheet.rowStart(r), sheet.rows);
  const toColumn = nearest(sheet.columnStart(column) + right, (c) => sheet.columnStart(c), sheet.columns);
  return byCells(place, wish, toRow - row, toColumn - column, sheet);
}
