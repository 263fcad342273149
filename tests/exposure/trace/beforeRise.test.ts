import { describe, expect, it } from 'vitest';
import { leadOf } from '../../../src/exposure/trace/beforeRise';
import { noiseFrom } from './shapes';
import { signalOf } from './signals';

/** Samples at one light, which go up and down by a step about it. */
const held = (count: number, light: number, step = 0): number[] =>
  Array.from({ length: count }, (_, i) => light + (i % 2 === 0 ? -step / 2 : step / 2));
/** Light that rises by the same from each sample to the next, likewise. */
const ramp = (count: number, from: number, to: number, step = 0): number[] =>
  held(count, from, step).map((light, i) => light + ((to - from) * i) / (count - 1));
/** A flash that rises at once, and makes the recording long enough for twenty samples to show the noise. */
const FLASH = [0.8, 1, ...held(200, 0.7)];
/** Standard deviation of noise whose samples go up and down by 1: the median step / (0.6745·√2). */
const NOISE = 1.0483;

const leadIn = (values: readonly number[], times?: readonly number[]): number =>
  leadOf(signalOf(values, times && { times }), values.indexOf(1));

describe('the samples before the flash', () => {
  it('are those that stand at one level, from forty up', () => {
    for (const level of [0, 0.3])
      for (const count of [40, 41, 60, 79, 80, 81, 168, 500]) {
        expect(leadIn([...held(count, level), ...FLASH])).toBe(count);
        expect(leadIn([...held(count, level, 0.01), ...FLASH])).toBe(count);
        expect(leadIn([...held(count, level), 1, ...held(200, level || 0.1)])).toBe(count);
      }
    expect(leadIn([...held(39, 0.3), ...FLASH])).toBe(0);
    expect(leadIn([...held(39, 0.3), 0.6, 1, ...held(200, 0.3)])).toBe(0);
    expect(leadIn([...held(40, 0.3), 1, ...held(300, 0.3)])).toBe(40);
  });

  it('end with the last that lies within four times the noise of their level', () => {
    for (const count of [40, 50]) {
      expect(leadIn([...held(count, 0.3), 0.31, 0.315, ...FLASH])).toBe(count);
      // By 4 × 1.0483 × 0.004 = 0.01677
      expect(leadIn([...held(count, 0.3, 0.004), 0.3165, ...FLASH])).toBe(count + 1);
      expect(leadIn([...held(count, 0.3, 0.004), 0.3171, ...FLASH])).toBe(count);
      expect(leadIn([...held(count, 0.3, 0.004), 0.2829, ...FLASH])).toBe(count);
    }
  });

  it('may differ by rounding errors', () => {
    expect(leadIn([...held(40, 0), ...held(40, 1e-9), ...FLASH])).toBe(80);
    // However far these would rise up to the flash: by 1e-9 in 60 ns, and the flash comes 10 s later.
    const times = [...ramp(60, 1, 1 + 59e-9), ...FLASH.map((_, i) => 11 + i)];
    expect(leadIn([...ramp(60, 0, 1e-9), ...FLASH], times)).toBe(60);
  });

  it('may all have the same time, which tells of no rise', () => {
    const times = [...held(60, 0), ...FLASH.map((_, i) => 1 + i)];
    expect(leadIn([...held(60, 0.3), ...FLASH], times)).toBe(60);
    expect(leadIn([...ramp(60, 0.3, 0.31), ...FLASH], times)).toBe(60);
  });

  it('are told in fifty samples, by the first tenth of them, and in no fewer', () => {
    const after = held(9, 0.7);
    expect(leadIn([...held(40, 0.3), 1, ...after])).toBe(40);
    expect(leadIn([...held(40, 0.3), 1, ...after.slice(1)])).toBe(0);
    expect(leadIn([...held(5, 0), ...held(35, 0.03), 1, ...after])).toBe(0);
    expect(leadIn([...held(4, 0), ...held(36, 0.03), 1, ...after])).toBe(0);
    expect(leadIn([...held(2, 0), ...held(38, 0.03), 1, ...after])).toBe(40);
  });

  it('are told by the first twenty in a long recording', () => {
    expect(leadIn([...held(50, 0.1), ...FLASH, ...held(700, 0.6)])).toBe(50);
    expect(leadIn([...held(9, 0.06), ...held(50, 0.1), ...FLASH, ...held(700, 0.6)])).toBe(59);
    expect(leadIn([...held(11, 0.06), ...held(50, 0.1), ...FLASH, ...held(700, 0.6)])).toBe(0);
  });

  it('are none where their level lies in the upper half of the range', () => {
    expect(leadIn([...held(50, 0.5), ...FLASH])).toBe(50);
    expect(leadIn([...held(50, 0.51), ...FLASH])).toBe(0);
  });
});

