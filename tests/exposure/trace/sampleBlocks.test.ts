import { describe, expect, it } from 'vitest';
import { BLOCK, blocksOf } from '../../../src/exposure/trace/sampleBlocks';
import { noiseFrom } from './shapes';

describe('pieces of a recording', () => {
  it('have their lowest, their highest and their sum, the last piece being what is left', () => {
    const next = noiseFrom(5);
    // whole numbers, so that sums have no rounding
    const values = Array.from({ length: 3 * BLOCK }, () => Math.round(1000 * next()));
    for (const count of [1, 2, BLOCK - 1, BLOCK, BLOCK + 1, 2 * BLOCK, 2 * BLOCK + 100]) {
      const { lows, highs, sums } = blocksOf(values, count);
      const pieces: number[][] = [];
      for (let i = 0; i < count; i += BLOCK) pieces.push(values.slice(i, Math.min(i + BLOCK, count)));
      expect([...lows]).toEqual(pieces.map((piece) => Math.min(...piece)));
      expect([...highs]).toEqual(pieces.map((piece) => Math.max(...piece)));
      expect([...sums]).toEqual(pieces.map((piece) => piece.reduce((sum, x) => sum + x, 0)));
    }
  });

  it('know their extremes wherever they lie, be they the first or the last value', () => {
    for (const at of [0, 1, 300, BLOCK - 1])
      for (const value of [-7, 7]) {
        const values = new Float64Array(2 * BLOCK);
        values[BLOCK + at] = value;
        const { lows, highs, sums } = blocksOf(values, 2 * BLOCK);
        expect([...lows]).toEqual([0, Math.min(0, value)]);
        expect([...highs]).toEqual([0, Math.max(0, value)]);
        expect([...sums]).toEqual([0, value]);
      }
  });

  it('have no finite sum where a value is none', () => {
    for (const wrong of [NaN, Infinity, -Infinity]) {
      const values = Array.from({ length: BLOCK + 3 }, (_, i) => (i === BLOCK + 1 ? wrong : 1));
      expect([...blocksOf(values, BLOCK + 3).sums].map(Number.isFinite)).toEqual([true, false]);
    }
  });

  it('are none where there are no values', () => {
    expect(blocksOf([], 0).sums).toHaveLength(0);
  });
});
