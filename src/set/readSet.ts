import { Q } from '../catalogue/quantities';
import type { Area } from '../formula/area';
import { readLength, readPlace } from './readLength';
import type { Camera, Light, Optics, SetUp, Surface } from './setUp';
import { headingsOf, labelledCells, type SheetAsRead, textAt } from './sheetAsRead';
import type { Place3 } from './space';

/** A set as a sheet has it, and what of it could not be read, in sentences. */
export interface ReadSet {
  readonly setUp: SetUp;
  readonly unread: readonly string[];
}

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
} as const;
type Column = keyof typeof COLUMNS;

const MM = 1e-3;
/** A sheet with fewer of these columns knows no places. */
const NEEDED = ['name', 'x', 'y', 'z'] as const satisfies readonly Column[];

type Columns = Readonly<Partial<Record<Column, number>>>;

function columnsOf(sheet: SheetAsRead, table: Area): Columns | undefined {
  const headings = headingsOf(sheet, table);
  const found: Partial<Record<Column, number>> = {};
  for (const [column, names] of Object.entries(COLUMNS) as [Column, readonly string[]][]) {
    const heading = names.find((name) => headings.has(name));
    const at = heading === undefined ? undefined : headings.get(heading);
    if (at !== undefined) found[column] = at;
  }
  return NEEDED.every((column) => found[column] !== undefined) ? found : undefined;
}

/** Whether a sheet has a table with places of lights. */
export const hasPlaces = (sheet: SheetAsRead): boolean =>
  sheet.tables.some((table) => columnsOf(sheet, table) !== undefined);

/** What could not be read is told as it is found. */
type Tell = (sentence: string) => void;

const told = (read: number | undefined | string, tell: Tell): number | undefined => {
  if (typeof read !== 'string') return read;
  tell(read);
  return undefined;
};

/** A place of three cells; undefined where one of them is missing. */
function placeOf(
  [x, y, z]: readonly [unknown, unknown, unknown],
  name: string,
  tell: Tell,
): Place3 | undefined {
  const [a, b, c] = [
    told(readPlace(x, `x of ${name}`), tell),
    told(readPlace(y, `y of ${name}`), tell),
    told(readPlace(z, `The height of ${name}`), tell),
  ];
  return a === undefined || b === undefined || c === undefined ? undefined : { x: a, y: b, z: c };
}

function lightIn(sheet: SheetAsRead, row: number, columns: Columns, tell: Tell): Light[] {
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
  const at = placeOf([cell('x'), cell('y'), cell('z')], called, tell);
  // a row of a table that waits to be filled
  if (called === '' && !at) return [];
  const size = (column: Column, what: string): number | undefined =>
    told(readLength(cell(column), Q.distance, `${what} of ${called}`), tell);
  const tenths = text('tenths');
  const reading = text('reading');
  return [
    {
      name: called,
      at,
      aim: placeOf([cell('aimX'), cell('aimY'), cell('aimZ')], `the aim of ${called}`, tell),
      width: size('width', 'The width'),
      height: size('height', 'The front’s height'),
      setting: text('setting'),
      reading: reading === '' || tenths === '' || tenths === '0' ? asAperture(reading) : `${asAperture(reading)} +0.${tenths}`, // prettier-ignore
      distance: size('distance', 'The distance'),
    },
  ];
}

/** A bare figure of a meter with the sign that makes it one. */
const asAperture = (reading: string): string =>
  /^\d+(?:[.,]\d+)?$/.test(reading) ? `f/${reading}` : reading;

type Cells = ReadonlyMap<string, unknown>;
const firstOf = (cells: Cells, labels: readonly string[]): unknown =>
  cells.get(labels.find((label) => cells.has(label)) ?? '');
/** Three cells under labels that begin alike; other beginnings count where there are none of the first. */
const threeOf = (cells: Cells, ...beginnings: readonly string[]): readonly [unknown, unknown, unknown] => {
  const [x, y, z] = (['x', 'y', 'height'] as const).map((axis) => firstOf(cells, beginnings.map((one) => `${one} ${axis}`))); // prettier-ignore
  return [x, y, z];
};

function opticsIn(cells: Cells, tell: Tell): Optics | undefined {
  const length = (...labels: readonly string[]): number | undefined => {
    const label = labels.find((one) => cells.has(one));
    return label === undefined ? undefined : told(readLength(cells.get(label), Q.lensLength, label), tell);
  };
  const moved = (label: string): number =>
    (told(readPlace(cells.get(label), label, Q.lensLength), tell) ?? 0) * MM;
  const [sensorWidth, sensorHeight, draw] = [
    length('sensor width'),
    length('sensor height'),
    length('bellows draw', 'draw'),
  ];
  if (!sensorWidth || !sensorHeight || !draw) return undefined;
  return {
    sensorWidth: sensorWidth * MM,
    sensorHeight: sensorHeight * MM,
    draw: draw * MM,
    rise: moved('rise'),
    shift: moved('shift'),
  };
}
function cameraIn(cells: Cells, tell: Tell): Camera | undefined {
  const at = placeOf(threeOf(cells, 'camera'), 'the camera', tell);
  const aim =
    placeOf(threeOf(cells, 'camera aim', 'it aims at', 'at'), 'the camera’s aim', tell) ??
    subjectIn(cells, () => {});
  return at && { at, aim: aim ?? at, optics: opticsIn(cells, tell) };
}

const subjectIn = (cells: Cells, tell: Tell): Place3 | undefined =>
  placeOf(threeOf(cells, 'subject'), 'the subject', tell);

function surfaceIn(cells: Cells, tell: Tell): Surface | undefined {
  const at = placeOf(threeOf(cells, 'surface'), 'the surface', tell);
  if (!at) return undefined;
  const size = (label: string): number => told(readLength(cells.get(label), Q.distance, label), tell) ?? 0;
  const tilt = (axis: string): number => {
    const value = cells.get(`surface tilt ${axis}`);
    if (value === undefined || value === null || value === '') return 0;
    const degrees = Number(String(value).replace(/°|deg(rees)?/i, '').replace('−', '-')); // prettier-ignore
    if (Number.isFinite(degrees)) return degrees;
    tell(`The tilt about ${axis} of the surface cannot be read: write degrees, such as 15.`);
    return 0;
  };
  return {
    at,
    width: size('surface width'),
    height: size('surface depth'),
    tilt: { x: tilt('x'), y: tilt('y'), z: tilt('height') },
  };
}

/** The set that a sheet has written down; undefined where it has no table with places. */
export function readSet(sheet: SheetAsRead): ReadSet | undefined {
  const unread: string[] = [];
  const tell: Tell = (sentence) => void unread.push(sentence);
  for (const table of sheet.tables) {
    const columns = columnsOf(sheet, table);
    if (!columns) continue;
    const lights = Array.from({ length: table.rows - 1 }, (_, i) => table.row + 1 + i).flatMap((row) =>
      lightIn(sheet, row, columns, tell),
    );
    const cells = labelledCells(sheet);
    return {
      setUp: {
        lights,
        datumHeight: told(readPlace(firstOf(cells, ['datum height', 'its height']), 'The height of the datum'), tell) ?? 0, // prettier-ignore
        camera: cameraIn(cells, tell),
        subject: subjectIn(cells, tell),
        surface: surfaceIn(cells, tell),
      },
      unread,
    };
  }
  return undefined;
}
