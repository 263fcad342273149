import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import { Q, type Quantity } from '../../src/catalogue/quantities';
import { type AnyRow, type Arg, isQuantity } from '../../src/catalogue/types';
import { BLANK, readQuantity } from '../../src/cells/quantityReader';
import { isFail } from '../../src/exposure/core/result';
import { whatItMeasures } from '../../src/cells/units';
import { formatOf } from '../../src/sheets/formats';

const quantities = Object.entries(Q) as [string, Quantity][];

describe('the entry of a quantity', () => {
  test.each(quantities)('%s is shown in its own unit', (_, { shown, unit, one, title }) => {
    const words = [...`${shown.input}${shown.result}`.matchAll(/"([^"]*)"/g)].map(([, word]) => word?.trim());
    const signs: Readonly<Record<string, string>> = { 'f-number': 'f/', 'a ratio': ':1' };
    const own = [unit, one, signs[unit], signs[title]];
    expect(words.filter((word) => !own.includes(word))).toEqual([]);
  });
  test.each(quantities)('%s is preset as text where it is typed as one, and then alone', (_, { shown }) =>
    expect(shown.input === '@').toBe(shown.text),
  );
  test.each(quantities)('%s has the same looks on a sheet', (name, { shown, unit }) =>
    expect(formatOf(name)).toEqual({ ...shown, unit }),
  );
  test.each(quantities.filter(([, { units }]) => units))(
    '%s has unit words of which it can be said what they measure',
    (_, { units }) =>
      expect(Object.keys(units ?? {}).filter((word) => whatItMeasures(word) === undefined)).toEqual([]),
  );
  const told = quantities.flatMap(([name, quantity]) => {
    const { date = '', clock = '' } = quantity.limits ?? {};
    const found = `${date} ${clock}`.matchAll(/Type =\S+, or (\S+) in a text cell/g);
    return [...found].map(([, typed]) => [name, typed, quantity] as const);
  });
  test.each(told)(
    '%s reads %s, which it says to type instead of a date or a time of day',
    (_, typed, quantity) => expect(readQuantity(typed, quantity, 'it')).toEqual(expect.any(Number)),
  );
});

/** The last bare number that is believed, the first that is not, and the same with its unit. */
const LIMITS: readonly (readonly [keyof typeof Q, number, number, string])[] = [
  ['fullFraction', 1, 1.001, '1/1'],
  ['aperture', 0.1, 0.099, 'f/0.099'],
  ['aperture', 1000, 1000.1, 'f/1200'],
  ['apertureAsTyped', 1000, 1000.1, 'f/1200'],
  ['apertureFigure', 9999.9, 10_000, 'f/10000'],
  ['anyAperture', 9999.9, 10_000, 'f/10000'],
  ['evenReading', 128, 128.5, 'f/200'],
  ['shutterTime', 9999.9, 10_000, '10000 s'],
  ['duration', 9999.9, 10_000, '10000 s'],
  ['wait', 9999.9, 10_000, '10000 s'],
  ['flashDuration', 1, 1.001, '2600 s'],
  ['litTime', 30, 30.1, '31 s'],
  ['iso', 3, 2.99, 'ISO 2'],
  ['distance', 9999.9, 10_000, '10000 m'],
  ['lightDistance', 20, 20.1, '80 m'],
  ['size', 20, 20.1, '80 ft'],
  ['focalLength', 5, 4.9, '4.9 mm'],
  ['pitch', 0.1, 0.09, '0.09 µm'],
  ['pitch', 100, 101, '101 µm'],
  ['smallLength', 2, 2.1, '3 mm'],
  ['wavelength', 200, 199, '199 nm'],
  ['wavelength', 2000, 2001, '2001 nm'],
  ['stops', 9999.9, 10_000, '10000 stops'],
  ['stopsStep', 9999.9, 10_000, '10000 stops'],
  ['stopsAtFull', 9999.9, 10_000, '10000 stops'],
  ['fullPercent', 1, 1.001, '41%'],
  ['tolerance', 1, 1.1, '1.1 stops'],
  ['lightLoss', 20, 20.1, '21 stops'],
  ['ratio', 9999.9, 10_000, '10000:1'],
  ['share', 9999.9, 10_000, '1000000%'],
  ['pulseLevel', 9999.9, 10_000, '1000000%'],
  ['magnification', 50, 51, '51:1'],
  ['filterTransmission', 9999.9, 10_000, '1000000%'],
  ['pops', 9999, 10_000, '10000 pops'],
  ['lit', 9999.9, 10_000, '1000000%'],
  ['days', 1000, 1001, '1001 days'],
];
describe('bare numbers that no studio has', () => {
  const read = (cell: unknown, key: keyof typeof Q): unknown => readQuantity(cell, Q[key], 'it');
  test.each(LIMITS)('%s: %d is believed, %d is not, but %s is', (key, last, first, withUnit) => {
    for (const cell of [last, String(last), withUnit]) expect(read(cell, key)).toEqual(expect.any(Number));
    for (const cell of [first, String(first)]) expect(isFail(read(cell, key) as number)).toBe(true);
  });
  test('kelvin are never so few, with their unit or without', () => {
    for (const cell of [500, '500', '500 K']) expect(read(cell, 'kelvin')).toBe(500);
    for (const cell of [499, '499', '499 K', '5.6K'])
      expect(isFail(read(cell, 'kelvin') as number)).toBe(true);
  });
  test('stand in every entry that has a limit', () => {
    const limited = quantities.filter(([, { limits }]) => limits?.date ?? limits?.least ?? limits?.most);
    expect(new Set(limited.map(([key]) => key))).toEqual(new Set([...LIMITS.map(([key]) => key), 'kelvin']));
  });
  test.each([
    ['aperture', 5400, 'it: 5400 is too large for an f-number: a date, or lux? An aperture so small is written f/5400.'],
    ['aperture', 0.008, 'it: 0.008 is too small for an f-number: a shutter time? An aperture so wide is written f/0.008.'],
    ['flashDuration', '2600', 'it: "2600" is too large for a flash duration: a maker’s 1/2600 s is =1/2600. Seconds need their unit there: 2600 s.'],
    ['lightDistance', 80, 'it: 80 is too large for a distance: 80 cm? Write the unit: 80 cm, or 80 m.'],
    ['wavelength', 0.55, 'it: 0.55 is too small for a wavelength: 0.55 µm? Write the unit: 0.55 µm, or 0.55 nm.'],
    ['smallLength', 7.5, 'it: 7.5 is too large for a length: 7.5 µm? 7.5 µm is 0.0075 mm. Write the unit: 7.5 µm, or 7.5 mm.'],
    ['focalLength', 0.1, 'it: 0.1 is too small for a focal length: a tolerance in the place of the focal length? With its unit it is believed: 0.1 mm.'],
    ['tolerance', 120, 'it: 120 is too large for a tolerance in stops: a focal length in the place of the tolerance? With its unit it is believed: 120 stops.'],
    ['pops', 46_329, 'it: 46329 looks like a date, which the cell made of what was typed. Set it to a number format and type the number again.'],
  ] as const)('%s: %s says what somebody meant', (key, cell, message) =>
    expect(read(cell, key)).toEqual({ fail: 'unreadable', message }),
  ); // prettier-ignore
});

