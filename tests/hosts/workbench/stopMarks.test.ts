import { describe, expect, test } from 'vitest';
import {
  areMarked,
  stopMarks,
  stopRange,
  stopText,
} from '../../../src/hosts/workbench/charts/drawing/stopMarks';

const texts = (least: number, most: number, room: number) =>
  stopMarks(least, most, room).map(({ text }) => text);

describe('an axis of f-numbers', () => {
  test('has the full stops of an aperture ring, each at the exact f-number', () => {
    // A stop is a factor of √2: 8, 8 · 1.41421, 16.
    expect(stopMarks(8, 16, 9)).toEqual([
      { at: 8, text: 'f/8' },
      { at: expect.closeTo(11.3137, 4), text: 'f/11' },
      { at: 16, text: 'f/16' },
    ]);
  });
  test('has every second or fourth of them where there is no room for all', () => {
    expect(texts(4, 64, 9)).toEqual(['f/4', 'f/5.6', 'f/8', 'f/11', 'f/16', 'f/22', 'f/32', 'f/45', 'f/64']);
    expect(texts(4, 64, 8)).toEqual(['f/4', 'f/8', 'f/16', 'f/32', 'f/64']);
    expect(texts(4, 64, 4)).toEqual(['f/4', 'f/16', 'f/64']);
  });
  test('has thirds where full stops are too few to read it by', () => {
    expect(texts(8, 11.4, 9)).toEqual(['f/8', 'f/9', 'f/10', 'f/11']);
    expect(texts(8, 11.4, 3)).toEqual(['f/8', 'f/11']);
  });
  test('reaches over whole thirds, and a stop at least', () => {
    // f/8 and a third is 8 · 2^(1/6) = 8.98; f/10 lies between that and 10.08.
    const [least, most] = stopRange([8.98, 10]);
    expect([least, most].map((f) => 6 * Math.log2(f / 8))).toEqual([expect.closeTo(0), expect.closeTo(3)]);
    expect(stopRange([16, 64])).toEqual([expect.closeTo(16), expect.closeTo(64)]);
    const [low, high] = stopRange([16]);
    expect(2 * Math.log2(high / low)).toBeGreaterThanOrEqual(1);
  });
  test('is one where cells hold f-numbers that a ring has, and no other', () => {
    expect(areMarked('"f/"0.0', [8, 11.3])).toBe(true);
    expect(areMarked('"f/"General', [45])).toBe(true);
    expect(areMarked('0.0', [8, 11.3])).toBe(false);
    expect(areMarked('"f/"0.0', [])).toBe(false);
    expect(areMarked('"f/"0.0', [8, 0])).toBe(false);
    expect(areMarked('"f/"0.0', [400, 900])).toBe(false);
  });
  test('is written as marked', () => {
    expect([16 * Math.SQRT1_2, 2 ** (11 / 2), 5].map(stopText)).toEqual(['f/11', 'f/45', '']);
  });
});
