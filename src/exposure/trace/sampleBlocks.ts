/** A recording in pieces of so many samples: what lies in a piece is known without looking at each. */
export const BLOCK = 512;

export interface Blocks {
  readonly lows: Float64Array;
  readonly highs: Float64Array;
  readonly sums: Float64Array;
}

/** The one pass over all values. A value that is not finite makes the sum of its piece no finite number. */
export function blocksOf(values: ArrayLike<number>, count: number): Blocks {
  const pieces = Math.ceil(count / BLOCK);
  const lows = new Float64Array(pieces);
  const highs = new Float64Array(pieces);
  const sums = new Float64Array(pieces);
  for (let b = 0; b < pieces; b++) {
    const end = Math.min(count, (b + 1) * BLOCK);
    let low = Infinity;
    let high = -Infinity;
    let sum = 0;
    for (let i = b * BLOCK; i < end; i++) {
      const value = values[i] as number;
      if (value < low) low = value;
      if (value > high) high = value;
      sum += value;
    }
    lows[b] = low;
    highs[b] = high;
    sums[b] = sum;
  }
  return { lows, highs, sums };
}
