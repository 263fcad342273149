import { Q } from '../catalogue/quantities';
import type { Area } from '../formula/area';
import { isCellError } from '../formula/errors';
import { SHOWN } from './limits';
import { readLength } from './readLength';
import type { Light } from './setUp';
import { headingsOf, plainWords, type SheetAsRead, textAt } from './sheetAsRead';
import { placeOf, type Tell, told } from './told';

/** Headings of the columns of lights; the first that is there counts. */
const COLUMNS = {
  name: ['light', 'name', 'part', 'head'],
  head: ['head'],
  x: ['x'],
  y: ['y'],
  z: ['height', 'z'],
  aimX: ['aim x'],
  aimY: ['aim y'],
  aimZ: ['aim height', 'aim z'],
  width: ['front width', 'width', 'wide'],
  height: ['front height', 'tall'],
  setting: ['shows', 'set to', 'power'],
  reading: ['reading', 'reads'],
  tenths: ['tenths'],
  distance: ['distance'],
  reaches: ['at the subject'],
} as const;
type Column = keyof typeof COLUMNS;

/** A sheet with fewer of these columns knows no places. */
const NEEDED = ['name', 'x', 'y', 'z'] as const satisfies readonly Column[];

export type Columns = Readonly<Partial<Record<Column, number>>>;

/** Where a table has what is read of lights; undefined where it knows no places. */
export function columnsOf(sheet: SheetAsRead, table: Area): Columns | undefined {
  const headings = headingsOf(sheet, table);
  const found: Partial<Record<Column, number>> = {};
  for (const [column, names] of Object.entries(COLUMNS) as [Column, readonly string[]][]) {
    const heading = names.find((name) => headings.has(name));
    const at = heading === undefined ? undefined : headings.get(heading);
    if (at !== undefined) found[column] = at;
  }
  // an f-number that is worked out has its tenths in it
  const isWorkedOut = found.reading !== undefined && found.reading === headings.get('reads');
  if (isWorkedOut && found.tenths !== (found.reading ?? NaN) + 1) delete found.tenths;
  return NEEDED.every((column) => found[column] !== undefined) ? found : undefined;
}

/** Headings whose place in a record another column would take. */
const OWN_NAMES: Partial<Record<Column, readonly string[]>> = {
  name: ['light', 'name'],
  reading: ['reading'],
};

const asHeading = (name: string): string => `“${name.charAt(0).toUpperCase()}${name.slice(1)}”`;

/**
 * What the headings of a table leave in doubt, in sentences: words that were typed over one have another column read, or none. Where
 * all but one are there, that one has lost its heading: tables of one's own have fewer.
 */
export function headingFaults(sheet: SheetAsRead, table: Area): readonly string[] {
  const all = Array.from({ length: table.columns }, (_, i) =>
    plainWords(textAt(sheet, table.row, table.column + i)),
  );
  const columns = Object.entries(COLUMNS) as [Column, readonly string[]][];
  const twice = columns.flatMap(([, names]) => {
    const used = names.find((name) => all.includes(name));
    return used !== undefined && all.indexOf(used) !== all.lastIndexOf(used) ? [used] : [];
  });
  const missing = columns.flatMap(([column, names]) =>
    (OWN_NAMES[column] ?? names).some((name) => all.includes(name)) ? [] : [names[0] ?? ''],
  );
  return [
    ...[...new Set(twice)].map(
      (name) => `Two columns of lights are headed ${asHeading(name)}: the one further left is read.`,
    ),
    ...(missing.length === 1 ? missing : []).map(
      (name) => `No column of lights is headed ${asHeading(name)} any more: what stands there is not read.`,
    ),
  ];
}

/** What of a light is read as words, so that an error in it would be no word more. */
const WORDS = [
  ['name', 'The name'],
  ['head', 'The head'],
  ['setting', 'The power'],
  ['reading', 'The reading'],
  ['tenths', 'A tenth'],
] as const satisfies readonly (readonly [Column, string])[];

/** Headings of names that no two lights have; parts and heads may be there twice. */
const NAMES: ReadonlySet<string> = new Set(['light', 'name']);

const DATE = 'a spreadsheet has made a date of it. Set the cell to text and type it again.';

/** A stop to which the tenths beside it count. */
const PLAIN_STOP = /^f?\/? ?\d+(?:[.,]\d+)?$/i;

/** What a head shows; empty for a number that no head can show. */
function settingIn(cell: unknown, text: string, called: string, tell: Tell): string {
  if (typeof cell !== 'number' || Math.abs(cell) <= SHOWN.setting) return text;
  tell(`The power of ${called} would be ${text}: ${DATE}`);
  return '';
}

/** What a meter shows, with its tenths; empty for a number that no meter can show. */
function readingIn(cell: unknown, reading: string, tenths: string, called: string, tell: Tell): string {
  if (typeof cell === 'number' && !(cell > 0 && cell <= SHOWN.reading)) {
    const why = cell > SHOWN.setting ? DATE : 'type its full stop, such as 16, and its tenths beside it.';
    tell(`The reading of ${called} would be f/${reading}: ${why}`);
    return '';
  }
  // what a formula has worked out has more places than a meter
  const stop = asAperture(typeof cell === 'number' ? String(Math.round(cell * 100) / 100) : reading);
  if (reading === '' || tenths === '' || tenths === '0') return stop;
  if (/^\d$/.test(tenths) && PLAIN_STOP.test(stop)) return `${stop} +0.${tenths}`;
  tell(
    `The reading of ${called} would be ${stop} and ${tenths} tenths: type its full stop, such as 16, and 0 to 9 beside it.`,
  );
  return '';
}

/** The light in a row of a table; none where nothing stands there. */
export function lightIn(sheet: SheetAsRead, table: Area, row: number, columns: Columns, tell: Tell): Light[] {
  const cell = (column: Column): unknown => {
    const at = columns[column];
    return at === undefined ? undefined : sheet.cells[row]?.[at];
  };
  const text = (column: Column): string => {
    const at = columns[column];
    return at === undefined ? '' : textAt(sheet, row, at);
  };
  const [name, head] = [text('name'), text('head')];
  const called = head === '' || head === name ? name : name === '' ? head : `${name}, ${head}`;
  for (const [column, what] of WORDS) {
    const value = cell(column);
    if (isCellError(value)) tell(`${what} of ${called === '' ? `the light in row ${row + 1}` : called} holds the error ${value.error}.`); // prettier-ignore
  }
  const at = placeOf([cell('x'), cell('y'), cell('z')], called, tell);
  // a row of a table that waits to be filled
  if (called === '' && !at) return [];
  const size = (column: Column, what: string): number | undefined =>
    told(readLength(cell(column), Q.distance, `${what} of ${called}`), tell);
  const heading = columns.name === undefined ? '' : plainWords(textAt(sheet, table.row, columns.name));
  return [
    {
      name: called,
      ...(NAMES.has(heading) && name !== '' ? { own: name } : {}),
      at,
      aim: placeOf([cell('aimX'), cell('aimY'), cell('aimZ')], `the aim of ${called}`, tell),
      width: size('width', 'The width'),
      height: size('height', 'The front’s height'),
      setting: settingIn(cell('setting'), text('setting'), called, tell),
      reading: readingIn(cell('reading'), text('reading'), text('tenths'), called, tell),
      distance: size('distance', 'The distance'),
      ...(text('reaches').toLowerCase() === 'no' ? { isAway: true } : {}),
    },
  ];
}

/** A bare figure of a meter with the sign that makes it one. */
const asAperture = (reading: string): string =>
  /^\d+(?:[.,]\d+)?$/.test(reading) ? `f/${reading}` : reading;
