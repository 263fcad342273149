import { columnName, parseAddress } from './address';
import type { Area } from './area';
import { MOST_COLUMNS, MOST_ROWS, parseArea } from './areaText';
import { lex, type TokenOf } from './lex';

/** Whole rows or columns of a sheet, counted from 0. */
export interface Lines {
  readonly axis: 'rows' | 'columns';
  readonly at: number;
  readonly count: number;
}

/** Where an area lies after an edit of its sheet; nothing where it is gone. */
export type After = (area: Area) => Area | undefined;

type Span = readonly [first: number, last: number];
type SpanAfter = (span: Span) => Span | undefined;

const along =
  (axis: Lines['axis'], after: SpanAfter): After =>
  (area) => {
    const isRows = axis === 'rows';
    const [start, size] = isRows ? [area.row, area.rows] : [area.column, area.columns];
    const span = after([start, start + size - 1]);
    if (!span) return undefined;
    const [first, last] = span;
    return isRows
      ? { ...area, row: first, rows: last - first + 1 }
      : { ...area, column: first, columns: last - first + 1 };
  };

/** What lies behind lines that come in goes on; what they come into is longer. */
export const inserted = ({ axis, at, count }: Lines): After =>
  along(axis, ([first, last]) => [first < at ? first : first + count, last < at ? last : last + count]);

/** What lies behind lines that go away comes forward; what they are a part of is shorter. */
export const removed = ({ axis, at, count }: Lines): After =>
  along(axis, ([first, last]) => {
    const end = at + count;
    if (first >= at && last < end) return undefined;
    const back = (line: number): number => (line >= end ? line - count : line);
    return [first >= at && first < end ? at : back(first), last >= at && last < end ? at - 1 : back(last)];
  });

/** Lines that go in front of another one take along what lies within them, and leave the rest of what they were a part of. */
export const moved = ({ axis, at, count }: Lines, to: number): After =>
  along(axis, ([first, last]) => {
    const end = at + count;
    if (first >= at && last < end) {
      const way = (to > at ? to - count : to) - at;
      return [first + way, last + way];
    }
    const place = (line: number): number => {
      const without = line >= end ? line - count : line;
      return without >= (to > at ? to - count : to) ? without + count : without;
    };
    return [place(first >= at && first < end ? end : first), place(last >= at && last < end ? at - 1 : last)];
  });

/** Rows of a block that change places among themselves: which of them, counted in the block, comes to stand in each. */
export interface Reorder {
  readonly block: Area;
  readonly from: readonly number[];
}

const isApart = (a: Area, b: Area): boolean =>
  a.row >= b.row + b.rows ||
  b.row >= a.row + a.rows ||
  a.column >= b.column + b.columns ||
  b.column >= a.column + a.columns;

/** Whether an area holds cells of a block, and not those of all its rows. */
export const isPartOf = (area: Area, block: Area): boolean =>
  !isApart(area, block) && !(area.row <= block.row && area.row + area.rows >= block.row + block.rows);

/**
 * What names a row of the block goes with it, and what names them all stays; nothing where an area would have to name rows that
 * are no longer together, or would take some of its cells along and leave others.
 */
export const reordered = ({ block, from }: Reorder): After => {
  const to = new Map(from.map((was, now) => [was, now]));
  return (area) => {
    if (!isPartOf(area, block)) return area;
    const first = area.row - block.row;
    const rows = Array.from({ length: area.rows }, (_, i) => first + i);
    if (rows.every((row) => (to.get(row) ?? row) === row)) return area;
    const isWithin =
      rows.every((row) => to.has(row)) &&
      area.column >= block.column &&
      area.column + area.columns <= block.column + block.columns;
    if (!isWithin) return undefined;
    const now = rows.map((row) => to.get(row) ?? row);
    const start = Math.min(...now);
    return Math.max(...now) - start === area.rows - 1 ? { ...area, row: block.row + start } : undefined;
  };
};

/**
 * A formula as it reads after an edit of a sheet. Dollar signs hold nothing in place here: a reference names the same cells as
 * before, wherever they are now.
 *
 * @param isMeant - whether a reference with this in front, or with nothing, speaks of the sheet that is edited.
 */
export const followed = (formula: string, after: After, isMeant: (before?: string) => boolean): string =>
  lex(formula)
    .map((token) => {
      if ((token.kind !== 'cells' && token.kind !== 'lines') || !isMeant(token.before)) return token.raw;
      return token.kind === 'cells' ? ofCells(token, after) : ofLines(token, after);
    })
    .join('');

const GONE = '#REF!';
const dollar = (text: string, at: 'column' | 'row'): string =>
  (at === 'column' ? text.startsWith('$') : text.lastIndexOf('$') > 0) ? '$' : '';

function ofCells(token: TokenOf<'cells'>, after: After): string {
  const { before = '', from, to, spills, raw } = token;
  const corners = [from, to ?? from].map((text) => {
    const place = parseAddress(text.replaceAll('$', '').toUpperCase());
    return place && { ...place, fixed: { column: dollar(text, 'column'), row: dollar(text, 'row') } };
  });
  const [a, b] = corners;
  const area = parseArea(to === undefined ? from : `${from}:${to}`);
  if (!a || !b || !area) return raw;
  const now = after(area);
  if (!now || now.row >= MOST_ROWS || now.column >= MOST_COLUMNS) return before + GONE;
  if (isSame(now, area)) return raw;
  // of corners given the other way round each keeps its dollar signs
  const [up, down] = a.row <= b.row ? [a, b] : [b, a];
  const [left, right] = a.column <= b.column ? [a, b] : [b, a];
  const end = {
    row: Math.min(now.row + now.rows, MOST_ROWS),
    column: Math.min(now.column + now.columns, MOST_COLUMNS),
  };
  const first = left.fixed.column + columnName(now.column) + up.fixed.row + String(now.row + 1);
  const last = right.fixed.column + columnName(end.column - 1) + down.fixed.row + String(end.row);
  return before + first + (to === undefined ? '' : `:${last}`) + (spills ? '#' : '');
}

function ofLines({ before = '', from, to, raw }: TokenOf<'lines'>, after: After): string {
  const area = parseArea(`${from}:${to}`);
  if (!area) return raw;
  const isColumns = /[A-Za-z]/.test(from);
  const now = after(area);
  if (!now) return before + GONE;
  const [start, size] = isColumns ? [now.column, now.columns] : [now.row, now.rows];
  if (start === (isColumns ? area.column : area.row) && size === (isColumns ? area.columns : area.rows))
    return raw;
  const name = (line: number): string => (isColumns ? columnName(line) : String(line + 1));
  return `${before}${dollar(from, 'column')}${name(start)}:${dollar(to, 'column')}${name(start + size - 1)}`;
}

const isSame = (a: Area, b: Area): boolean =>
  a.row === b.row && a.column === b.column && a.rows === b.rows && a.columns === b.columns;
