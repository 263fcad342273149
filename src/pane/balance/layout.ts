import { isCellError } from '../../formula/errors';
import { addressIn, type Block, cellIn, textIn } from './block';

/*
 * How the table lies: a row a point and a column a head, with what is known of each head in rows of their own above the
 * points. Headings and labels are found by their words, in whatever order they stand.
 */

/** Columns that are no head's. */
export const COLUMNS = {
  wanted: 'Wanted',
  kind: 'Kind',
  within: 'Within',
  across: 'Across',
  up: 'Up',
  ambient: 'Ambient',
  all: 'All lit',
  measured: 'Measured',
} as const;
export type PointColumn = keyof typeof COLUMNS;

/** Rows that tell of the heads. */
export const ROWS = {
  model: 'Model',
  metered: 'Metered at',
  least: 'Least',
  most: 'Most',
  step: 'Step',
  scale: 'Scale',
  top: 'Top',
  locked: 'Locked',
  mayGoOff: 'May go off',
  mostPops: 'Most pops',
  setTo: 'Set to',
  pops: 'Pops',
} as const;
export type HeadRow = keyof typeof ROWS;

/** Before the name of a head over readings of all the others. */
export const WITHOUT = 'Without ';

export interface HeadColumn {
  readonly name: string;
  readonly column: number;
}

export interface Layout {
  /** Where each column and row lies; those that the table does not have are left out. */
  readonly columns: Readonly<Partial<Record<PointColumn, number>>>;
  readonly rows: Readonly<Partial<Record<HeadRow, number>>>;
  readonly heads: readonly HeadColumn[];
  readonly points: readonly { readonly name: string; readonly row: number }[];
  /** Whether each reading is of all heads but one. */
  readonly isOneOff: boolean;
}

const keyOf = <Key extends string>(words: Readonly<Record<Key, string>>, text: string): Key | undefined =>
  (Object.keys(words) as Key[]).find((key) => words[key].toLowerCase() === text.toLowerCase());
const isWithout = (text: string): boolean => text.toLowerCase().startsWith(WITHOUT.toLowerCase());

/** How a block lies; or what is wrong with it, in sentences. */
export function layoutOf(block: Block): Layout | readonly string[] {
  const width = block.cells[0]?.length ?? 0;
  const columns: Partial<Record<PointColumn, number>> = {};
  const heads: HeadColumn[] = [];
  const faults: string[] = [];
  for (let column = 1; column < width; column++) {
    const heading = textIn(block, 0, column);
    const key = keyOf(COLUMNS, heading);
    if (key && columns[key] !== undefined) faults.push(`The heading “${heading}” stands twice.`);
    else if (key) columns[key] = column;
    else if (heading !== '') heads.push({ name: heading, column });
    else if (isFilled(block, column))
      faults.push(`${addressIn(block, 0, column)} has no heading: say in it which head that column is.`);
  }
  const rows: Partial<Record<HeadRow, number>> = {};
  const points: { name: string; row: number }[] = [];
  for (let row = 1; row < block.cells.length; row++) {
    const label = textIn(block, row, 0);
    const key = keyOf(ROWS, label);
    if (key && rows[key] !== undefined) faults.push(`The row “${label}” stands twice.`);
    else if (key) rows[key] = row;
    else if (label !== '') points.push({ name: label, row });
    else if (hasReadings(block, row, [...heads.map(({ column }) => column), columns.wanted]))
      faults.push(`Row ${block.row + row + 1} has no name: say in its first cell which point it is.`);
  }
  faults.push(...misnamed(block, rows, columns));
  for (const [what, names] of [['heads', heads], ['points', points]] as const) {
    const seen = names.map(({ name }) => name.toLowerCase());
    const twice = names.find(({ name }, i) => seen.indexOf(name.toLowerCase()) < i);
    if (twice) faults.push(`Two ${what} are called “${twice.name}”: name them apart.`);
  } // prettier-ignore
  const isOneOff = heads.length > 0 && heads.every(({ name }) => isWithout(name));
  if (!isOneOff && heads.some(({ name }) => isWithout(name)))
    faults.push(`Either all heads are metered with one off, their headings beginning with “${WITHOUT.trim()}”, or none.`); // prettier-ignore
  if (isOneOff && columns.all === undefined)
    faults.push(`Readings with one head off need a column “${COLUMNS.all}” beside them.`);
  if (heads.length === 0 || points.length === 0 || columns.wanted === undefined)
    faults.push(
      `This is no table to balance: it needs a row a point, a column “${COLUMNS.wanted}” and a column a head, with headings in its first row. Lay one to see how.`,
    );
  if (faults.length > 0) return faults;
  const named = isOneOff ? heads.map((head) => ({ ...head, name: head.name.slice(WITHOUT.length).trim() })) : heads; // prettier-ignore
  return { columns, rows, heads: named, points, isOneOff };
}

/**
 * A point that is called Top, or a head that is called Up, would pass for what tells of heads or of points, and be left out:
 * what then stands where those meet, where nothing belongs, gives it away. The first such cell.
 */
function misnamed(block: Block, rows: Layout['rows'], columns: Layout['columns']): string[] {
  for (const row of Object.values(rows))
    for (const column of Object.values(columns))
      if (textIn(block, row, column) !== '')
        return [
          `${addressIn(block, row, column)} is filled, where “${textIn(block, row, 0)}”, which tells of heads, meets “${textIn(block, 0, column)}”, which tells of points. Name the point or the head otherwise.`,
        ];
  return [];
}

/** Whether anything stands in a column, an error too. */
const isFilled = (block: Block, column: number): boolean =>
  block.cells.some(
    (_, row) => isCellError(cellIn(block, row, column).value) || textIn(block, row, column) !== '',
  );

const hasReadings = (block: Block, row: number, columns: readonly (number | undefined)[]): boolean =>
  columns.some((column) => column !== undefined && textIn(block, row, column) !== '');
