import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { bendNoise, stepNoise } from '../../../src/exposure/trace/noise';
import { timeAt } from '../../../src/exposure/trace/samples';
import {
  above,
  brightestAt,
  lightAt,
  meanLight,
  nextBright,
  nextDark,
  type Signal,
} from '../../../src/exposure/trace/signal';
import { expectNear } from '../support';
import { noiseFrom } from './shapes';
import { signalOf } from './signals';

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
      trials(311),
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
      trials(312),
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
      trials(314),
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
      trials(313),
    );
  });
});

/**
 * Samples of 0 to 7 that differ from piece to piece of 512, and lie a second apart. On top of these drifts of a tenth of
 * a unit a sample are steep.
 */
const pieces = (count: number, rest: Partial<Signal> & { readonly times?: ArrayLike<number> }): Signal =>
  signalOf(
    Float64Array.from({ length: count }, (_, i) => [2, 4, 0, 3][i >> 9] as number).map(
      (level, i) => level + ((i * 7) % 13) / 4,
    ),
    { times: [1], ...rest },
  );
const DRIFTS = [0, 0.1, -0.1].flatMap((slope) =>
  [1, -1].flatMap((sign) =>
    [900, -900].map((origin) => ({ slope, sign: sign as 1 | -1, origin, base: 1, scale: 4 })),
  ),
);
/** Seconds from some time on, listed one by one. */
const listed = (count: number): { readonly times: Float64Array } => ({
  times: Float64Array.from({ length: count }, (_, i) => i - 300),
});
const lightsIn = (signal: Signal): number[] =>
  Array.from({ length: signal.samples.count }, (_, i) => lightAt(signal, i));

describe('the light of a sample', () => {
  it('is what it lies above its base, upward or downward, in units of its own', () => {
    expect(lightAt(signalOf([0, 7, 3], { base: 1, scale: 2 }), 1)).toBe(12);
    expect(lightAt(signalOf([0, 7, 3], { sign: -1, base: -8, scale: 2 }), 1)).toBe(2);
    // the third sample stands at 1 s, and the base at 2 + 3 · (1 − 0.5) there
    expect(lightAt(signalOf([0, 7, 3], { base: 2, slope: 3, origin: 0.5, scale: 2 }), 2)).toBe(-1);
  });

  it('is counted from another base and in other units, all told in units of the signal', () => {
    const signal = signalOf([0, 7, 3, 5], { sign: -1, base: -8, origin: 9, scale: 4 });
    const base = { level: 3, slope: 2, origin: 0.25 };
    const higher = above(signal, base, 5);
    for (let i = 0; i < 4; i++) {
      const rise = base.level + base.slope * (timeAt(signal.samples, i) - base.origin);
      expect(lightAt(higher, i)).toBeCloseTo((lightAt(signal, i) - rise) / 5, 12);
    }
    expect(higher).toMatchObject({ samples: signal.samples, sign: -1 });
  });
});

describe('a recording in pieces that differ', () => {
  const count = 1900;

  it('is bright, and dark, next where a look at each finds it', () => {
    const wrong: unknown[] = [];
    for (const rest of DRIFTS)
      // the second of them ends with a whole piece
      for (const signal of [pieces(count, rest), pieces(1536, { ...rest, ...listed(1536) })]) {
        const lights = lightsIn(signal);
        // the brightest and the darkest of each piece, which just are, or just are not, what is looked for
        const levels = [0, 512, 1024].flatMap((from) => {
          const some = lights.slice(from, from + 512);
          return [Math.max(...some), Math.min(...some)];
        });
        for (const start of [0, 1, 511, 512, 700, 1023, 1024, 1535])
          for (const end of [-1, 511, 512, 1024, lights.length])
            for (const light of levels) {
              const way = end > start ? 1 : -1;
              let [bright, dark] = [start, start];
              while (bright !== end && !((lights[bright] as number) >= light)) bright += way;
              while (dark !== end && !((lights[dark] as number) < light)) dark += way;
              if (
                nextBright(signal, start, end, way, light) !== bright ||
                nextDark(signal, start, end, way, light) !== dark
              )
                wrong.push({ ...rest, start, end, light });
            }
      }
    expect(wrong).toEqual([]);
  });

  it('has its brightest sample where a look at each finds it, however many there are', () => {
    for (const rest of DRIFTS)
      for (const length of [3, 512, 1024, 1025, count])
        for (const times of [{}, listed(length)]) {
          const signal = pieces(length, { ...rest, ...times });
          const lights = lightsIn(signal);
          expect(brightestAt(signal)).toBe(lights.indexOf(Math.max(...lights)));
        }
  });

  it('has the mean of its samples, of whole pieces and of parts of them', () => {
    for (const rest of DRIFTS) {
      const signal = pieces(count, rest);
      const lights = lightsIn(signal);
      for (const from of [0, 1, 512, 700])
        for (const to of [701, 1024, 1536, count]) {
          const some = lights.slice(from, to);
          expectNear(meanLight(signal, from, to), some.reduce((sum, x) => sum + x, 0) / some.length, 1e-9);
        }
    }
  });
});

describe('the brightest sample', () => {
  it('is the first of several', () => {
    expect(brightestAt(signalOf([1, 5, 2, 5, 5]))).toBe(1);
    expect(
      brightestAt(signalOf(Float64Array.from({ length: 1500 }, (_, i) => (i % 600 === 599 ? 2 : 1)))),
    ).toBe(599);
  });

  it('is none of the blank rows after the recording', () => {
    expect(brightestAt(signalOf([-3, -1, -2, 0]))).toBe(1);
    // the light rises with the time up to the last of 1000 rows, and blank ones follow
    const rows = Array.from({ length: 1100 }, (_, i) =>
      i < 1000 ? [i + 1, i === 100 ? 60 : 5] : [0, 0],
    ) as [number, number][];
    const [times, values] = [rows.map(([time]) => time), rows.map(([, light]) => light)];
    expect(brightestAt(signalOf(values, { times, slope: -0.1 }))).toBe(999);
  });
});

describe('noise', () => {
  it('is told by the step from each sample to the one before, over the stretch alone', () => {
    // steps of 2, 3 and 4 between the second sample and the fifth, where a Gaussian's are 0.6745·√2 of it
    const signal = signalOf([90, 1, 3, 6, 10, 50, 51]);
    expectNear(stepNoise(signal, 1, 5), 3 / (0.6745 * Math.SQRT2));
  });

  it('is told by what each sample lies off the line through its neighbours, whatever their times', () => {
    // the lines through the neighbours stand at 1 + 5/4, at 3 + 4 · 3/7 and at 7, between times 4, 7 and 8 apart
    const signal = signalOf([90, 1, 3, 6, 7, 8, -50], { times: [0, 1, 2, 5, 9, 13, 14] });
    const off = [3 - (1 + 5 / 4), 6 - (3 + (4 * 3) / 7), 7 - 7].map(Math.abs).sort((a, b) => a - b);
    expectNear(bendNoise(signal, 1, 6), (off[1] as number) / (0.6745 * Math.sqrt(1.5)));
  });

  it('is told against the mean of the neighbours where all three stand at one time', () => {
    const signal = signalOf([1, 6, 3, 9], { times: [2, 2, 2, 3] });
    expectNear(bendNoise(signal, 0, 3), 4 / (0.6745 * Math.sqrt(1.5)));
  });

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
