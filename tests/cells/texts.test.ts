import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { rowOf } from '../../src/catalogue';
import type { Quantity } from '../../src/catalogue/quantities';
import type { AnyRow, Arg } from '../../src/catalogue/types';
import { type ArgumentValue, readArgument, readWithReason } from '../../src/cells/argument';
import { type Answer, call } from '../../src/cells/call';
import { ArgumentReader } from '../../src/cells/column';
import { prepared } from '../../src/cells/preparedArguments';
import { valueOf } from '../../src/cells/quantityReader';
import { outOfRange } from '../../src/cells/outOfRange';
import type { Reading } from '../../src/cells/reason';
import { isCellError } from '../../src/formula/errors';

/**
 * What cells may hold, written from the rules of reading alone by somebody who had not seen a reader. The values are worked
 * out from 2^(k/3), 2^(k/2), D / log10(2) and the definitions of inch, foot and mile.
 */
type Cell = string | number | null;
/** A number in the base unit; where it is marked, the figure as printed and the exact value behind it. */
type Means = number | { readonly printed?: number; readonly exact?: number };
interface Beside {
  readonly most: number;
  readonly scale: string;
  readonly top?: number | string;
  readonly step: number;
}
interface Form {
  readonly form: string;
  readonly where?: string;
  /** The other arguments of HEADPOWER. */
  readonly beside?: Beside;
  readonly read?: readonly (readonly [Cell, Means])[];
  readonly blank?: readonly Cell[];
  /** Nothing but a nought or spaces: blank is as good as refused. */
  readonly blankOrRefused?: readonly Cell[];
  readonly refused?: readonly Cell[];
}
interface Texts {
  readonly quantity: string;
  readonly forms: readonly Form[];
}
interface Question {
  readonly question: string;
  readonly answer: string;
  /** Quantity, text, and what it is read as; null where it is refused or blank. */
  readonly texts: readonly (readonly [string, Cell, Means | null])[];
}

const FOLDER = join(import.meta.dirname, 'texts');
const parsed = (name: string): unknown => JSON.parse(readFileSync(join(FOLDER, name), 'utf8'));
const names = readdirSync(FOLDER).filter((name) => name !== 'undecided.json');
const corpus = names.map((name) => parsed(name) as Texts);
const undecided = parsed('undecided.json') as readonly Question[];

/** Function, argument, and the word or truth that decides how the argument is read. */
type Place = readonly [id: string, argument: string, decides?: string | boolean];
/** Where a quantity of the corpus is read by a function; beside it where the figure is taken as printed. */
const PLACES: Readonly<Record<string, Place>> = {
  'f-number': ['STOPDIFF', 'from', 'aperture'],
  'f-number @ FNUMBER': ['FNUMBER', 'text'],
  'f-number @ LIGHTEVENNESS without a scale': ['LIGHTEVENNESS', 'values', 'aperture'],
  'shutter time': ['STOPDIFF', 'from', 'time'],
  'flash duration': ['FLASHLEVEL', 'duration'],
  'flash duration @ FREEZEBLUR': ['FREEZEBLUR', 'duration'],
  'open time': ['POPSBUILD', 'openTime'],
  iso: ['EXPOSUREVALUE', 'iso'],
  energy: ['POWERFORREADING', 'power'],
  kelvin: ['MIREDSHIFT', 'from'],
  'length, mm': ['BELLOWSLOSS', 'draw'],
  'focal length': ['BELLOWSLOSS', 'focal'],
  'light distance': ['FALLOFF', 'near'],
  'light distance @ METRES': ['METRES', 'text'],
  'source width': ['FALLOFF', 'width'],
  'source width @ FALLSPEED drop': ['FALLSPEED', 'drop'],
  'source width @ SPINSPEED diameter': ['SPINSPEED', 'diameter'],
  'blur circle': ['HYPERFOCAL', 'blurCircle'],
  'pixel pitch': ['FREEZEBLUR', 'pixelPitch'],
  wavelength: ['AIRYDISC', 'wavelength'],
  speed: ['FREEZEBLUR', 'speed'],
  stops: ['STOPSHIFT', 'stops'],
  loss: ['METERTARGET', 'loss'],
  tolerance: ['POPSFORTARGET', 'tolerance'],
  'tolerance @ POPSFORTARGET': ['POPSFORTARGET', 'tolerance'],
  ratio: ['WORKINGAPERTURE', 'pupil'],
  factor: ['STOPDIFF', 'from', 'factor'],
  share: ['GUIDEREADING', 'powerShare'],
  level: ['FLASHLEVEL', 'from'],
  pops: ['POPSREADING', 'pops'],
  days: ['HIRECOST', 'days'],
  magnification: ['MAGNIFICATIONLOSS', 'magnification'],
  'magnification @ MAGNIFICATIONLOSS': ['MAGNIFICATIONLOSS', 'magnification'],
  'magnification @ AIRYDISC': ['AIRYDISC', 'magnification'],
  lux: ['LIGHTEVENNESS', 'values', 'lux'],
  rpm: ['SPINSPEED', 'rpm'],
  'raw value': ['LIGHTEVENNESS', 'values', 'raw'],
};
const AS_PRINTED: Readonly<Record<string, Place>> = {
  'f-number': ['GUIDENUMBER', 'reading'],
  'shutter time': ['SECONDS', 'text', false],
};