/** What may well be none: no stops, no loss, no density, no delay, a head that is off, nothing in the dark. Of all else 0 is an empty cell. */
const MAY_BE_NONE: readonly string[] = ['wait', 'stops', 'lightLoss', 'filterDensity', 'signal', 'lit', 'mired', 'amperes', 'watts', 'ev', 'percent']; // prettier-ignore

test.each(quantities)(
  '%s: an empty cell is none, or blank where there is no such thing, whatever the host sends',
  (key, quantity) => {
    for (const cell of [0, null, undefined, ''])
      expect(readQuantity(cell, quantity, 'it')).toBe(MAY_BE_NONE.includes(key) ? 0 : BLANK);
  },
);

/** The signs of the arguments of one cell, as a formula may use them. */
const signsOf = (row: AnyRow): string[] =>
  (row.args as readonly Arg[])
    .filter(({ takes }) => takes === 'one')
    .flatMap(({ sign, kind }) => sign ?? (isQuantity(kind) ? (kind.sign ?? []) : []));

test('a sign in the formula of a row stands for one of its arguments, and no more', () => {
  const doubled = CATALOGUE.flatMap((row) => {
    const words: string[] = row.formula.match(/\p{L}[\p{L}\d₀-₉]*/gu) ?? [];
    const used = signsOf(row).filter((sign) => words.includes(sign));
    return used.length === new Set(used).size ? [] : [`${row.id}: ${used.join()}`];
  });
  expect(doubled).toEqual([]);
});

const SRC = join(import.meta.dirname, '../../src');
const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' }).filter((file) => /\.tsx?$/.test(file));
const filesWith = (text: RegExp): string[] =>
  files.filter((file) => text.test(readFileSync(join(SRC, file), 'utf8'))).sort();

describe('what is known of a quantity stands in its entry', () => {
  test('functions name quantities, and so do the views of sheets, the table of Balance and what reads a set; nobody else', () =>
    expect(
      filesWith(/\bQ\.\w/).filter((file) => !/^(catalogue\/rows\/|pane\/balance\/|set\/read)/.test(file)),
    ).toEqual(['sheets/formats.ts']));
  test('nobody looks at a name or unit to tell which quantity it is', () =>
    expect(filesWith(/\.(?:unit|title) [!=]== '[^']/)).toEqual([]));
});
