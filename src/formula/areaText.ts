import { address, fixedAddress, parseAddress } from './address';
import type { Area } from './area';

export const MOST_ROWS = 1_048_576;
export const MOST_COLUMNS = 16_384;

/** Whether an area has cells, and all of them lie on a sheet. */
export const isOnSheet = ({ row, column, rows, columns }: Area): boolean =>
  [row, column, rows, columns].every((x) => Number.isInteger(x) && x >= 0) &&
  rows > 0 &&
  columns > 0 &&
  row + rows <= MOST_ROWS &&
  column + columns <= MOST_COLUMNS;

const last = ({ row, column, rows, columns }: Area) => ({
  row: row + rows - 1,
  column: column + columns - 1,
});

/** An area as a file writes it: "B2" or "B2:C4". */
export const areaText = (area: Area): string =>
  area.rows === 1 && area.columns === 1 ? address(area) : `${address(area)}:${address(last(area))}`;

/** The same with dollar signs, and the sheet it lies on. */
export const fixedText = (sheet: string, area: Area): string =>
  `${quotedSheet(sheet)}!${fixedAddress(area)}:${fixedAddress(last(area))}`;

export const quotedSheet = (name: string): string => `'${name.replaceAll("'", "''")}'`;

/** "B2", "B2:C4", "B:C" or "2:4", with or without dollar signs, as an area; undefined where it is none. */
export function parseArea(text: string): Area | undefined {
  const [from = '', to = from, more] = text.replaceAll('$', '').toUpperCase().split(':');
  if (more !== undefined) return undefined;
  const whole = (end: string, top: boolean): string =>
    /^[A-Z]+$/.test(end)
      ? `${end}${top ? 1 : MOST_ROWS}`
      : /^\d+$/.test(end)
        ? `${top ? 'A' : 'XFD'}${end}`
        : end;
  const [start, end] = [parseAddress(whole(from, true)), parseAddress(whole(to, false))];
  if (!start || !end) return undefined;
  const [row, column] = [Math.min(start.row, end.row), Math.min(start.column, end.column)];
  const area = {
    row,
    column,
    rows: Math.abs(start.row - end.row) + 1,
    columns: Math.abs(start.column - end.column) + 1,
  };
  return isOnSheet(area) ? area : undefined;
}

/** Areas with spaces between them; what is none of them is left out. */
export const parseAreas = (text: string): Area[] =>
  text
    .trim()
    .split(/\s+/)
    .flatMap((part) => parseArea(part) ?? []);
