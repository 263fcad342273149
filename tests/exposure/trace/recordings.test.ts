import { describe, expect, it } from 'vitest';
import { traceInside, traceTail } from '../../../src/exposure/trace/traceShares';
import { traceTable } from '../../../src/exposure/trace/traceTable';
import { traceTime } from '../../../src/exposure/trace/traceTime';
import { expectNear, refusal, value } from '../support';
import {
  changed,
  exactly,
  exponential,
  gaussian,
  noiseFrom,
  record,
  type Recording,
  type Shape,
  trapezoid,
  twoTimes,
} from './shapes';

const FLASH = twoTimes(50e-6, 400e-6);
const CLEAN = { decays: 40, samples: 20_000, lead: 0.1 };

function expectLike(shape: Shape, { times, values }: Recording, within: number): void {
  for (const level of [0.1, 0.5, 0.9]) {
    const exact = exactly(shape, level);
    expectNear(value(traceTime(times, values, level)), exact.width, within);
    expect(Math.abs(value(traceInside(times, values, level)) - exact.inside)).toBeLessThan(within);
    expect(Math.abs(value(traceTail(times, values, level)) - exact.after)).toBeLessThan(within);
  }
}

describe('a few samples joined by straight lines', () => {
  it('of a triangle 1 s up and 1 s down: half of it at t0.5, worked by hand', () => {
    expectNear(value(traceTime([0, 1, 2], [0, 1, 0], 0.5)), 1);
    expectNear(value(traceInside([0, 1, 2], [0, 1, 0], 0.5)), 0.75);
    expectNear(value(traceTail([0, 1, 2], [0, 1, 0], 0.5)), 0.125);
    expectNear(value(traceTime([0, 1, 2], [0, 1, 0], 0.1)), 1.8);
  });

  it('of a ramp: up in 1 s, down in 4 s, worked by hand', () => {
    expectNear(value(traceTime([0, 1, 5], [0, 8, 0], 0.25)), 0.75 * 5);
    expectNear(value(traceInside([0, 1, 5], [0, 8, 0], 0.25)), 1 - 0.25 ** 2);
  });

  it('stay straight where they are coarse: from 2 to 6 and from 9 to 3 through half of 10, worked by hand', () => {
    expectNear(value(traceTime([1], [0, 0, 2, 6, 10, 9, 3, 1, 0.5], 0.5)), 2 + (5 + 2 / 3) - (2 + 3 / 4) - 2);
  });

  it('put the sides of a square pulse half way between samples: 3 s for three of them, worked by hand', () => {
    const times = [0, 1, 2, 3, 4, 5, 6, 7];
    expectNear(value(traceTime(times, [0, 0, 0, 10, 10, 10, 0, 0], 0.5)), 3);
    expectNear(value(traceTime(times, [0, 0, 0, 10, 10, 10, 0, 0], 0.1)), 3.8);
  });

  it('of a square pulse that ends late: sixteen samples of twenty-one, worked by hand', () => {
    const values = Array.from({ length: 21 }, (_, i) => (i >= 1 && i <= 16 ? 1 : 0));
    const times = values.map((_, i) => i);
    expectNear(value(traceTime(times, values, 0.5)), 16);
    expectNear(value(traceTime(times, values, 0.1)), 16.8);
  });

  it('of a square pulse with upright sides, two rows at one time: the same at all levels', () => {
    const times = [-5, 0, 0, 500, 500, 600];
    const values = [0, 0, 1, 1, 0, 0];
    for (const level of [0.1, 0.5, 0.9]) {
      expectNear(value(traceTime(times, values, level)), 500);
      expectNear(value(traceInside(times, values, level)), 1);
    }
  });

  it('of an exponential that is cut off at half its decay time: as long at 0.1 as at 0.5, worked by hand', () => {
    const tau = 1e-3;
    const times = Float64Array.from({ length: 2003 }, (_, i) => Math.min(i - 1, 2000) * 0.25e-6).map((t) =>
      Math.max(t, 0),
    );
    const values = times.map((t, i) => (i === 0 || i === 2002 ? 0 : Math.exp(-t / tau)));
    for (const level of [0.1, 0.5]) {
      expectNear(value(traceTime(times, values, level)), 500e-6, 1e-9);
      expectNear(value(traceInside(times, values, level)), 1, 1e-9);
    }
    // at 0.9 it has fallen before it is cut: (1 − 0.9) / (1 − e^(−1/2)) of the light
    expectNear(value(traceTime(times, values, 0.9)), -tau * Math.log(0.9), 1e-6);
    expectNear(value(traceInside(times, values, 0.9)), 0.1 / -Math.expm1(-0.5), 1e-6);
  });
});

