import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import {
  footOf,
  lightEnd,
  pulsesFrom,
  sideOf,
  valley,
  widthOf,
} from '../../../src/exposure/trace/pulseExtent';
import { signalOf } from './signals';

/** Samples a second apart. */
const everySecond = (values: readonly number[]) => signalOf(values, { times: values.map((_, i) => i) });
const row = (count: number, light: number): number[] => Array.from({ length: count }, () => light);

describe('the foot of a pulse', () => {
  it('is 2 % of the height, or three times the noise', () => {
    expect(footOf(0, 1000)).toEqual({ low: 0.02, high: 0.02 });
    expect(footOf(0.001, 1000)).toEqual({ low: 0.02, high: 0.02 });
    expect(footOf(0.01, 1000).low).toBeCloseTo(0.03, 12);
  });

  it('is passed upward at √(2·ln n) + 1 times the noise, where that is more', () => {
    // ln 2981 is 8.00001 and ln 3 is 1.0986: 5 and 2.48 times the noise
    expect(footOf(0.01, 2981).high).toBeCloseTo(0.05, 6);
    expect(footOf(0.01, 3).high).toBeCloseTo(0.03, 12);
  });
});

describe('the width of a pulse at its foot', () => {
  const foot = { low: 0.5, high: 0.9 };

  it('goes from the dark sample before it to that after it', () => {
    const values = [0, 1, 0.4, 0.5, 1, 2, 0.6, 0.6, 0.4, 1, 0.3];
    expect(widthOf(signalOf(values), 5, foot)).toBe(3);
    expect(widthOf(signalOf(values, { times: values.map((_, i) => 7 + i * i) }), 5, foot)).toBe(60);
  });

  it('ends with the recording', () => {
    expect(widthOf(signalOf([0.6, 1, 2, 1, 1]), 2, foot)).toBe(2);
  });
});

describe('a side of a pulse', () => {
  const foot = { low: 0.1, high: 0.3 };
  // Bright at 0, 4, 9 and 14 s; what lies at 5 and 11 s is no longer dark, but too dark to begin a pulse.
  const signal = everySecond([0.9, 0, 0, 0, 1, 0.2, 0, 0, 0, 1, 0, 0.2, 0, 0, 0.5, 0.05]);

  it('goes over gaps that are no longer than the pulse is wide', () => {
    expect(sideOf(signal, 4, 1, foot, 1.9)).toEqual({ edge: 5, next: 9 });
    expect(sideOf(signal, 4, 1, foot, 2)).toEqual({ edge: 9, next: 14 });
    expect(sideOf(signal, 4, 1, foot, 2.9)).toEqual({ edge: 9, next: 14 });
    expect(sideOf(signal, 4, 1, foot, 3)).toEqual({ edge: 14, next: undefined });
    expect(sideOf(signal, 4, -1, foot, 1.9)).toEqual({ edge: 4, next: 0 });
    expect(sideOf(signal, 4, -1, foot, 2)).toEqual({ edge: 0, next: undefined });
    expect(sideOf(signal, 14, -1, foot, 2)).toEqual({ edge: 14, next: 9 });
  });

  it('goes to the ends of a recording that is bright throughout', () => {
    const bright = everySecond(row(9, 1));
    expect(sideOf(bright, 4, 1, foot, 1)).toEqual({ edge: 8, next: undefined });
    expect(sideOf(bright, 4, -1, foot, 1)).toEqual({ edge: 0, next: undefined });
  });

  it('counts the pulses that follow', () => {
    expect(pulsesFrom(signal, undefined, 1, foot, 1)).toBe(0);
    expect(pulsesFrom(signal, 14, 1, foot, 1)).toBe(1);
    expect(pulsesFrom(signal, 4, 1, foot, 1)).toBe(3);
    expect(pulsesFrom(signal, 4, 1, foot, 2)).toBe(2);
    expect(pulsesFrom(signal, 14, -1, foot, 1)).toBe(4);
    // Backwards the gap after 9 goes on to 4, since what lies at 5 is not bright enough to begin a pulse.
    expect(pulsesFrom(signal, 14, -1, foot, 2)).toBe(3);
    expect(pulsesFrom(signal, 14, -1, foot, 3)).toBe(1);
  });
});

