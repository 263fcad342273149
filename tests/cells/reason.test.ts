import { describe, expect, test } from 'vitest';
import { Q } from '../../src/catalogue/quantities';
import { type Arg, choice, flag, list, maybe, one, withDefault } from '../../src/catalogue/types';
import { readArgument, readWithMark, readWithReason } from '../../src/cells/argument';
import { readingOf, valueOf } from '../../src/cells/quantityReader';

const near = (value: number): unknown => expect.closeTo(value, 12);
const because = (by: string, value: unknown): unknown => ({ value, reason: { by } });

describe('a number and a text are read with the reason for what they come to', () => {
  test.each([
    ['energy', 400, 'number', 400],
    ['energy', '400', 'number', 400],
    ['stops', '1 1/3', 'number', 4 / 3],
    ['stops', 0, 'number', 0],
    ['aperture', 11.3, 'number', 11.3],
    ['aperture', 'f/11.3', 'number', 11.3],
    ['apertureAsTyped', 11, 'number', 11],
    ['apertureAsTyped', 'f/11', 'number', 11],
    ['aperture', 'f/8 2/3', 'stops', 2 ** (3 + 1 / 3)],
    ['aperture', '11³', 'stops', 2 ** 3.65],
    ['apertureAsTyped', 'f/11+0.3', 'stops', 2 ** 3.65],
    ['shutterTime', '1/125 s +1/2', 'stops', 2 ** -6.5],
    ['aperture', '11 exact', 'exact', 11],
    ['duration', '1/60 exact', 'exact', 1 / 60],
    ['duration', '4 ms', 'unit', 0.004],
    ['shutterTime', '1/7 s', 'unit', 1 / 7],
    ['distance', `5' 6"`, 'unit', 1.6764],
    ['energy', '1.2 kJ', 'unit', 1200],
    ['share', '30%', 'form', 0.3],
    ['ratio', '3:1', 'form', 3],
    ['filterFactor', 'ND 0.3', 'form', 10 ** 0.3],
  ] as const)('%s: %j, by %s', (key, cell, by, value) =>
    expect(readingOf(cell, Q[key], 'it')).toEqual(because(by, near(value))),
  );
  test.each([
    ['aperture', 11, 'aperture', 11, 2 ** 3.5],
    ['aperture', '11', 'aperture', 11, 2 ** 3.5],
    ['aperture', 'f/11', 'aperture', 11, 2 ** 3.5],
    // a rounding error of another cell
    ['aperture', 11 * (1 + 1e-10), 'aperture', 11, 2 ** 3.5],
    ['shutterTime', '1/60', 'time', 1 / 60, 1 / 64],
    ['shutterTime', '1/60 s', 'time', 1 / 60, 1 / 64],
    ['iso', 'ISO 125', 'iso', 125, 100 * 2 ** (1 / 3)],
    // seven stops above ISO 100, which displays show as 12500 or 12800
    ['iso', 12_500, 'iso', 12_800, 12_800],
    // five thirds of a stop below a second, as some displays show it
    ['shutterTime', '1/3', 'time', 0.3, 2 ** (-5 / 3)],
    // half a stop above f/11 and above 1/30, by their exact values
    ['aperture', 'f/13 half', 'aperture', 13, 2 ** 3.75],
    ['duration', '1/20 half', 'time', 1 / 20, 2 ** -4.5],
  ] as const)('%s: %j, by a mark as it is written', (key, cell, scale, figure, value) =>
    expect(readingOf(cell, Q[key], 'it')).toEqual({
      value: near(value),
      reason: { by: 'mark', mark: { scale, figure: near(figure), tenths: 0 } },
    }),
  );
  test.each([
    // another cell may have worked out an exact value
    ['aperture', 2 ** 3.5, 11, 0],
    ['aperture', 2 ** 3.65, 11, 3],
    ['aperture', 'f/8 2/3', 10, 0],
    ['aperture', '11³', 11, 3],
    ['apertureAsTyped', 'f/11+0.3', 11, 3],
    ['shutterTime', '1/64 s', 1 / 60, 0],
    ['shutterTime', '1/125 s +1/2', 1 / 90, 0],
    ['shutterTime', '1/125 s +0.3', 1 / 125, 3],
    ['iso', 'ISO 100 +0.2', 100, 2],
  ] as const)('%s: %j comes to a mark, or to tenths above one', (key, cell, figure, tenths) => {
    const quantity = Q[key];
    expect(readWithMark(cell, one('it', 'It', quantity), quantity)).toMatchObject({
      reason: { mark: { figure: near(figure), tenths } },
    });
  });
  test.each([
    ['aperture', 11.3],
    ['aperture', '11 exact'],
    ['aperture', -8],
    // beyond the last mark
    ['aperture', 'f/200'],
    ['energy', 2 ** 3.5],
    // no mark is meant where none is written
    ['apertureAsTyped', 2 ** 3.5],
    // tenths stand in a cell of their own
    ['apertureFigure', 2 ** 3.65],
  ] as const)('%s: %j is at no mark', (key, cell) =>
    expect(readWithMark(cell, one('it', 'It', Q[key]), Q[key])).not.toHaveProperty('reason.mark'),
  );
  test('a word says which', () =>
    expect(readingOf(' Infinity ', Q.magnification, 'it')).toEqual({
      value: 0,
      reason: { by: 'word', word: 'infinity' },
    }));
  test('in a list that is read to decimals, a bare mark is a number as typed', () => {
    for (const cell of [11, '11']) expect(readingOf(cell, Q.aperture, 'it', true)).toEqual(because('decimals', 11)); // prettier-ignore
    expect(readingOf('f/11', Q.aperture, 'it', true)).toMatchObject(
      because('mark', near(2 ** 3.5)) as object,
    );
    // a quantity without marks has nothing to say of that
    expect(readingOf(11, Q.energy, 'it', true)).toEqual(because('number', 11));
  });
});

