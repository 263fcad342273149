import { describe, expect, test } from 'vitest';
import { Q } from '../../src/catalogue/quantities';
import { bareOf, beyondLimit, readBare } from '../../src/cells/bareNumber';
import { BLANK, readingOf, readQuantity } from '../../src/cells/quantityReader';

describe('a bare number that is not believed says why', () => {
  const { lightDistance, aperture, wavelength, ratio, pops } = Q;
  const typed = 'made of 3:1 or the like. Type =3/1, or 3:1 in a text cell';
  test.each([
    [Infinity, lightDistance, 'must be a finite number'],
    [80, lightDistance, 'is too large for a distance: 80 cm? Write the unit: 80 cm, or 80 m'],
    [0.008, aperture, 'is too small for an f-number: a shutter time? An aperture so wide is written f/0.008'],
    // too large to be a wavelength, and no date either
    [12_000, wavelength, 'is too large for a wavelength: no light of a studio. Write the unit: 12000 nm'],
    [10_000, pops, 'looks like a date, which the cell made of what was typed. Set it to a number format and type the number again'],
    // 3:01 is 181 of the 1440 minutes of a day
    [181 / 1440, ratio, `looks like a clock time, ${typed}`],
    // 2:30 is 150 of them, and 0.1041666… s; 3:12 and 2/15 s are one number
    [150 / 1440, Q.wait, 'looks like a clock time, made of 1:30 or the like. Type seconds, or 1.5 min; round what is calculated, =ROUND(…,4)'],
  ] as const)('%d', (value, quantity, message) =>
    expect(readBare(value, quantity, bareOf(quantity, false))).toEqual({ fail: 'unreadable', message }),
  ); // prettier-ignore

  test('but a calculated time that is rounded, as the sentence asks for, is read', () => {
    expect(readBare(2 / 15, Q.wait, bareOf(Q.wait, false))).toHaveProperty('fail');
    expect(readBare(0.1333, Q.wait, bareOf(Q.wait, false))).toHaveProperty('value', 0.1333);
  });
  test('but one of a text was no time of day', () =>
    expect(readBare(181 / 1440, ratio, bareOf(ratio, false, true))).toEqual({
      value: 181 / 1440,
      reason: { by: 'number' },
    }));
  test('nor is one of a quantity of which no time of day is known', () =>
    expect(readBare(181 / 1440, lightDistance, bareOf(lightDistance, false))).toEqual({
      value: 181 / 1440,
      reason: { by: 'number' },
    }));
});

test('a number below 0 is a number, however small a quantity may be', () =>
  expect(readingOf(-8, Q.aperture, 'it')).toEqual({ value: -8, reason: { by: 'number' } }));

test('no kelvin at all are a blank, with their unit too, and not too few of them', () => {
  for (const cell of [0, '0', '0 K']) expect(readQuantity(cell, Q.kelvin, 'it')).toBe(BLANK);
});

test('nothing is beyond a quantity without limits', () => {
  expect(Q.stops.limits).not.toHaveProperty('most');
  expect(beyondLimit(1e9, Q.stops)).toBeUndefined();
  expect(Q.mired).not.toHaveProperty('limits');
  expect(beyondLimit(1e9, Q.mired)).toBeUndefined();
});