describe('the samples before an earlier flash', () => {
  const withEarlier = (before: number, light: number, step: number): number =>
    leadIn([...held(before, 0.3, step), light, ...held(99 - before, 0.3, step), ...FLASH]);

  it('are all that count, from forty up', () => {
    expect(withEarlier(60, 0.9, 0)).toBe(60);
    expect(withEarlier(40, 0.9, 0)).toBe(40);
    expect(withEarlier(39, 0.9, 0)).toBe(100);
  });

  it('end where it stands out by 2 % of the range and six times the noise', () => {
    expect(withEarlier(60, 0.319, 0)).toBe(100);
    expect(withEarlier(60, 0.321, 0)).toBe(60);
    const most = 0.02 + 6 * NOISE * 0.01;
    expect(withEarlier(60, 0.3 + most - 0.001, 0.01)).toBe(100);
    expect(withEarlier(60, 0.3 + most + 0.001, 0.01)).toBe(60);
  });
});

describe('the samples before a flash that rises slowly', () => {
  it('are halved while the second half lies above the first by four standard deviations of their medians', () => {
    const risen = (half: number, by: number): number =>
      leadIn([...held(half, 0.3, 0.01), ...held(half, 0.3 + by, 0.01), ...FLASH]);
    for (const half of [40, 80, 160]) {
      // A median is 1.25 times less sure than a mean, and two of them √2 times less than one.
      const doubt = 1.25 * NOISE * 0.01 * Math.sqrt(2 / half);
      expect(risen(half, 3.9 * doubt)).toBe(2 * half);
      expect(risen(half, 4.1 * doubt)).toBe(half);
      expect(risen(half, -4.1 * doubt)).toBe(2 * half);
    }
    const twice = [...held(80, 0.3, 0.01), ...held(80, 0.32, 0.01), ...held(160, 0.335, 0.01)];
    expect(leadIn([...twice, ...FLASH])).toBe(80);
  });

  it('are not halved below forty', () => {
    expect(leadIn([...held(40, 0.3, 0.02), ...held(40, 0.35, 0.02), ...FLASH])).toBe(40);
    expect(leadIn([...held(39, 0.3, 0.02), ...held(39, 0.35, 0.02), ...FLASH])).toBe(78);
  });
});

describe('the foot of a flash', () => {
  /** Sixty samples that rise by so much on either side of their middle, and so many from there to the flash. */
  const rising = (half: number, distance: number): number => {
    const values = [...ramp(60, 0.3 - half, 0.3 + half, 0.02), ...held(distance, 0.6), ...FLASH.slice(1)];
    return leadIn(
      values,
      values.map((_, i) => 5 + i / 100),
    );
  };

  it('is no lead where it would rise to a tenth of the peak up to that', () => {
    // 0.03 in 29.5 samples, and 0.0005 more by their going up and down: 0.1 in 96.7, or 66.2 after the last of them.
    expect(rising(0.03, 63)).toBe(60);
    expect(rising(0.03, 69)).toBe(0);
    expect(rising(-0.03, 400)).toBe(60);
  });

  it('is no lead where it rises by four standard deviations of the slope', () => {
    // The rise of a line through n samples is known to the noise × √(3 / n), or 0.0047: the middle to the end rises by 0.0188 or more.
    expect(rising(0.0175, 400)).toBe(60);
    expect(rising(0.02, 400)).toBe(0);
  });

  it('is no lead where that is seen only after what lies above it is cut off', () => {
    const foot = [...ramp(80, 0.3, 0.342, 0.02), ...held(80, 0.342, 0.02)];
    // 0.021 in the 39.5 samples from the middle to the end of the first half: 0.1 in 188, or at sample 227.
    expect(leadIn([...foot, ...held(140, 0.6), ...FLASH.slice(1)])).toBe(0);
    expect(leadIn([...foot, ...held(30, 0.6), ...FLASH.slice(1)])).toBe(80);
  });
});