describe('an absence says what is absent', () => {
  const energy = one('it', 'It', Q.energy);
  const five = withDefault('it', 'It', Q.energy, 5);
  const read = (cell: unknown, arg: Arg): unknown => readWithReason(cell, arg, Q.energy);

  test('where a value must be', () => {
    for (const cell of [null, undefined, '', ' ']) expect(read(cell, energy)).toEqual({ missing: 'nothing' });
    for (const cell of [0, '0', '0 Ws']) expect(read(cell, energy)).toEqual({ missing: 'zero' });
  });
  test('where something stands in for it', () => {
    expect(read('', five)).toEqual(because('nothing', 5));
    expect(read(0, five)).toEqual(because('zero', 5));
    expect(read('0 Ws', five)).toEqual(because('zero', 5));
    expect(read('None', five)).toEqual(because('none', 0));
    expect(read('none', maybe('it', 'It', Q.energy))).toEqual(because('none', undefined));
    expect(read(null, maybe('it', 'It', Q.energy))).toEqual(because('nothing', undefined));
  });
  test('where it is 0 itself', () =>
    expect(readWithReason(null, one('it', 'It', Q.stops), Q.stops)).toEqual(because('nothing', 0)));
});

describe('a word out of a few', () => {
  const word = choice('it', 'It', ['sum', 'each']);
  test('is a choice, and its absence the first of them', () => {
    expect(readWithReason('Each', word, undefined)).toEqual(because('choice', 'each'));
    expect(readWithReason('', word, undefined)).toEqual(because('nothing', 'sum'));
    expect(readWithReason('none', word, undefined)).toEqual(because('none', 'sum'));
    expect(readWithReason('yes', flag('it', 'It'), undefined)).toEqual(because('choice', true));
  });
});

test('what is not read says why', () =>
  expect(readWithReason('odd', one('it', 'It', Q.energy), Q.energy)).toEqual({
    refused: {
      fail: 'unreadable',
      message: 'it: "odd" cannot be read as an energy. Write 400, 400 Ws, 400 J or 1.2 kJ.',
    },
  }));

describe('the quick way comes to the same', () => {
  const cells = [0, 1, 11, 11.3, 1 / 60, 45_000, NaN, null, '', 'none', '0', '0 m', 'f/11', 'f/8 2/3', '1/60', '4 ms', 'ND8', '3:1', 'infinity', 'odd', true]; // prettier-ignore
  test.each(Object.entries(Q))('for %s', (_, quantity) => {
    const kinds = [one, maybe, list].map((make) => make('it', 'It', quantity) as Arg);
    for (const arg of [...kinds, withDefault('it', 'It', quantity, 5)])
      for (const exact of [false, true])
        for (const cell of cells)
          expect(readArgument(cell, arg, quantity, exact)).toEqual(
            valueOf(readWithReason(cell, arg, quantity, exact)),
          );
  });
});