describe('an instant rise', () => {
  const shape = exponential(1e-3);
  it('starts at the first lit sample, wherever in the decay that lies', () => {
    for (const samples of [20_000, 20_003, 20_007])
      expectLike(shape, record(shape, { ...CLEAN, samples }), 1e-5);
  });

  it('is none where it takes two steps: straight lines join them, worked by hand', () => {
    // dark up to 100 s, 0.6 at 101 s, 1 from 102 s to 2102 s, dark again at 3102 s
    const values = Float64Array.from({ length: 3400 }, (_, t) =>
      t <= 100 ? 0 : t === 101 ? 0.6 : Math.max(0, Math.min(1, (3102 - t) / 1000)),
    );
    expectNear(value(traceTime([1], values, 0.3)), 2802 - 100.5, 1e-9);
  });
});

describe('polarity and offset', () => {
  it.each([
    ['upside down', -1, 0],
    ['upside down above an offset', -3, 7],
    ['in millivolts above an offset', 250, 1234],
    ['below zero', 1, -40],
  ])('do not matter: %s', (_, scale, offset) => {
    for (const shape of [FLASH, exponential(1e-3), gaussian(1e-4)])
      for (const lead of [0, 0.1]) {
        const recording = record(shape, { ...CLEAN, lead });
        expectLike(
          shape,
          changed(recording, (light) => offset + scale * light),
          1e-5,
        );
      }
  });

  it('do not matter where a noisy recording starts at the peak', () => {
    const shape = exponential(1e-3);
    for (const seed of [1, 2, 3, 4, 5, 6, 7, 8, 9, 10])
      for (const scale of [1, -1]) {
        const recording = record(shape, { ...CLEAN, lead: 0, noise: 0.06, seed });
        const { times, values } = changed(recording, (light) => scale * light);
        expectNear(value(traceTime(times, values, 0.5)), exactly(shape, 0.5).width, 0.15);
      }
  });

  it('do not matter under noise', () => {
    const recording = record(FLASH, { ...CLEAN, samples: 200_000, noise: 0.01, seed: 3 });
    expectLike(
      FLASH,
      changed(recording, (light) => 7 - 3 * light),
      0.02,
    );
  });
});

describe('the base', () => {
  it('may drift along a straight line, up or down', () => {
    for (const shape of [FLASH, gaussian(1e-4), trapezoid(1e-4, 3e-4, 2e-4)])
      for (const drift of [0.02, 0.2, -0.1])
        expectLike(
          shape,
          changed(record(shape, CLEAN), (light, part) => light + drift * part),
          1e-3,
        );
  });

  it('may drift under noise', () => {
    const recording = record(FLASH, { ...CLEAN, samples: 200_000, noise: 0.01, seed: 4 });
    expectLike(
      FLASH,
      changed(recording, (light, part) => light + 0.1 * part),
      0.02,
    );
  });

  it('may be given, in the unit of the values', () => {
    const { times, values } = changed(
      record(FLASH, { ...CLEAN, lead: 0, decays: 4 }),
      (light) => 5 - 2 * light,
    );
    const exact = exactly(FLASH, 0.5);
    expectNear(value(traceTime(times, values, 0.5, 5)), exact.width, 1e-5);
    // half of the height above another base is another level: 0.5·(2 + 1) − 1 = 0.5 of 2 is 0.25 of the height
    expectNear(value(traceTime(times, values, 0.5, 6)), exactly(FLASH, 0.25).width, 1e-5);
  });

  it('of a recording in coarse steps is the mean of what it flickers between', () => {
    const next = noiseFrom(5);
    const coarse = changed(record(FLASH, { ...CLEAN, samples: 200_000 }), (light) =>
      Math.round(200 * light + 10.4 + 0.4 * next()),
    );
    expectLike(FLASH, coarse, 0.005);
  });

  it('of a recorder that cuts off below 0 does not hide how much noise there is', () => {
    for (const seed of [1, 2, 3]) {
      const recording = record(FLASH, { ...CLEAN, samples: 200_000, noise: 0.01, seed });
      expectLike(
        FLASH,
        changed(recording, (light) => Math.max(0, light)),
        0.02,
      );
    }
  });

  it('may fall along a straight line up to a flash that rises as smoothly as a Gaussian', () => {
    const shape = gaussian(1e-4);
    const recording = record(shape, { decays: 36, samples: 200_000, lead: 0.1 });
    expectLike(
      shape,
      changed(recording, (light, part) => light - 0.1 * part),
      1e-5,
    );
  });

  it('may not be come back to: light is added up as far as it falls', () => {
    // the recorder undershoots for the second half of the recording, long after the flash
    const low = changed(record(FLASH, CLEAN), (light, part) => light - (part > 0.5 ? 0.02 : 0));
    expectLike(FLASH, low, 1e-4);
  });

  it('is what the tail comes down to where the recording starts on the flash and ends before it is dark', () => {
    const shape = exponential(1e-3);
    const { times, values } = record(shape, { decays: 4, samples: 20_000 });
    // the mere median of the last tenth would be e^(−3.8) = 0.022, and t0.1 a fifth of a decay time short
    expectNear(value(traceTime(times, values, 0.1)), exactly(shape, 0.1).width, 1e-3);
  });
});