interface Reader {
  readonly arg: Arg;
  readonly quantity: Quantity;
}
function readerAt([id, name, decides]: Place): Reader {
  const known = prepared(rowOf(id) as AnyRow);
  const place = known.args.findIndex((arg) => arg.name === name);
  const values: unknown[] = [];
  const decider = known.deciders[place] as number;
  if (decider >= 0) values[decider] = decides;
  return { arg: known.args[place] as Arg, quantity: known.quantity(place, values) as Quantity };
}

const isBlank = (reading: Reading<ArgumentValue>): boolean =>
  'missing' in reading || ('value' in reading && ['nothing', 'zero'].includes(reading.reason.by));

/** What the function gets: a number, which may stand in for a blank; or in words why none. */
interface Came {
  readonly as: 'number' | 'blank' | 'refused';
  readonly value: number;
}
function cameOf(cell: Cell, { arg, quantity }: Reader): Came {
  const reading = readWithReason(cell, arg, quantity);
  const value = valueOf(reading);
  // the quick ways to the same must not differ
  expect(readArgument(cell, arg, quantity)).toEqual(value);
  const column = new ArgumentReader(arg, quantity);
  const quick = column.number(cell);
  expect(Number.isNaN(quick) ? column.read(cell) : quick).toEqual(value);
  if ('refused' in reading) {
    expect(reading.refused.message).toMatch(/^\S.*[.?]$/s);
    return { as: 'refused', value: NaN };
  }
  const number = typeof value === 'number' ? value : NaN;
  if (isBlank(reading)) return { as: 'blank', value: number };
  return outOfRange([arg], [value]) === undefined
    ? { as: 'number', value: number }
    : { as: 'refused', value: NaN };
}
const cameAt = (cell: Cell, key: string, places = PLACES): Came =>
  cameOf(cell, readerAt(places[key] as Place));

/** What HEADPOWER makes of a setting. */
function powerOf(cell: Cell, { most, scale, top, step }: Beside): Came {
  const answer = call(rowOf('HEADPOWER') as AnyRow, [cell, most, scale, top, step]);
  return isCellError(answer) ? { as: 'refused', value: NaN } : { as: 'number', value: answer as number };
}

const FRACTION: Beside = { most: 1000, scale: 'fraction', step: 0.1 };
const cameTo = (cell: Cell, key: string, beside = FRACTION): Came =>
  key === 'power setting' ? powerOf(cell, beside) : cameAt(cell, key);

const isNear = ({ value }: Came, wanted: number): boolean =>
  Math.abs(value - wanted) <= 1e-9 * Math.abs(wanted);

/** Whether a cell is read as it should be: marked, and as printed where some function takes it so. */
function isReadAs(cell: Cell, means: Means, key: string, beside?: Beside): boolean {
  const { printed, exact } = typeof means === 'number' ? { printed: undefined, exact: means } : means;
  if (printed !== undefined && key in AS_PRINTED && !isNear(cameAt(cell, key, AS_PRINTED), printed))
    return false;
  const came = cameTo(cell, key, beside);
  // where only the figure is given, it may be a mark
  return exact === undefined ? came.as === 'number' : isNear(came, exact);
}

const shown = (cell: Cell, key: string, beside?: Beside): string => {
  const { as, value } = cameTo(cell, key, beside);
  return `${JSON.stringify(cell).slice(0, 60)} came as ${as === 'number' ? value : as}`;
};

/** Cells of a form that are not read as they should be, with what came of them. */
function wrong(
  { read = [], blank = [], blankOrRefused = [], refused = [], beside }: Form,
  key: string,
): string[] {
  const came = (cell: Cell): Came['as'] => cameTo(cell, key, beside).as;
  return [
    ...read.filter(([cell, means]) => !isReadAs(cell, means, key, beside)).map(([cell]) => cell),
    ...blank.filter((cell) => came(cell) !== 'blank'),
    ...blankOrRefused.filter((cell) => came(cell) === 'number'),
    ...refused.filter((cell) => came(cell) !== 'refused'),
  ].map((cell) => shown(cell, key, beside));
}

const keyOf = (quantity: string, form: Form): string =>
  form.where === undefined ? quantity : `${quantity} @ ${form.where}`;

describe.each(corpus)('$quantity: what a cell may hold', ({ quantity, forms }) => {
  test.each(forms)('$form', (form) => expect(wrong(form, keyOf(quantity, form))).toEqual([]));
});

/** A filter says the same to FILTERLOSS as to every argument that is a loss. */
describe('a filter, to FILTERLOSS', () => {
  const loss = corpus.find(({ quantity }) => quantity === 'loss') as Texts;
  const isFilter = (cell: Cell): cell is string => typeof cell === 'string' && /nd|x|stop/i.test(cell);
  const stops = (text: string): Answer => call(rowOf('FILTERLOSS') as AnyRow, [text]);
  const shownStops = (text: string): string => `${text} came as ${JSON.stringify(stops(text))}`;
  test.each(loss.forms)('$form', ({ read = [], refused = [] }) => {
    const misread = read.flatMap(([cell, means]) =>
      isFilter(cell) && !isNear({ as: 'number', value: stops(cell) as number }, means as number)
        ? [cell]
        : [],
    );
    const taken = refused.filter(isFilter).filter((text) => !isCellError(stops(text)));
    expect([...misread, ...taken].map(shownStops)).toEqual([]);
  });
});

describe('what the rules leave open', () => {
  test.each(undecided)('$question', ({ texts }) => {
    const odd = texts.filter(([key, cell, means]) =>
      means === null ? cameTo(cell, key).as === 'number' : !isReadAs(cell, means, key),
    );
    expect(odd.map(([key, cell]) => `${key}: ${shown(cell, key)}`)).toEqual([]);
  });
});
