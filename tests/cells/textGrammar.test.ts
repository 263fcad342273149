import { describe, expect, test } from 'vitest';
import { Q } from '../../src/catalogue/quantities';
import { byGrammar } from '../../src/cells/textGrammar';

type Key = keyof typeof Q;
const read = (key: Key, text: string, exact = false): unknown => byGrammar(text, Q[key], exact);
const valueOf = (key: Key, text: string): unknown => {
  const found = byGrammar(text, Q[key], false);
  return found && 'value' in found ? found.value : found;
};

describe('an f-number beside which its tenths stand', () => {
  test.each(['11³', 'f/11 +0.3', 'f/11⁰'])('%s is refused with tenths of its own', (text) =>
    expect(read('apertureFigure', text)).toEqual({
      fail: 'unreadable',
      message: 'has tenths of its own: leave the tenths beside it blank',
    }),
  );
  test('is read with all else after it, or refused for what that is', () => {
    expect(read('apertureFigure', '11 exact')).toEqual({ value: 11, reason: { by: 'exact' } });
    expect(read('apertureFigure', 'f/13 half')).toMatchObject({ value: 2 ** 3.75, reason: { by: 'mark' } });
    expect(read('apertureFigure', 'f/11+3')).toMatchObject({ message: expect.stringMatching(/two ways/) });
  });
  test('may have them in one cell where none stand beside it', () =>
    expect(read('aperture', '11³')).toMatchObject({ reason: { by: 'stops' } }));
});

test('a text that reads 0 is a number', () =>
  expect(read('stops', '0')).toEqual({ value: 0, reason: { by: 'number' } }));
test('what a spreadsheet makes of 3:01 is a number where it is a text', () => {
  // 181 of the 1440 minutes of a day
  expect(valueOf('ratio', '0.12569444444444444')).toBe(181 / 1440);
});

describe('a text is none of its quantity, and no other is guessed', () => {
  test.each<readonly [Key, string]>([
    // nobody means a fraction of a millisecond, and yet milliseconds are of no other kind
    ['shutterTime', '1/2 ms'],
    ['duration', '1/2 ms'],
    ['tolerance', '6/2 stops'],
    ['share', '1 1/2 %'],
    ['fullPercent', '1/1 %'],
    ['lightDistance', '1e3 m'],
    // a word stands before a number alone
    ['iso', 'iso -100'],
    ['iso', 'iso +100'],
    // a proper fraction is below 1, and in lowest terms
    ['shutterTime', '1/1'],
    ['shutterTime', '2/4'],
    // nor is a whole number of stops written as a fraction
    ['stops', '1 3/2'],
    ['stops', '1 2/2'],
    ['stops', '6/2'],
    // a pair is of decimals
    ['ratio', '1/2:1'],
    ['ratio', '1:1/2'],
    ['ratio', '3:05'],
    // no marks of an energy are known
    ['energy', '400 exact'],
    ['energy', '400 half'],
  ])('%s: %s', (key, text) => expect(read(key, text)).toBeUndefined());
});

test.each<readonly [Key, string, number]>([
  ['ratio', '2:100', 0.02],
  ['magnification', '1:105', 1 / 105],
  ['stops', '5/2', 2.5],
  ['ratio', '3 : 1', 3],
  ['shutterTime', '1/2.5 exact', 0.4],
])('%s: %s is %d', (key, text, value) => expect(valueOf(key, text)).toBeCloseTo(value, 12));

describe('stops after a fraction that may be a second value', () => {
  const { forms } = Q.fullFraction;
  const refusal = {
    fail: 'unreadable',
    message: `can be read two ways. Write ${forms.slice(0, -1).join(', ')} or ${forms.at(-1)}, and stops after the unit as in ${forms[1]} +1/3`,
  };
  test.each(['1/4 -1/4', '1/4 +1/8', '1/4 - 0.3'])('%s is refused', (text) =>
    expect(read('fullFraction', text)).toEqual(refusal),
  );
  test('are stops where they say so, or lie too far apart to belong together', () => {
    expect(valueOf('fullFraction', '1/4 -1/4 stop')).toBeCloseTo(2 ** -2.25, 12);
    expect(valueOf('fullFraction', '1/64 +1/4')).toBeCloseTo(2 ** -5.75, 12);
    expect(valueOf('fullFraction', '1/2 -1 1/4')).toBeCloseTo(2 ** -2.25, 12);
    expect(valueOf('fullFraction', '1/4 -1/3')).toBeCloseTo(2 ** (-2 - 1 / 3), 12);
  });
});
