import { describe, expect, test } from 'vitest';
import { Q, type Quantity } from '../../src/catalogue/quantities';
import { isFail } from '../../src/exposure/core/result';
import { bareNumber, bareOf } from '../../src/cells/bareNumber';
import { BLANK, readingOf, readQuantity, valueOf } from '../../src/cells/quantityReader';
import { orList, quote } from '../../src/cells/textParts';

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
  ['iso', 100, 100], ['iso', 'ISO 400', 400], ['iso', 'iso400', 400], ['iso', 'ISO160', 100 * 2 ** (2 / 3)], ['iso', 125, 100 * 2 ** (1 / 3)], ['iso', 'ISO 80 exact', 80], ['iso', 12800, 12800], ['iso', 12500, 12800],
  // energy, length, speed
  ['energy', 400, 400], ['energy', '400 Ws', 400], ['energy', '400 J', 400], ['energy', '1.2 kJ', 1200],
  ['distance', '80 cm', 0.8], ['distance', '1.2 m', 1.2], ['distance', '5 ft', 1.524], ['distance', '30 in', 0.762], ['distance', `5' 6"`, 1.6764], ['distance', '5′ 6″', 1.6764], ['distance', `5'`, 1.524],
  ['distance', '1/2 in', 0.0127], ['lensLength', 150, 150], ['lensLength', '6 in', 152.4], ['lensLength', '30 cm', 300], ['pitch', '5.5 µm', 5.5], ['pitch', '0.00376 mm', 3.76],
  ['speed', '2 m/s', 2], ['speed', '7 km/h', 7 / 3.6], ['speed', '5 mph', 2.2352], ['guide', '80 ft', 24.384],
  // stops, ratios, shares
  ['stops', '1.5', 1.5], ['stops', '-1/3', -1 / 3], ['stops', '−1/3', -1 / 3], ['stops', '2/3', 2 / 3], ['stops', '1 1/3', 4 / 3], ['stops', '-1 1/3', -4 / 3], ['stops', '+0.3 stops', 0.3], ['stops', '½', 0.5],
  ['stops', '1½', 1.5], ['stops', '', 0], ['stops', null, 0], ['stops', 0, 0],
  ['ratio', '3:1', 3], ['ratio', '1:2', 0.5], ['ratio', '30%', 0.3], ['ratio', '1/4', 0.25], ['ratio', '3 : 1', 3], ['magnification', 'infinity', 0], ['magnification', '1:1', 1],
  // filters, each read as what it is wanted as
  ['filterFactor', 'ND8', 8], ['filterFactor', 'nd 0.9', 10 ** 0.9], ['filterFactor', '8×', 8], ['filterDensity', '8×', Math.log10(8)], ['filterFactor', 'ND .25', 10 ** 0.25], ['filterDensity', 'ND8', Math.log10(8)], ['filterDensity', 'ND 0,9', 0.9], ['filterTransmission', 'ND8', 1 / 8],
  ['filterFactor', '8.5x', 8.5], ['filterFactor', '16x', 16], ['filterFactor', '1.25x', 1.25], ['filterFactor', 'x16', 16], ['filterFactor', 'x 1.25', 1.25], ['filterFactor', 'ND16', 16], ['filterFactor', 'ND 1.25', 10 ** 1.25],
  ['distance', `15' 6"`, 4.7244], ['distance', `5' 11"`, 1.8034], ['distance', `5' 6.25"`, 1.68275], ['aperture', 'f/11 4/2', stopsAbove(F11, 2)],
  ['filterDensity', '8x', Math.log10(8)], ['filterTransmission', 'x4', 0.25], ['filterTransmission', 'ND .9', 10 ** -0.9], ['filterFactor', 'ND 2,0', 100],
  ['aperture', 'f/11 +0.3 stops', stopsAbove(F11, 0.3)], ['aperture', 'f/11 -0.3 Stop', stopsAbove(F11, -0.3)], ['aperture', 'f/11 1 1/3', stopsAbove(F11, 4 / 3)], ['aperture', 'f/11+12/10', stopsAbove(F11, 1.2)], ['aperture', 'f/13 HALF', stopsAbove(7.5, 0)], ['aperture', '11 Exact', 11],
  ['aperture', '11⁰', stopsAbove(F11, 0)], ['apertureAsTyped', '11³', stopsAbove(F11, 0.3)], ['apertureAsTyped', 'f/11 half', stopsAbove(F11, 0)], ['apertureAsTyped', 'f/12 +0.5', 12 * 2 ** 0.25],
  ['shutterTime', '1/60 +0.3 stop', 2 ** -5.7], ['shutterTime', '1/60 s -0.3 stops', 2 ** -6.3], ['shutterTime', '1/60 seconds half', 1 / 64], ['shutterTime', '1/60 sec exact', 1 / 60], ['duration', '1/60 second +1/2', 2 ** -5.5],
  ['iso', 'ISO 100 +0.3', 100 * 2 ** 0.3], ['iso', 'ISO 400 half', 400], ['duration', '-2 s', -2], ['duration', '2 h', 7200], ['magnification', ' Infinity ', 0], ['guide', `5' 6"`, 1.6764], ['distance', `5' 6,5"`, 1.6891],
  ['filterTransmission', '12.5%', 0.125], ['receptor', 'dome', 340], ['receptor', 'Flat', 250], ['receptor', 320, 320], ['rpm', '33.3 rpm', 33.3],
];
/** One thing in the spellings that keyboards, phones and other sheets have for it. */
/* prettier-ignore */
const SPELLINGS: readonly (readonly [keyof typeof Q, number, readonly string[]])[] = [
  ['duration', 30, ['30"', '30″', '30“', '30”', '30„', "30''", '30′′', '30’’', ' 30 " ', '30\u00a0"', '30\u2009"']],
  ['distance', 1.6764, [`5' 6"`, `5'6"`, '5′ 6″', '5’ 6”', '5‘ 6“', '5´ 6"', '5´ 6´´', `5 ft 6 in`, `5' 6''`, `5'  6"`]],
  ['duration', 1 / 60, ['1/60', '1⁄60', '1∕60', '1/60 s', '1/60s', '1/60  s', ' 1/60', '1/60 sec']],
  ['stops', -1 / 3, ['-1/3', '−1/3', '–1/3', '‐1/3', '‑1/3', '- 1/3', '-⅓']],
  ['stops', 4 / 3, ['1 1/3', '1⅓', '1 ⅓', '+1 1/3', '1  1/3']],
  ['stops', 1.75, ['1.75', '1,75', '1¾', '1 3/4']],
  ['stops', 0.125, ['⅛', '1/8', '.125', '0,125', '+0.125']],
  ['ratio', 3, ['3:1', '3∶1', '3 : 1', '300%', '300 %']],
  ['ratio', 0.25, ['1:4', '¼', '25%', '1/4']],
  ['pitch', 5.5, ['5.5 µm', '5.5 μm', '5.5µm', '5,5']],
  ['filterFactor', 8, ['8x', '8×', 'x8', '× 8', '8 X', 'ND8', 'nd 8']],
  ['energy', 1200, ['1200', '1200 Ws', '1.2 kJ', '1,2 kJ', '1.200 kJ', '1.2e3', '1.2E+03 J', '1200 joules', '1200 watt-seconds']],
  ['energy', 1.2345, ['1.2345', '1,2345']],
  ['energy', 0.125, ['0.125', '0,125', '00,125']],
  ['energy', 1.125, ['1.1250', '01,125', '1,1250', '01.125']],
  ['aperture', stopsAbove(F8, 2 / 3), ['f/8 2/3', 'f/8 ⅔', 'f/8⅔', 'F/8 2/3', 'ƒ/8 2/3', 'f 8 2/3', 'f8 2/3', 'f/8+2/3', 'f/8 + 2/3']],
];
describe('spellings of the same', () => {
  for (const [key, value, texts] of SPELLINGS)
    for (const text of texts)
      test(`${key}: ${JSON.stringify(text)}`, () => {
        expect(read(text, Q[key])).toEqual(near(value));
        expect(valueOf(readingOf(text, Q[key], 'it'))).toEqual(near(value));
      });
});