describe('the samples before the flash on a base that drifts', () => {
  it('are those along a straight line within 2 % of the range, from forty up', () => {
    for (const count of [40, 41, 60, 100]) {
      expect(leadIn([...ramp(count, 0.3, 0.31), ...FLASH])).toBe(count);
      expect(leadIn([...ramp(count, 0.31, 0.3), ...FLASH])).toBe(count);
    }
    expect(leadIn([...ramp(39, 0.3, 0.31), ...FLASH])).toBe(0);
    // The middle of the first twenty of 1001 lies at 0.30095, and the samples after it reach 0.32095 after 200 more.
    expect(leadIn([...ramp(1001, 0.3, 0.4), ...FLASH])).toBe(210);
  });

  it('are those before an earlier flash', () => {
    const values = [...ramp(100, 0.3, 0.31), ...FLASH];
    values[60] = 0.9;
    expect(leadIn(values)).toBe(60);
  });

  it('are none where the line would reach a tenth of the peak up to that', () => {
    // It rises by 0.02 a second, and the middle of its last third lies at 7.75 s.
    const flashAt = (time: number): number =>
      leadIn(
        [...ramp(90, 0.3, 0.3178), ...held(9, 0.8), 1, ...held(20, 0.7)],
        [...ramp(90, 7, 7.89), ...ramp(9, 7.9, 7.98), time, ...ramp(20, 20, 21)],
      );
    expect(flashAt(12.7)).toBe(90);
    expect(flashAt(12.8)).toBe(0);
  });

  it('are straight where their middle third lies within a tenth of the rise of the middle of the others', () => {
    const bent = (middle: number, below = 0): number =>
      leadIn([
        ...Array.from({ length: 30 }, (_, i) => 0.3 - (i < 20 && i % 2 === 0 ? below : 0)),
        ...held(10, 0.319),
        ...held(40, 0.3 + middle),
        ...held(40, 0.318),
        ...FLASH,
      ]);
    expect(bent(0.009 + 0.0017)).toBe(120);
    expect(bent(0.009 + 0.0019)).toBe(0);
    expect(bent(0.009 - 0.0017)).toBe(120);
    expect(bent(0.009 - 0.0019)).toBe(0);
    // … and the noise
    expect(bent(0.009 + 0.0018 + (NOISE - 0.05) * 0.001, 0.001)).toBe(120);
    expect(bent(0.009 + 0.0018 + (NOISE + 0.05) * 0.001, 0.001)).toBe(0);
  });

  it('are straight where all three thirds stand at one level', () => {
    expect(leadIn([...held(25, 0.3), ...held(170, 0.31), ...FLASH])).toBe(195);
  });

  it('are the first half, or quarter, of those along which only that is straight', () => {
    expect(leadIn([...ramp(60, 0.3, 0.31), ...held(60, 0.31), ...FLASH])).toBe(60);
    expect(leadIn([...ramp(60, 0.3, 0.31), ...held(180, 0.31), ...FLASH])).toBe(60);
  });
});

describe('the samples before a rise that noise covers at first', () => {
  /** So many level samples, and a rise by so much a sample from there to the top, under Gaussian noise. */
  const risen = (level: number, slope: number, noise: number, seed: number): number => {
    const next = noiseFrom(seed);
    const rise = Array.from({ length: Math.ceil(1 / slope) }, (_, i) => Math.min(1, slope * (i + 1)));
    const light = [...held(level, 0), ...rise, ...held(400, 0.3)];
    const values = light.map((x) => (x === 1 ? 2 : x + noise * next()));
    return leadOf(signalOf(values), values.indexOf(2));
  };
  const found = (level: number, slope: number, noise: number): number =>
    Array.from({ length: 100 }, (_, seed) => risen(level, slope, noise, seed)).filter((lead) => lead >= 40)
      .length;

  it('are found, though some of the rise lies within four times the noise of their level', () => {
    // twelve, twenty and forty samples of the rise lie there
    for (const [level, slope, noise] of [
      [48, 0.01, 0.03],
      [100, 0.01, 0.05],
      [300, 0.003, 0.03],
    ] as const)
      expect(found(level, slope, noise), `${level} before ${slope} a sample`).toBeGreaterThanOrEqual(90);
  });

  it('are none where it rises from the first sample on, and faster later', () => {
    // The rise of 0.05 over the first 200 is known to the noise × √(12 / n), or 0.013; then it rises three times as fast.
    const foot = [...ramp(200, 0, 0.05, 0.05), ...ramp(200, 0.05, 0.2, 0.05)];
    expect(leadIn([...foot, ...held(200, 0.6), ...FLASH.slice(1)])).toBe(0);
    // The last of the 400 lies beyond four times the noise: half of 399.
    const level = [...held(200, 0, 0.05), ...ramp(200, 0, 0.2, 0.05)];
    expect(leadIn([...level, ...held(200, 0.6), ...FLASH.slice(1)])).toBe(199);
  });

  it('are none where it rises from the first sample on', () => {
    for (const [slope, noise] of [
      [0.01, 0.03],
      [0.003, 0.03],
      [0.001, 0.03],
      [0.003, 0.05],
    ] as const)
      expect(found(0, slope, noise), `${slope} a sample`).toBeLessThanOrEqual(2);
  });
});
