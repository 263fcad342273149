import { describe, expect, test } from 'vitest';
import { Q, type Quantity } from '../../src/catalogue/quantities';
import {
  cellError,
  ERROR_CODES,
  errorFromText,
  errorNamed,
  fromFail,
  isCellError,
} from '../../src/formula/errors';
import { near, worth } from '../../src/explain/figures';
import { fail } from '../../src/exposure/core/result';

describe('a number in words', () => {
  test.each([
    [11.313708498984761, '11.31'],
    [5.6, '5.6'],
    [0, '0'],
    [1 / 60, '0.01667'],
    [-1 / 3, '-0.3333'],
    [0.999951, '0.999951'],
    [0.99995123, '1'],
    // what was typed with six figures stays, and no figure of a whole part is lost
    [1.23456, '1.23456'],
    [1.234567, '1.235'],
    [12345.67, '12346'],
    [123456.7, '123457'],
    [-123456789.1, '-123456789'],
    [1.5e300, '1.5e+300'],
    [1e21 / 3, '333333333333333300000'],
  ])('%d is %s', (value, text) => expect(near(value)).toBe(text));
  test('has as many figures as are asked for', () => {
    expect(near(11.313708498984761, 6)).toBe('11.3137');
    expect(near(2 / 3, 2)).toBe('0.67');
  });
});

describe('a value with its unit', () => {
  test.each<readonly [number, Quantity, string]>([
    [11.313708498984761, Q.aperture, '11.31'],
    [100, Q.iso, 'ISO 100'],
    [1 / 64, Q.shutterTime, '1/64 s'],
    [1 / 3.5, Q.shutterTime, '0.2857 s'],
    [0.3, Q.shutterTime, '0.3 s'],
    [1 / 3, Q.shutterTime, '0.3333 s'],
    [4, Q.shutterTime, '4 s'],
    [0, Q.shutterTime, '0 s'],
    [-1 / 64, Q.shutterTime, '-0.015625 s'],
    [1 / 64, Q.duration, '0.015625 s'],
    [2, Q.stops, '2 stops'],
    [1.0001, Q.stops, '1.0001 stops'],
    [1, Q.stops, '1 stop'],
    [0.05, Q.stops, '0.05 stop'],
    [-1, Q.stops, '-1 stop'],
    [-1.5, Q.stops, '-1.5 stops'],
    [0, Q.stops, '0 stops'],
    [1, Q.pops, '1 pop'],
    [1, Q.frames, '1 frame'],
    [1, Q.days, '1 day'],
    [1, Q.tenths, '1 tenth'],
    [1, Q.energy, '1 Ws'],
    [8, Q.angle, '8°'],
    [3, Q.ratio, '3'],
    [0.8, Q.percent, '0.8 %'],
  ])('%d is said as %o: %s', (value, quantity, text) => expect(worth(value, quantity)).toBe(text));
  test('has as many figures as are asked for', () => {
    expect(worth(11.313708498984761, Q.aperture, 6)).toBe('11.3137');
    expect(worth(125.99210498948732, Q.iso, 6)).toBe('ISO 125.992');
    expect(worth(0.28571428571428, Q.shutterTime, 6)).toBe('0.285714 s');
    expect(worth(2 / 3, Q.stops, 6)).toBe('0.666667 stop');
  });
});

describe('an error of a cell', () => {
  test('has its sentence, where there is one', () => {
    expect(cellError('#N/A')).toEqual({ error: '#N/A' });
    expect('message' in cellError('#N/A')).toBe(false);
    expect(cellError('#N/A', 'Too weak.')).toEqual({ error: '#N/A', message: 'Too weak.' });
  });
  test.each([
    ['unreadable', '#VALUE!'],
    ['domain', '#NUM!'],
    ['no-answer', '#N/A'],
  ] as const)('of a refusal that is %s is %s', (kind, error) =>
    expect(fromFail(fail(kind, 'Words.'))).toEqual({ error, message: 'Words.' }),
  );
  test('is read from a text that is just its code', () => {
    for (const error of ERROR_CODES) expect(errorFromText(error)).toEqual({ error });
    for (const other of ['#n/a', ' #N/A', '#ODD!', '', 8, null, undefined])
      expect(errorFromText(other)).toBe(other);
  });
  test('that cells of ours do not hold is #VALUE!', () => {
    expect(errorNamed('#SPILL!')).toEqual({ error: '#SPILL!' });
    for (const other of ['#CONNECT!', '', undefined, {}])
      expect(errorNamed(other)).toEqual({ error: '#VALUE!' });
  });
  test('is told from all else', () => {
    expect(isCellError(cellError('#REF!'))).toBe(true);
    for (const other of [
      null,
      undefined,
      '#REF!',
      8,
      {},
      { error: '#ODD!' },
      { error: 1 },
      [],
      fail('domain', ''),
    ])
      expect(isCellError(other)).toBe(false);
  });
});