describe('a cell is read as the quantity it stands for', () => {
  for (const [key, cell, value] of READ)
    test(`${key}: ${JSON.stringify(cell)}`, () => {
      expect(read(cell, Q[key])).toEqual(near(value));
      // common forms are read without the grammar, which knows them as well
      if (typeof cell === 'string') expect(valueOf(readingOf(cell, Q[key], 'it'))).toEqual(near(value));
    });
});

describe('in a list that is read to decimals', () => {
  test.each([
    ['aperture', 11, 11],
    ['aperture', '11', 11],
    ['aperture', 'f/11', stopsAbove(F11, 0)],
    ['aperture', 'f/11+0.3', stopsAbove(F11, 0.3)],
    ['apertureAsTyped', 'f/11', 11],
    ['shutterTime', 1 / 60, 1 / 60],
  ] as const)('%s: %j is %d', (key, cell, value) => {
    expect(readQuantity(cell, Q[key], 'it', true)).toEqual(near(value));
    if (typeof cell === 'string') expect(valueOf(readingOf(cell, Q[key], 'it', true))).toEqual(near(value));
  });
});

describe('an empty cell is the same however the host says it', () => {
  for (const [key, quantity] of Object.entries(Q))
    test(key, () => {
      const wanted = quantity.blank === 'missing' ? BLANK : 0;
      for (const empty of [0, -0, null, undefined, '', '  ', '\u00a0'])
        expect(read(empty, quantity)).toBe(wanted);
    });
});

