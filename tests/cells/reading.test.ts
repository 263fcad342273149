import { describe, expect, test } from 'vitest';
import { Q, type Quantity } from '../../src/catalogue/quantities';
import { isFail } from '../../src/exposure/core/result';
import { BLANK, readQuantity } from '../../src/cells/quantity';

const read = (cell: unknown, quantity: Quantity): unknown => readQuantity(cell, quantity, 'it');
const message = (cell: unknown, quantity: Quantity): string => {
  const value = read(cell, quantity);
  return isFail(value) ? value.message : `read as ${String(value)}`;
};
const near = (value: number): unknown => expect.closeTo(value, 12);
const stopsAbove = (mark: number, stops: number): number => 2 ** ((mark + stops) / 2);
const F8 = 6;
const F11 = 7;
const F16 = 8;

describe('every form that a quantity lists is read', () => {
  for (const [key, quantity] of Object.entries(Q))
    for (const form of quantity.forms)
      test(`${key}: ${form}`, () => expect(typeof read(form, quantity)).toBe('number'));
});

/* prettier-ignore */
const READ: readonly (readonly [keyof typeof Q, unknown, number])[] = [
  // f-numbers, counted in stops from f/1: f/8 is 6, f/11 is 7
  ['aperture', 11, stopsAbove(F11, 0)], ['aperture', '11', stopsAbove(F11, 0)], ['aperture', 'f/11', stopsAbove(F11, 0)], ['aperture', 'F11', stopsAbove(F11, 0)],
  ['aperture', 'ƒ/11', stopsAbove(F11, 0)], ['aperture', ' f / 11 ', stopsAbove(F11, 0)], ['aperture', 'f/8 2/3', stopsAbove(F8, 2 / 3)], ['aperture', 'f/8 ⅔', stopsAbove(F8, 2 / 3)],
  ['aperture', 'f/11+0.3', stopsAbove(F11, 0.3)], ['aperture', 'f/11 +3/10', stopsAbove(F11, 0.3)], ['aperture', 'f/11 .3', stopsAbove(F11, 0.3)], ['aperture', 'f/11 +0.3', stopsAbove(F11, 0.3)],
  ['aperture', 'f/16 -1/3', stopsAbove(F16, -1 / 3)], ['aperture', 'f/16 −1/3', stopsAbove(F16, -1 / 3)], ['aperture', '11³', stopsAbove(F11, 0.3)], ['aperture', 'f/11⁹', stopsAbove(F11, 0.9)],
  ['aperture', 'f/11+0,3', stopsAbove(F11, 0.3)], ['aperture', 'f/5,6', stopsAbove(5, 0)], ['aperture', 'f/5.6 1/3', stopsAbove(5, 1 / 3)], ['aperture', 5.6, stopsAbove(5, 0)],
  ['aperture', 11.3, 11.3], ['aperture', '11 exact', 11], ['aperture', 'f/11 exact', 11], ['aperture', 'f/13', stopsAbove(22 / 3, 0)], ['aperture', 'f/13 half', stopsAbove(7.5, 0)],
  ['aperture', 'f/1.2 half', stopsAbove(0.5, 0)], ['aperture', 1.2, stopsAbove(2 / 3, 0)], ['aperture', 9.5, stopsAbove(6.5, 0)],
  ['apertureAsTyped', 11, 11], ['apertureAsTyped', 'f/11', 11], ['apertureAsTyped', 'f/11+0.3', stopsAbove(F11, 0.3)],
  // times
  ['duration', '1/250', 1 / 250], ['duration', '1/250 s', 1 / 250], ['duration', '4 ms', 0.004], ['duration', '350 µs', 350e-6], ['duration', '350 μs', 350e-6], ['duration', '350us', 350e-6],
  ['duration', '2 s', 2], ['duration', '30"', 30], ['duration', '30″', 30], ['duration', '30”', 30], ['duration', '1 min', 60], ['duration', 0.004, 0.004], ['duration', '0,125', 0.125],
  ['duration', '1/60', 1 / 60], ['shutterTime', '1/60', 1 / 64], ['shutterTime', 1 / 60, 1 / 64], ['shutterTime', '1/60 exact', 1 / 60], ['shutterTime', '1/45', 2 ** -5.5], ['shutterTime', '30"', 32],
  ['shutterTime', '1/20', 2 ** (-13 / 3)], ['shutterTime', '1/20 half', 2 ** -4.5], ['shutterTime', '1/125 s +0.3', 2 ** -6.7], ['shutterTime', '1/250s', 1 / 256], ['wait', null, 0], ['wait', '1/2', 0.5],
  // speeds of film
  ['iso', 100, 100], ['iso', 'ISO 400', 400], ['iso', 'iso400', 400], ['iso', 125, 100 * 2 ** (1 / 3)], ['iso', 'ISO 80 exact', 80], ['iso', 12800, 12800], ['iso', 12500, 12800],
  // energy, length, speed
  ['energy', 400, 400], ['energy', '400 Ws', 400], ['energy', '400 J', 400], ['energy', '1.2 kJ', 1200], ['energy', '1 200 Ws', 1200], ['energy', '1\u202f200 Ws', 1200],
  ['distance', '80 cm', 0.8], ['distance', '1.2 m', 1.2], ['distance', '5 ft', 1.524], ['distance', '30 in', 0.762], ['distance', `5' 6"`, 1.6764], ['distance', '5′ 6″', 1.6764], ['distance', `5'`, 1.524],
  ['distance', '1/2 in', 0.0127], ['lensLength', 150, 150], ['lensLength', '6 in', 152.4], ['lensLength', '30 cm', 300], ['pitch', '5.5 µm', 5.5], ['pitch', '0.00376 mm', 3.76],
  ['speed', '2 m/s', 2], ['speed', '7 km/h', 7 / 3.6], ['speed', '5 mph', 2.2352], ['guide', '80 ft', 24.384],
  // stops, ratios, shares
  ['stops', '1.5', 1.5], ['stops', '-1/3', -1 / 3], ['stops', '−1/3', -1 / 3], ['stops', '2/3', 2 / 3], ['stops', '1 1/3', 4 / 3], ['stops', '-1 1/3', -4 / 3], ['stops', '+0.3 stops', 0.3], ['stops', '½', 0.5],
  ['stops', '1½', 1.5], ['stops', '', 0], ['stops', null, 0], ['stops', 0, 0],
  ['ratio', '3:1', 3], ['ratio', '1:2', 0.5], ['ratio', '30%', 0.3], ['ratio', '1/4', 0.25], ['ratio', '3 : 1', 3], ['magnification', 'infinity', 0], ['magnification', '1:1', 1],
  // filters, each read as what it is wanted as
  ['filterFactor', 'ND8', 8], ['filterFactor', 'nd 0.9', 10 ** 0.9], ['filterFactor', '8×', 8], ['filterDensity', 'ND8', Math.log10(8)], ['filterDensity', 'ND 0,9', 0.9], ['filterTransmission', 'ND8', 1 / 8],
  ['filterTransmission', '12.5%', 0.125], ['receptor', 'dome', 340], ['receptor', 'Flat', 250], ['receptor', 320, 320], ['rpm', '33 1/3', 100 / 3],
];
describe('a cell is read as the quantity it stands for', () => {
  for (const [key, cell, value] of READ)
    test(`${key}: ${JSON.stringify(cell)}`, () => expect(read(cell, Q[key])).toEqual(near(value)));
});

