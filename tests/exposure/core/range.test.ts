import { describe, expect, it } from 'vitest';
import { inRange, outside, outsideAny, POPS, rangeText } from '../../../src/exposure/core/range';
import { answer, fail, isFail } from '../../../src/exposure/core/result';
import { refusal } from '../support';

describe('a range', () => {
  it.each([
    [{ above: 0 }, 'above 0'],
    [{ least: 0 }, 'from 0 up'],
    [{ most: 1 }, 'up to 1'],
    [{ below: 1 }, 'below 1'],
    [{ above: 0, most: 1 }, 'above 0 and up to 1'],
    [{ above: 0, below: 1 }, 'above 0 and below 1'],
    [{ least: 0, most: 9 }, 'from 0 up to 9'],
    [{ least: 0, below: 10 }, 'from 0 below 10'],
    [POPS, 'a whole number from 1 up'],
    [{ whole: true } as const, 'a whole number'],
    [{}, ''],
  ])('%j is said as "%s"', (range, words) => {
    expect(rangeText(range)).toBe(words);
  });

  it('ends where it says: its limits belong to it or not', () => {
    expect(inRange(0, { above: 0 })).toBe(false);
    expect(inRange(0, { least: 0 })).toBe(true);
    expect(inRange(1, { most: 1 })).toBe(true);
    expect(inRange(1, { below: 1 })).toBe(false);
  });

  it('holds no number that is not finite', () => {
    for (const x of [NaN, Infinity, -Infinity]) expect(inRange(x, {})).toBe(false);
  });

  it('lets an argument pass that is not given', () => {
    expect(outside('loss', undefined, { above: 0 })).toBeUndefined();
  });

  it('of any number refuses what is none', () => {
    expect(refusal(outside('loss', NaN, {})).message).toBe('loss must be a number, and finite.');
  });

  it('adds its hint to the refusal', () => {
    const { message } = refusal(outside('value', 0.9, { least: 1, hint: 'Is it a density?' }));
    expect(message).toBe('value must be from 1 up, not 0.9. Is it a density?');
  });

  it('says which member of a list is wrong, and does not count a list of one', () => {
    expect(refusal(outsideAny('readings', [8, 0], { above: 0 })).message).toContain('number 2 of the list');
    expect(refusal(outsideAny('readings', [0], { above: 0 })).message).toBe(
      'readings must be above 0, not 0.',
    );
  });
});

describe('an answer', () => {
  it('is finite or refused', () => {
    expect(answer(2)).toBe(2);
    for (const x of [NaN, Infinity, -Infinity]) expect(isFail(answer(x))).toBe(true);
  });

  it('is never a negative nought', () => {
    expect(Object.is(answer(-0), 0)).toBe(true);
  });

  it('is not mistaken for a refusal', () => {
    expect(isFail(fail('domain', 'x'))).toBe(true);
    for (const x of [0, '', undefined, null, [1], { message: 'x' }]) expect(isFail(x)).toBe(false);
  });
});
