import { describe, expect, it } from 'vitest';
import type { Pulse } from '../../../src/exposure/trace/pulse';
import { unsureFrom } from '../../../src/exposure/trace/unsureLevels';
import { pulseOf, signalOf } from './signals';

/** Half a minute up and half a minute down: at a level L it lasts 64·(1 − L) s, and 64 s less for each height more. */
const TRIANGLE = Array.from({ length: 65 }, (_, t) => 1 - Math.abs(t - 32) / 32);

/** What is unsure of it where the height is known to a doubt: of a duration 4·doubt·L / (1 − L), worked by hand. */
function unsure(doubt: number, values: readonly number[] = TRIANGLE, told: Partial<Pulse['top']> = {}) {
  const signal = signalOf(values, { times: values.map((_, t) => t) });
  const top = { height: 1, doubt, at: 32, from: 32, to: 32, falls: 0, ...told };
  return unsureFrom(pulseOf(signal, { top }));
}

describe('durations that noise leaves unsure', () => {
  it('are none where the height is known, or known well enough', () => {
    expect(unsure(0)).toBeUndefined();
    // 36 × 0.00055 is a fiftieth, all but a little
    expect(unsure(0.00055)).toBeUndefined();
    expect(unsure(0.00056)).toEqual({ from: 0.9, share: expect.closeTo(0.02016, 9) });
  });

  it('begin at the lowest level that is known to a fiftieth no more, and are told at 0.9', () => {
    // 36, 16, 28/3, 6 and 4 times the doubt at 0.9, 0.8 … 0.5
    for (const [doubt, from] of [
      [0.001, 0.9],
      [0.002, 0.8],
      [0.003, 0.7],
      [0.004, 0.6],
      [0.006, 0.5],
      [0.1, 0.5],
    ] as const)
      expect(unsure(doubt)).toEqual({ from, share: expect.closeTo(36 * doubt, 9) });
  });

  it('count the doubt as a part of the height', () => {
    expect(unsure(0.002, TRIANGLE, { height: 2 })).toEqual(unsure(0.001));
  });

  it('end where the recording does not answer a level', () => {
    expect(unsure(0.1, TRIANGLE.slice(0, 32 + 12))).toEqual({ from: 0.7, share: expect.closeTo(3.6, 9) });
    // no sample lies above 0.92 of the height
    expect(
      unsure(
        0.1,
        TRIANGLE.map((light) => light * 0.91),
      ),
    ).toBeUndefined();
  });
});