describe('an empty cell is the same however the host says it', () => {
  for (const [key, quantity] of Object.entries(Q))
    test(key, () => {
      const wanted = quantity.blank === 'missing' ? BLANK : 0;
      for (const empty of [0, -0, null, undefined, '', '  ', '\u00a0'])
        expect(read(empty, quantity)).toBe(wanted);
    });
});

/* prettier-ignore */
const REFUSED: readonly (readonly [keyof typeof Q, unknown, RegExp])[] = [
  ['aperture', 'abc', /"abc" cannot be read as an f-number. Write 11, f\/11, f\/8 2\/3, f\/11\+0.3 or 11³\./],
  ['aperture', 'f/11+3', /"f\/11\+3" can be read two ways: write f\/11\+0.3, or f\/32\./],
  ['aperture', 'f/11-2', /write f\/11-0.2, or f\/5.6\./],
  ['aperture', '8 2/3', /write f\/8 2\/3\./],
  ['aperture', '11+0.3', /write f\/11\+0.3\./],
  ['aperture', 'f/14 half', /names no half-stop mark/],
  ['aperture', '2 m', /is a length, not an f-number/],
  ['aperture', 'f/11 3', /cannot be read/],
  ['aperture', 'f/8 and a bit', /cannot be read/],
  ['aperture', true, /holds TRUE, not an f-number/],
  ['aperture', { odd: 1 }, /neither a number nor a text/],
  ['aperture', Number.NaN, /must be a finite number/],
  ['duration', '2 m', /is a length, not a time/],
  ['duration', 46023, /46023 looks like a date, made of 1\/60 or the like. Type =1\/60, or 1\/60 in a text cell\./],
  ['duration', new Date(), /looks like a date/],
  ['duration', '1,200', /can be read two ways: write 1200, or 1.2\./],
  ['duration', '1/0', /divides by nothing/],
  ['duration', '1:30', /cannot be read/],
  ['energy', '1,200 Ws', /can be read two ways: write 1200, or 1.2\./],
  ['energy', '400 W', /is a power, not an energy/],
  ['energy', '1/2', /cannot be read/],
  ['energy', '4 parsecs', /cannot be read/],
  ['stops', 45000, /looks like a date, made of 1\/4/],
  ['ratio', (3 * 60 + 1) / 1440, /looks like a clock time, made of 3:1 or the like. Type =3\/1, or 3:1 in a text cell\./],
  ['ratio', (1 * 60 + 2) / 1440, /looks like a clock time/],
  ['magnification', 45000, /looks like a date/],
  ['speed', '2 m', /is a length, not a speed/],
  ['pixels', '3 mm', /is a length, not a number of pixels/],
  ['ratio', '3:0', /cannot be read/],
];
describe('what cannot be read is refused in words', () => {
  for (const [key, cell, words] of REFUSED)
    test(`${key}: ${String(cell)}`, () => expect(message(cell, Q[key])).toMatch(words));
});

test('numbers that are no clock time are left alone', () => {
  for (const value of [0.5, 0.0625, 1 / 3, 1 / 7, 0.75, 2, 3, 1.25, 1 / 24, 0.1234])
    expect(read(value, Q.ratio)).toBe(value);
});

test('whole numbers from 10,000 up are refused only where a date may hide', () => {
  expect(read(9999, Q.duration)).toBe(9999);
  expect(message(10000, Q.duration)).toMatch(/looks like a date/);
  expect(read(10000.5, Q.duration)).toBe(10000.5);
  expect(read(12000, Q.raw)).toBe(12000);
  expect(read('10000 s', Q.duration)).toBe(10000);
});

test('a long text is cut in the message', () => {
  expect(message('x'.repeat(500), Q.aperture).length).toBeLessThan(180);
});