describe('several flashes', () => {
  const length = 40 * FLASH.decay;
  const lead = 0.3;
  const withOthers = (shape: Shape, noise: number): Recording =>
    changed(
      record(shape, { decays: 28, samples: 200_000, lead, noise, seed: 6 }),
      (light, part) =>
        light +
        0.3 * shape.light((part - 0.1) * length * (shape.decay / FLASH.decay)) +
        0.5 * shape.light((part - 0.75) * length * (shape.decay / FLASH.decay)),
    );

  it('are told apart: a smaller one before, another after', () => {
    for (const shape of [FLASH, gaussian(1e-4)]) expectLike(shape, withOthers(shape, 0), 1e-3);
  });

  it('are told apart under noise', () => {
    for (const shape of [FLASH, gaussian(1e-4)]) expectLike(shape, withOthers(shape, 0.01), 0.02);
  });

  it('count as one where the light never goes out for as long as it lasted: worked by hand', () => {
    // 1 s wide triangles, 0.8 s dark between them: from half of the first to half of the last
    expectNear(
      value(traceTime([0, 0.5, 1, 1.8, 2.3, 2.8], [0, 1, 0, 0, 0.9, 0], 0.25)),
      2.8 - 0.125 - 0.5 * (0.25 / 0.9),
    );
    // 1.2 s dark: the first alone, which is the highest
    expectNear(value(traceTime([0, 0.5, 1, 2.2, 2.7, 3.2], [0, 1, 0, 0, 0.9, 0], 0.25)), 0.75);
  });
});

describe('hysteresis of twice the noise', () => {
  // 1 % of noise before the flash, a rise that changes its mind, and the same backwards
  const lead = Array.from({ length: 100 }, (_, i) => (i % 2 === 0 ? 0.01 : -0.01));
  const flash = (rise: readonly number[]): number[] => [...lead, ...rise, 1, ...[...rise].reverse(), ...lead];

  it('does not count a rise that comes no higher than that above the level, worked by hand', () => {
    // through 0.5 between 0.495 and 0.6, the third step of the rise, and the mirror of it
    const values = flash([0.2, 0.4, 0.505, 0.495, 0.6, 0.8]);
    expectNear(value(traceTime([1], values, 0.5, 0)), 2 * (3 - 0.005 / 0.105), 1e-9);
  });

  it('does not count a dip that goes no lower than that below the level, worked by hand', () => {
    // through 0.5 between 0.4 and 0.53, and the mirror of it
    const values = flash([0.2, 0.4, 0.53, 0.495, 0.6, 0.8]);
    expectNear(value(traceTime([1], values, 0.5, 0)), 2 * (5 - 0.1 / 0.13), 1e-9);
  });
});

describe('a hump that stands little above a level', () => {
  // straight lines: up in 64 s, down to 0.3, up to the hump, and down in 100 s; turned round, the hump comes first
  const trace = (hump: number, seed: number): number[] => {
    const next = noiseFrom(seed);
    const corners = [[0, 0], [200, 0], [264, 1], [324, 0.3], [384, hump], [484, 0], [684, 0]] as const; // prettier-ignore
    return Array.from({ length: 685 }, (_, t) => {
      const k = corners.findIndex(([time]) => time >= t);
      const [[from, low], [to, high]] = [corners[Math.max(0, k - 1)], corners[k]] as [[number, number], [number, number]]; // prettier-ignore
      return (to > from ? low + ((high - low) * (t - from)) / (to - from) : low) + 0.018 * next();
    });
  };

  it('counts to its own end, before the peak or after it, under noise: worked by hand', () => {
    for (const hump of [0.58, 0.65])
      for (const seed of [3, 4, 5, 6]) {
        const values = trace(hump, seed);
        // up through 0.5 at 232 s, down where the straight line from the hump has come to 0.5
        const wanted = 384 + 100 * (1 - 0.5 / hump) - 232;
        for (const list of [values, [...values].reverse()])
          // under noise the pointed top counts as some hundredths lower
          expectNear(value(traceTime([1], list, 0.5)), wanted, 0.05);
      }
  });
});