test('a written nought is an empty cell where nought makes no sense', () => {
  for (const text of ['0', '0 Ws', '0.0', '0 kJ']) expect(read(text, Q.energy)).toBe(BLANK);
  expect(read('1:1', Q.magnification)).toBe(1);
  expect(read('0%', Q.magnification)).toBe(BLANK);
  for (const text of ['0', '0 stops', '0/3', '-0']) expect(read(text, Q.stops)).toEqual(near(0));
  // the word says what the figure does not
  expect(read('infinity', Q.magnification)).toBe(0);
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
  ['duration', new Date(0), /^it: it looks like a date/],
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
  ['ratio', '3:x', /cannot be read/],
  ['ratio', '3:1:2', /cannot be read/],
  ['ratio', '3:1 m', /cannot be read/],
  ['ratio', '1:1,200', /write 1200, or 1\.2\./],
  ['ratio', '30%%', /cannot be read/],
  ['energy', '30%', /is a percentage, not an energy\. Write 400, 400 Ws, 400 J or 1\.2 kJ\./],
  ['energy', '3:1', /cannot be read as an energy/],
  ['energy', '1/2 m', /is a length, not an energy/],
  // a unit of its own is no other kind
  ['distance', '1/2 ft', /cannot be read as a distance/],
  ['distance', '1e3 mm', /cannot be read as a distance/],
  ['magnification', '1 1/2x', /cannot be read as a magnification/],
  ['energy', '400 W', /is a power, not an energy \(a power for one second is 1 Ws\)\. Write/],
  ['volts', '400 W', /is a power, not a voltage\. Write 230 or 230 V\./],
  ['energy', '4 constructor', /cannot be read/],
  ['receptor', 'constructor', /cannot be read as a receptor\. Write flat, dome or 250\./],
  ['energy', false, /^it holds FALSE, not an energy\. Write/],
  ['energy', new Date(0), /^it holds a date, not an energy/],
  ['raw', Infinity, /must be a finite number/],
  ['aperture', 'f/11 1/0', /divides by nothing/],
  ['duration', '1e400', /divides by nothing or is too large/],
  ['duration', 'e3', /cannot be read/],
  ['duration', '2 s s', /cannot be read/],
  ['wait', '1/4 +0.3', /cannot be read/],
  ['aperture', '1/60 s', /is a time, not an f-number/],
  ['aperture', 'f/1,200', /write 1200, or 1\.2\./],
  ['aperture', 'f/11 +1,200', /write 1200, or 1\.2\./],
  ['aperture', 'f/11 +0.3 bananas', /cannot be read as an f-number/],
  ['aperture', 'f/11+12', /can be read two ways: write f\/11\+12\/10\.$/],
  ['aperture', 'f/11+10', /can be read two ways: write f\/11\+10\/10\.$/],
  ['aperture', 'f/9.5+3', /write f\/9\.5\+0\.3, or f\/29\.$/],
  ['aperture', 'f/11 inexact', /cannot be read/],
  ['aperture', 'f/11 exactly', /cannot be read/],
  ['aperture', 'f/13 behalf', /cannot be read/],
  ['aperture', 'f/13 halfway', /cannot be read/],
  ['aperture', 'f/11 +0.3 nonstop', /cannot be read/],
  ['aperture', 'f/11 +0.3 stopss', /cannot be read/],
  ['aperture', 'f/64 +9', /can be read two ways: write f\/64\+0\.9\.$/],
  ['aperture', '11³⁴', /cannot be read/],
  ['aperture', '11 3³', /cannot be read/],
  ['aperture', 'half', /cannot be read/],
  ['aperture', 'f/1,200 half', /can be read two ways: write 1200, or 1\.2\.$/],
  ['shutterTime', '1/70 half', /names no half-stop mark/],
  ['shutterTime', '1/60 +1', /can be read two ways\. Write 1\/60, 1\/250 s/],
  ['shutterTime', '1/60 s -2 stops', /can be read two ways/],
  ['shutterTime', '1/60 +1,200', /write 1200, or 1\.2\./],
  ['shutterTime', '1/60 +0.3 s', /can be read two ways/],
  ['shutterTime', '1/60 0.3', /cannot be read/],
  ['shutterTime', '1/60 5e-1', /cannot be read/],
  ['shutterTime', '1/60 +', /cannot be read/],
  ['shutterTime', '1/60sexact', /cannot be read/],
  // a range, a sum and two values say nothing certain
  ['aperture', 'f/3.5-5.6', /is a range, as on a zoom lens: write the aperture in use\.$/],
  ['aperture', 'f/4.5–6.3', /write the aperture in use/],
  ['aperture', 'f/8-11', /write the aperture in use/],
  ['aperture', 'f/8 -5.6', /write the aperture in use/],
  ['aperture', 'f/2.8–f/4', /write the aperture in use/],
  ['aperture', 'f/8 +1.3', /has more than tenths after it: write f\/11 \+0\.3\.$/],
  ['aperture', 'f/8 -1.5', /write f\/4 \+0\.5\.$/],
  ['aperture', 'f/8 -2', /write f\/8-0\.2, or f\/4\.$/],
  ['aperture', '1:2.8', /is how a lens names its widest aperture: write f\/2\.8\.$/],
  ['aperture', 'f8.5.6', /cannot be read/],
  ['aperture', 'f/8⅓1', /cannot be read/],
  ['shutterTime', '1/60-1/125', /can be read two ways\. Write 1\/60, 1\/250 s, 0\.004, 4 ms, 30" or 1 min, and stops after the unit as in 1\/250 s \+1\/3\.$/],
  ['shutterTime', '1 Ms', /can be read two ways: ms or s\?$/],
  ['shutterTime', '1 Msec', /can be read two ways: msec or sec\?$/],
  ['speed', '2 Mm/s', /can be read two ways: mm\/s or m\/s\?$/],
  ['lensLength', '35 Mm', /can be read two ways: mm or m\?$/],
  ['distance', `5' 13"`, /has too many inches: 12 inches make a foot\.$/],
  ['energy', '1.200 Ws', /can be read two ways: write 1200, or 1\.2\.$/],
  ['shutterTime', '1/1.000', /can be read two ways: write 1000, or 1\.$/],
  ['lightLoss', 'ND 3', /may be a factor, a density or stops: write ND 0\.9 or 8x where it takes 3 stops\.$/],
  ['lightLoss', 'ND1,000', /can be read two ways: write 1000, or 1\.$/],
  ['lightLoss', 'x0.5', /is a factor below 1: a density is written ND 0\.9\.$/],
  ['iso', 'ISO', /cannot be read as an ISO speed/],
  ['iso', '1/2', /cannot be read/],
  ['energy', 'undefined 8', /cannot be read/],
  ['energy', '8x', /is a factor, not an energy/],
  ['distance', `1 5' 6"`, /cannot be read as a distance/],
  ['distance', `5' 6" 3`, /cannot be read as a distance/],
  ['distance', "5' 6", /cannot be read as a distance/],
  ['pitch', `5' 6"`, /cannot be read as a pixel pitch/],
  ['filterFactor', 'ND', /cannot be read as a filter/],
  ['filterFactor', '8 xx', /cannot be read/],
  ['filterFactor', 'nd8x', /cannot be read/],
  ['filterFactor', 'xnd8', /cannot be read/],
  ['filterFactor', '2 m', /is a length, not a filter/],
];
describe('what cannot be read is refused in words', () => {
  for (const [key, cell, words] of REFUSED)
    test(`${key}: ${String(cell)}`, () => expect(message(cell, Q[key])).toMatch(words));
});

test('numbers that are no clock time are left alone', () => {
  // 0:59 and what lies below 0, whole hours, and a minute that is not quite one
  for (const value of [59 / 1440, -61 / 1440, 60 / 1440, 5 / 24, 1, 181 / 1440 + 1e-8])
    expect(read(value, Q.ratio)).toBe(value);
  // 8:24, 9:36 and 4:48 as decimals that people type, 2:40, 1:36 and 1:20 as parts that they do
  for (const value of [0.35, 0.4, 0.2, 1 / 9, 1 / 15, 1 / 18]) expect(read(value, Q.ratio)).toBe(value);
  expect(read(61 / 1440, Q.lit)).toBe(61 / 1440);
  for (const value of [0.5, 0.0625, 1 / 3, 1 / 7, 0.75, 2, 3, 1.25, 1 / 24, 0.1234])
    expect(read(value, Q.ratio)).toBe(value);
});

test('numbers from 10,000 up are refused only where a date may hide', () => {
  expect(read(9999, Q.duration)).toBe(9999);
  for (const cell of [10_000, 10_000.5, '10000'])
    expect(message(cell, Q.duration)).toMatch(/looks like a date/);
  expect(read(-20000, Q.stops)).toBe(-20000);
  expect(read(12000, Q.raw)).toBe(12000);
  expect(read('10000 s', Q.duration)).toBe(10000);
});

describe('a text in a message', () => {
  test('is cut where it is longer than 40 signs', () => {
    expect(quote('x'.repeat(40))).toBe(`"${'x'.repeat(40)}"`);
    expect(quote('x'.repeat(41))).toBe(`"${'x'.repeat(39)}…"`);
    expect(quote('📷'.repeat(41))).toBe(`"${'📷'.repeat(39)}…"`);
    expect(message('x'.repeat(500), Q.aperture)).toContain(`"${'x'.repeat(39)}…" cannot be read`);
  });
  test('stands on one line', () => expect(quote(' f/8\r\n\tor \u0000 so ')).toBe('"f/8 or so"'));
});

test('a list in a sentence has "or" before its last member', () => {
  expect(orList([])).toBe('');
  expect(orList(['11'])).toBe('11');
  expect(orList(['11', 'f/11'])).toBe('11 or f/11');
  expect(orList(['11', 'f/11', '11³'])).toBe('11, f/11 or 11³');
});

test.each([
  ['1,200', 'write 1200, or 1.2'],
  ['12,345', 'write 12345, or 12.345'],
  ['1,200/5', 'write 1200, or 1.2'],
  ['1/1,200', 'write 1200, or 1.2'],
])('%s may be two numbers: %s', (text, words) => expect(message(text, Q.duration)).toContain(words));

/** What is known of a quantity is kept from its first number on: a new one is looked at here. */
describe('a bare number', () => {
  const bare = (value: number, quantity: Quantity, exact = false) =>
    bareNumber(value, bareOf({ ...quantity }, exact));
  test('is a date only where a date may hide', () => {
    expect([bare(9999, Q.duration), bare(10_000, Q.duration), bare(10_000, Q.raw)]).toEqual([
      9999,
      NaN,
      10_000,
    ]);
    expect(bare(10_000, Q.duration, true)).toBeNaN();
  });
  test('is a clock time only where one may hide', () =>
    expect([bare(181 / 1440, Q.ratio), bare(181 / 1440, Q.duration), bare(181 / 1440, Q.raw)]).toEqual([
      NaN,
      NaN,
      181 / 1440,
    ]));
  test('is its mark, or as typed', () => {
    expect(bare(11, Q.aperture)).toBeCloseTo(2 ** 3.5, 12);
    expect(bare(11, Q.aperture, true)).toBe(11);
    expect(bare(11, Q.energy)).toBe(11);
  });
  test('0 is blank, or 0', () => {
    expect([bare(0, Q.energy), bare(0, Q.energy, true), bare(0, Q.stops), bare(0, Q.stops, true)]).toEqual([
      NaN,
      NaN,
      0,
      0,
    ]);
  });
});
