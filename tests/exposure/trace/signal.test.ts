import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bendNoise, stepNoise } from '../../../src/exposure/trace/noise';
import { readSamples } from '../../../src/exposure/trace/samples';
import {
  brightestAt,
  lightAt,
  meanLight,
  nextBright,
  nextDark,
  type Signal,
} from '../../../src/exposure/trace/signal';
import { value } from '../support';
import { noiseFrom } from './shapes';

const signalOf = (values: ArrayLike<number>, rest: Partial<Signal> = {}): Signal => ({
  samples: value(readSamples([0.5], values)),
  sign: 1,
  base: 0,
  slope: 0,
  origin: 0,
  scale: 1,
  ...rest,
});

describe('a recording seen in pieces', () => {
  // longer than some pieces, with a drift that is steep beside the values
  const signal = fc
    .record({
      length: fc.integer({ min: 3, max: 2500 }),
      seed: fc.integer({ min: 1, max: 1e6 }),
      sign: fc.constantFrom<1 | -1>(1, -1),
      base: fc.double({ min: -3, max: 3, noNaN: true }),
      slope: fc.constantFrom(0, 0.02, -0.02),
      scale: fc.constantFrom(1, 0.25),
    })
    .map(({ length, seed, ...rest }) => {
      const next = noiseFrom(seed);
      return signalOf(
        Float64Array.from({ length }, () => next()),
        { ...rest, origin: 100 },
      );
    });
  const lightsOf = (s: Signal): number[] => Array.from({ length: s.samples.count }, (_, i) => lightAt(s, i));
  const part = fc.double({ min: 0, max: 1, noNaN: true });

  it('has its brightest sample where a look at each finds it', () => {
    fc.assert(
      fc.property(signal, (s) => {
        const lights = lightsOf(s);
        expect(brightestAt(s)).toBe(lights.indexOf(Math.max(...lights)));
      }),
      { seed: 311 },
    );
  });

  it('is bright next where a look at each finds it, both ways', () => {
    fc.assert(
      fc.property(signal, part, part, part, (s, from, to, high) => {
        const lights = lightsOf(s);
        const [first, end] = [from, to].map((x) => Math.floor(x * (s.samples.count - 1))) as [number, number];
        const level = Math.max(...lights) * high;
        const way = end >= first ? 1 : -1;
        let wanted = first;
        while (wanted !== end && (lights[wanted] as number) < level) wanted += way;
        expect(nextBright(s, first, end, way, level)).toBe(wanted);
      }),
      { seed: 312 },
    );
  });

  it('is dark next where a look at each finds it, both ways', () => {
    fc.assert(
      fc.property(signal, part, part, part, (s, from, to, deep) => {
        const lights = lightsOf(s);
        const [first, end] = [from, to].map((x) => Math.floor(x * (s.samples.count - 1))) as [number, number];
        const [lowest, highest] = [Math.min(...lights), Math.max(...lights)];
        const level = lowest + (highest - lowest) * deep ** 4;
        const way = end >= first ? 1 : -1;
        let wanted = first;
        while (wanted !== end && (lights[wanted] as number) >= level) wanted += way;
        expect(nextDark(s, first, end, way, level)).toBe(wanted);
      }),
      { seed: 314 },
    );
  });

  it('has the mean of its samples', () => {
    fc.assert(
      fc.property(signal, part, part, (s, one, other) => {
        const lights = lightsOf(s);
        const [from, to] = [Math.min(one, other), Math.max(one, other)].map((x) =>
          Math.floor(x * (s.samples.count - 1)),
        ) as [number, number];
        const some = lights.slice(from, to + 1);
        const mean = some.reduce((sum, x) => sum + x, 0) / some.length;
        expect(meanLight(s, from, to + 1)).toBeCloseTo(mean, 10);
      }),
      { seed: 313 },
    );
  });
});

describe('noise', () => {
  it('is the standard deviation of what was added, by steps and by bends', () => {
    const next = noiseFrom(314);
    const signal = signalOf(Float64Array.from({ length: 8000 }, () => 3 * next()));
    expect(Math.abs(stepNoise(signal, 0, 8000) / 3 - 1)).toBeLessThan(0.03);
    expect(Math.abs(bendNoise(signal, 0, 8000) / 3 - 1)).toBeLessThan(0.03);
  });

  it('is not raised by a slope where it is told by bends', () => {
    const signal = signalOf(Float64Array.from({ length: 1000 }, (_, i) => 5 * i));
    expect(bendNoise(signal, 0, 1000)).toBeLessThan(1e-9);
    expect(stepNoise(signal, 0, 1000)).toBeGreaterThan(5);
  });
});
