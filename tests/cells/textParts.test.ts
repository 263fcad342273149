import { describe, expect, test } from 'vitest';
import { decimal, leadingNumber, normalise, twoWays } from '../../src/cells/textParts';

describe('a number at the start of a text', () => {
  test.each([
    ['5,6 m', { value: 5.6, form: 'decimal', signed: false, digits: '5,6', over: 0, under: 1, rest: ' m' }],
    ['-1/4', { value: -0.25, form: 'fraction', signed: true, digits: '', over: 1, under: 4, rest: '' }],
    ['1 1/2x', { value: 1.5, form: 'mixed', signed: false, digits: '', over: 1, under: 2, rest: 'x' }],
    ['4.06e-04', { value: 4.06e-4, form: 'power', signed: false, digits: '4.06', over: 0, under: 1, rest: '' }],
  ])('%s comes apart', (text, parts) => expect(leadingNumber(text)).toEqual(parts)); // prettier-ignore
  test('is none where the text begins otherwise', () => expect(leadingNumber('f8')).toBeUndefined());
});

test('a number that can be read two ways says both', () => {
  const refusal = { fail: 'unreadable', message: 'can be read two ways: write 1200, or 1.2' };
  expect(twoWays('1.200')).toEqual(refusal);
  expect(decimal('1,200')).toEqual(refusal);
  expect(decimal('1.200')).toBe(1.2);
  expect(decimal('1.200', true)).toEqual(refusal);
});

test('the sign of a formula goes where a number or a fraction is all that follows', () => {
  for (const [text, rest] of [['=1/60', '1/60'], ['=-0.5', '-0.5'], ['=8', '8']] as const)
    expect(normalise(text)).toBe(rest); // prettier-ignore
  for (const text of ['=1/60 s', '=8*2', '=1/60/2', '=A1']) expect(normalise(text)).toBe(text);
});