describe('the valley between two pulses', () => {
  it('is the darkest sample of a short one, the nearest of several', () => {
    const signal = everySecond([9, 9, 3, 2, 4, 2, 3, 9, 9]);
    expect(valley(signal, 1, 7)).toBe(3);
    expect(valley(signal, 7, 1)).toBe(5);
  });

  it('is the middle of the darkest of the stretches of a 64th, which leave out the sample at the next pulse', () => {
    const plainly = (outward: readonly number[]): number => {
      const length = Math.max(1, Math.floor(outward.length / 64));
      const seen = outward.slice(0, -1);
      const sums = Array.from({ length: Math.floor(seen.length / length) }, (_, k) =>
        seen.slice(k * length, (k + 1) * length).reduce((sum, light) => sum + light, 0),
      );
      return sums.indexOf(Math.min(...sums)) * length + Math.floor(length / 2);
    };
    const light = fc.integer({ min: 0, max: 40 });
    fc.assert(
      fc.property(
        fc.array(light, { minLength: 2, maxLength: 400, size: 'max' }),
        fc.array(light, { maxLength: 200, size: 'max' }),
        (outward, inside) => {
          const [edge, next] = [inside.length, inside.length + outward.length];
          const values = [...inside, ...outward, 50, 50];
          expect(valley(everySecond(values), edge, next)).toBe(edge + plainly(outward));
          const last = values.length - 1;
          expect(valley(everySecond(values.reverse()), last - edge, last - next)).toBe(
            last - edge - plainly(outward),
          );
        },
      ),
      trials(41),
    );
  });
});

describe('the light of a pulse', () => {
  /** How many samples it goes on beyond the edge, on either side alike. */
  function beyond(
    lights: readonly number[],
    { limit = lights.length, span = 16, noise = 0, error = 0 } = {},
  ): number {
    const values = [...row(40, 1), ...lights, 0.7];
    const edge = 39;
    const right = lightEnd(everySecond(values), edge, edge + limit, span, noise, error) - edge;
    const turned = values.length - 1 - edge;
    const left = turned - lightEnd(everySecond(values.reverse()), turned, turned - limit, span, noise, error);
    expect(left).toBe(right);
    return right;
  }
  /** Stretches of four samples, which is a quarter of the width. */
  const stretches = (...means: readonly number[]): number[] =>
    means.flatMap((mean) => [1.2 * mean, 1.1 * mean, 0.9 * mean, 0.8 * mean]);

  it('goes on as far as it may while it falls', () => {
    const falling = stretches(0.016, 0.012, 0.01, 0.008, 0.006, 0.005, 0.004, 0.003);
    expect(beyond(falling)).toBe(32);
    expect(beyond(falling, { limit: 31 })).toBe(31);
    expect(beyond(falling, { limit: 3 })).toBe(3);
    expect(beyond(falling, { limit: 0 })).toBe(0);
    // by exactly a tenth
    const tenths: number[] = [0.01];
    while (tenths.length < 12) tenths.push(0.9 * (tenths.at(-1) as number));
    expect(beyond(tenths, { span: 4 })).toBe(12);
    expect(beyond(tenths, { span: 0 })).toBe(12);
  });

  it('ends where four stretches fall by less than a tenth', () => {
    expect(beyond(stretches(0.08, 0.04, 0.02, 0.019, 0.018, 0.017, 0.016, 0.015))).toBe(12);
    expect(beyond(stretches(0.08, 0.04, 0.02, 0.019, 0.018, 0.017))).toBe(24);
    expect(beyond(stretches(0.08, 0.04, 0.02, 0.03, 0.05, 0.04, 0.04, 0.04, 0.04, 0.04))).toBe(24);
    expect(beyond(stretches(0.08, 0.08, 0.08, 0.08, 0.04, 0.04, 0.04, 0.04, 0.04, 0.03))).toBe(20);
  });

  it('ends where four stretches are dark', () => {
    expect(beyond([...stretches(0.08, 0.04), ...row(16, 0)])).toBe(8);
    expect(beyond([...stretches(0.08, 0.04), ...row(12, 0)])).toBe(20);
    expect(beyond([...stretches(0.08, 0.04), ...row(16, -0.01)])).toBe(8);
  });

  it('ends where four stretches lie within three standard deviations of the base', () => {
    // Each falls by a fifth. Four samples of noise 0.002 and the base are sure to 3 × (0.002 / 2 + 0.0005) = 0.0045.
    const falling = stretches(...Array.from({ length: 16 }, (_, k) => 0.01 * 0.8 ** k));
    expect(beyond(falling, { noise: 0.002, error: 0.0005 })).toBe(16);
    expect(beyond(falling, { noise: 0.002 })).toBe(24);
    expect(beyond(falling, { error: 0.0005 })).toBe(36);
  });

  it('goes on to the first sample that has come down to the base, or by a stretch', () => {
    expect(beyond(row(20, 0))).toBe(1);
    expect(beyond(row(20, -0.01))).toBe(1);
    expect(beyond([0.01, 0.01, ...row(18, 0)], { noise: 0.01 })).toBe(3);
    expect(beyond([0.01, 0.01, 0.01, ...row(17, 0)], { noise: 0.01 })).toBe(4);
    expect(beyond([0.01, 0.01, 0.01, 0.01, ...row(17, 0)], { noise: 0.01 })).toBe(4);
    expect(beyond([0.01, 0.01, 0.01, 0.01, 0.01, ...row(17, 0)], { noise: 0.01 })).toBe(4);
  });

  it('is not told by what lies beyond its limit', () => {
    const glow = [...row(18, 0.01), 0.001, 0.001];
    expect(beyond(glow, { limit: 18 })).toBe(4);
    expect(beyond(glow, { limit: 20 })).toBe(20);
  });
});
