import { groupsOf, type Maybe } from './groups';

/** Cells that a formula speaks of, counted from 0. Without a sheet it is the formula's own. */
export interface CellArea {
  readonly kind: 'cells';
  readonly sheet?: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** Columns of a table. Without a table it is the one the formula stands in. */
export interface TableColumns {
  readonly kind: 'table';
  readonly table?: string;
  readonly first: string;
  readonly last: string;
  /** The whole column, or only the formula's own row of it. */
  readonly rows: 'all' | 'this';
}

export interface NamedCells {
  readonly kind: 'name';
  readonly name: string;
}

export type Reference = CellArea | TableColumns | NamedCells;

const CORNER = '\\$?([A-Z]{1,3})\\$?([1-9]\\d*)';
const CELLS = new RegExp(
  `^(?:(?:'((?:[^'\\[\\]]|'')+)'|([\\p{L}\\p{N}_.]+))!)?${CORNER}(?::${CORNER})?$`,
  'iu',
);
const LAST_ROW = 1_048_576;
const LAST_COLUMN = 16_384;
const NAME = '[\\p{L}_\\\\][\\p{L}\\p{N}_.\\\\]*';
const TABLE = new RegExp(`^(${NAME})?\\[(.+)\\]$`, 'u');
const NAMED = new RegExp(`^${NAME}$`, 'u');
const COLUMN = "((?:[^\\[\\]'#@]|'.)+)";
const WITHIN = new RegExp(
  `^(?:(@)?${COLUMN}|(@)?\\[${COLUMN}\\](?::\\[${COLUMN}\\])?|\\[#(This Row|Data)\\], ?\\[${COLUMN}\\](?::\\[${COLUMN}\\])?)$`,
  'i',
);

const columnIndex = (letters: string): number =>
  [...letters.toUpperCase()].reduce((n, letter) => n * 26 + letter.charCodeAt(0) - 64, 0) - 1;
const unescaped = (column: string): string => column.replace(/'(.)/g, '$1');

function cells(found: RegExpExecArray): CellArea | undefined {
  const [quoted, plain, c1, r1, c2 = c1, r2 = r1] =
    groupsOf<[Maybe, Maybe, string, string, Maybe, Maybe]>(found);
  const rows = [Number(r1) - 1, Number(r2) - 1].sort((a, b) => a - b) as [number, number];
  const columns = [columnIndex(c1), columnIndex(c2)].sort((a, b) => a - b) as [number, number];
  if (rows[1] >= LAST_ROW || columns[1] >= LAST_COLUMN) return undefined;
  const sheet = quoted?.replaceAll("''", "'") ?? plain;
  return {
    kind: 'cells',
    ...(sheet === undefined ? {} : { sheet }),
    row: rows[0],
    column: columns[0],
    rows: rows[1] - rows[0] + 1,
    columns: columns[1] - columns[0] + 1,
  };
}

function table(whole: RegExpExecArray): TableColumns | undefined {
  const [name, inside] = groupsOf<[Maybe, string]>(whole);
  const found = WITHIN.exec(inside);
  if (!found) return undefined;
  const [, thisRow, plain, thisRowToo, from, to, part, partFrom, partTo] = found;
  const first = unescaped((plain ?? from ?? partFrom) as string);
  const last = to ?? partTo;
  return {
    kind: 'table',
    ...(name === undefined ? {} : { table: name }),
    first,
    last: last === undefined ? first : unescaped(last),
    rows: (thisRow ?? thisRowToo) !== undefined || part?.toLowerCase() === 'this row' ? 'this' : 'all',
  };
}

/** What a reference of a formula speaks of; nothing for whole columns, other workbooks and the like. */
export function parseReference(text: string): Reference | undefined {
  const area = CELLS.exec(text);
  if (area) return cells(area);
  const columns = TABLE.exec(text);
  if (columns) return table(columns);
  return NAMED.test(text) ? { kind: 'name', name: text } : undefined;
}