describe('ringing', () => {
  it('is part of the duration: from the first rise to the last fall, worked by hand', () => {
    expectNear(value(traceTime([0, 1, 2, 3, 4], [0, 10, 4, 8, 0], 0.5)), 3.375 - 0.5);
  });
});

describe('uneven sampling', () => {
  it('does not matter', () => {
    for (const noise of [0, 0.01]) {
      const next = noiseFrom(8);
      const times = new Float64Array(100_000);
      let time = -4 * FLASH.decay;
      for (let i = 0; i < times.length; i++) {
        times[i] = time;
        time += ((40 * FLASH.decay) / times.length) * (0.2 + 1.6 * (i % 7 < 3 ? 0.8 : 0.2));
      }
      const values = times.map((t) => FLASH.light(t) + noise * next());
      expectLike(FLASH, { times, values }, noise === 0 ? 1e-5 : 0.03);
    }
  });

  it('may grow coarser with time', () => {
    const times = Float64Array.from({ length: 20_000 }, (_, i) =>
      i < 2000 ? (i - 2000) * 1e-6 : 1e-8 * Math.expm1(((i - 2000) / 18_000) * Math.log(2e6)),
    );
    expectLike(FLASH, { times, values: times.map(FLASH.light) }, 1e-4);
  });
});

describe('the sample interval in one cell', () => {
  it('stands for a column of times', () => {
    const { times, values } = record(FLASH, CLEAN);
    const step = ((times.at(-1) as number) - (times[0] as number)) / (times.length - 1);
    for (const level of [0.1, 0.5, 0.9])
      expectNear(value(traceTime([step], values, level)), value(traceTime(times, values, level)), 1e-9);
  });

  it('takes zeros at the end for blank cells, and says so where the flash does not end before them', () => {
    expectNear(value(traceTime([1], [0, 4, 8, 4, 1, 0, 0, 0], 0.5)), 2);
    expect(refusal(traceTime([1], [0, 2, 8, 5, 0, 0, 0])).message).toContain(
      'zeros at the end count as blank',
    );
  });
});

describe('blank rows at the end', () => {
  it('are left off where both columns are 0', () => {
    const { times, values } = record(FLASH, { ...CLEAN, samples: 5000 });
    const longer = (list: Float64Array): number[] => [...list, ...Array.from({ length: 3000 }, () => 0)];
    expect(traceTable(longer(times), longer(values))).toEqual(traceTable(times, values));
  });

  it('do not end a flash that was not recorded to its end', () => {
    const rise = [0, 1, 2, 3];
    expect(refusal(traceTime([...rise, 0, 0], [0, 8, 7, 6, 0, 0])).message).toContain('ends too early');
  });
});

describe('a recording that does not hold the whole flash', () => {
  it('counts from its first sample where it starts above the level', () => {
    const { times, values } = record(FLASH, { decays: 40, samples: 200_000 });
    const peak = values.indexOf(values.reduce((top, light) => Math.max(top, light)));
    const late = (list: Float64Array): Float64Array => list.subarray(peak);
    for (const level of [0.1, 0.5, 0.9])
      expectNear(
        value(traceTime(late(times), late(values), level)),
        FLASH.fall(level) - (times[peak] as number),
        1e-5,
      );
  });

  it('still answers the levels through which it falls, and no share', () => {
    const { times, values } = record(FLASH, { ...CLEAN, samples: 200_000 });
    const end = times.findIndex((t) => t > FLASH.fall(0.25));
    const [t, v] = [times.subarray(0, end), values.subarray(0, end)];
    expectNear(value(traceTime(t, v, 0.5)), exactly(FLASH, 0.5).width, 1e-6);
    for (const refused of [traceTime(t, v, 0.1), traceInside(t, v, 0.5), traceTail(t, v, 0.5)]) {
      expect(refusal(refused).fail).toBe('no-answer');
      expect(refusal(refused).message).toContain('never falls through 0.1');
    }
  });
});
