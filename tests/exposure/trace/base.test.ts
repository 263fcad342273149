import { describe, expect, it } from 'vitest';
import { baseGiven, baseOf } from '../../../src/exposure/trace/base';
import { leadOf } from '../../../src/exposure/trace/beforeRise';
import { brightestAt, type Signal } from '../../../src/exposure/trace/signal';
import { expectNear } from '../support';
import { noiseFrom } from './shapes';
import { signalFrom } from './signals';

const found = (signal: Signal) => baseOf(signal, brightestAt(signal));
/** A flash at 0.3 s, over within a hundredth of a second. */
const flash = (t: number): number => Math.max(0, 1 - Math.abs(t - 0.3) / 0.01);

describe('a base that drifts', () => {
  it('is the straight line of what stands before the flash, told in the middle of it', () => {
    const signal = signalFrom((t) => 0.2 + 0.1 * t + 0.7 * flash(t));
    const lead = leadOf(signal, brightestAt(signal));
    const { level, slope, origin, sure } = found(signal);
    expect(lead).toBeGreaterThan(150);
    expect(origin).toBeCloseTo((lead - 1) / 2000, 12);
    expect(slope).toBeCloseTo(0.1, 9);
    expect(level).toBeCloseTo(0.2 + 0.1 * origin, 9);
    expect(sure).toBe(true);
  });

  it('drifts whatever the clock says', () => {
    const signal = signalFrom((t) => 0.2 + 0.1 * (t - 50) + 0.7 * flash(t - 50), { from: 50, to: 51 });
    expect(found(signal).slope).toBeCloseTo(0.1, 9);
  });

  it('is told in units of the signal, where these are not those of the samples', () => {
    const signal = signalFrom((t) => 20 + 10 * t + 70 * flash(t), { scale: 0.01 });
    const { level, slope, origin, noise } = found(signal);
    expect(slope).toBeCloseTo(0.1, 9);
    expect(level).toBeCloseTo(0.2 + 0.1 * origin, 9);
    expect(noise).toBeLessThan(1e-9);
  });

  it('is as sure as its samples are many, the noise being that about the line', () => {
    for (const seed of [1, 2, 3]) {
      const next = noiseFrom(seed);
      const signal = signalFrom((t) => 0.2 + 0.1 * t + 0.7 * flash(t) + 0.004 * next(), { count: 20_001 });
      const { level, slope, origin, noise, error } = found(signal);
      const lead = leadOf(signal, brightestAt(signal));
      expectNear(noise, 0.004, 0.05);
      expectNear(error, noise / Math.sqrt(lead), 0.01);
      expect(Math.abs(level - 0.2 - 0.1 * origin)).toBeLessThan(5 * error);
      // the mean of 2000 samples at the end is as sure as a hundredth of a percent
      expect(Math.abs(slope - 0.1)).toBeLessThan(6e-4);
    }
  });

  it('is told though it rises by hardly more than the noise of its means', () => {
    let drifts = 0;
    for (let seed = 1; seed <= 20; seed++) {
      const next = noiseFrom(seed);
      // means of 2000 and 6000 samples at 0.95 s and 0.15 s: 0.0024 is some nine standard deviations
      const signal = signalFrom((t) => 0.2 + 0.003 * t + 0.7 * flash(t) + 0.01 * next(), { count: 20_001 });
      if (found(signal).slope !== 0) drifts++;
    }
    expect(drifts).toBeGreaterThan(17);
  });

  it('is none beyond half of the range, nor where the end lies on no line with the start', () => {
    const rises = (by: number) =>
      found(signalFrom((t) => by * t + 0.9 * flash(t + 0.2), { count: 10_001 })).slope;
    expect(rises(0.5)).toBeCloseTo(0.5, 9);
    expect(rises(0.6)).toBe(0);
    // The last tenth lies at 0.1, and the one before 0.008 above the line to it: less than 0.005 would do.
    const bent = (t: number): number => (t < 0.3 ? 0 : 0.1 * (1 - 0.31 * (0.95 - t)));
    expect(found(signalFrom((t) => bent(t) + 0.9 * flash(t), { count: 10_001 })).slope).toBe(0);
  });

  it('is none where the flash comes in the last three tenths', () => {
    const at = (time: number) =>
      found(signalFrom((t) => 0.015 * t + 0.9 * flash(t - time + 0.3), { count: 10_001 })).slope;
    expect(at(0.65)).toBeCloseTo(0.015, 4);
    expect(at(0.75)).toBe(0);
  });
});

describe('a base after the flash', () => {
  const decay = (t: number): number => Math.exp(-t);

  it('is what an exponential tail comes down to, whatever the clock says, and under noise', () => {
    for (const from of [0, 50]) {
      const clean = signalFrom((t) => 0.1 + 0.9 * decay(t - from), { from, to: from + 4 });
      expect(found(clean)).toMatchObject({ slope: 0, origin: 0, sure: false });
      expect(found(clean).noise).toBeLessThan(1e-6);
      expect(found(clean).level).toBeCloseTo(0.1, 5);
    }
    for (const seed of [1, 2, 3, 4, 5]) {
      const next = noiseFrom(seed);
      const noisy = signalFrom((t) => 0.1 + 0.9 * decay(t) + 5e-4 * next(), { to: 3, count: 40_001 });
      expect(Math.abs(found(noisy).level - 0.1)).toBeLessThan(2e-3);
    }
  });

  it('is the middle of the last tenth where nothing falls there, or not as an exponential does', () => {
    const ofLastTenth = (signal: Signal): number => {
      const { values, count } = signal.samples;
      const last = Float64Array.from(values)
        .slice(count - Math.floor(count / 10))
        .sort();
      return ((last[Math.floor((last.length - 1) / 2)] as number) + (last[last.length >> 1] as number)) / 2;
    };
    for (let seed = 1; seed <= 10; seed++) {
      const next = noiseFrom(seed);
      const flat = signalFrom((t) => 0.3 + 0.7 * decay(40 * t) + 0.01 * next());
      expect(found(flat).level).toBe(ofLastTenth(flat));
    }
    const bump = signalFrom((t) => (t < 0.7 ? Math.max(0, 1 - t) : t < 0.8 ? 0 : t < 0.9 ? 0.1 : 0.05));
    expect(found(bump).level).toBe(0.05);
    const ramp = signalFrom((t) => 1 - 0.9 * t);
    expect(found(ramp).level).toBe(ofLastTenth(ramp));
  });

  it('is looked for behind a fall that noise does not make, worked by hand', () => {
    // Noise that is up and down in turn stands out of the line through its neighbours by twice as much, and counts for
    // 2 / (0.6745·√1.5) = 2.42 of its size; two tenths of 4000 samples differ by 2.42·√(2/4000) = 0.054 of it by chance.
    const tail = (noise: number) =>
      signalFrom((t) => decay(t) + (Math.round(t * 8000) % 2 === 0 ? noise : -noise), {
        to: 5,
        count: 40_001,
      });
    // The last two tenths of e^(−t) up to 5 differ by 0.0056: 20 and 2 times what comes by chance.
    expect(Math.abs(found(tail(0.0056 / 0.054 / 20)).level)).toBeLessThan(1e-3);
    expect(Math.abs(found(tail(0.0056 / 0.054 / 2)).level)).toBeGreaterThan(5e-3);
  });

  it('is the dark after a square pulse, wherever in its tenth of the recording that ends', () => {
    for (const end of [0.75, 0.785, 0.805, 0.815, 0.85, 0.895]) {
      for (const dark of [0, 0.25])
        expect(found(signalFrom((t) => (t > 0.01 && t < end ? 1 : dark))).level).toBe(dark);
    }
  });

  it('is the first sample where that lies lower', () => {
    const { level } = found(signalFrom((t) => (t === 0 ? 0 : 0.2 + 0.8 * decay(30 * t))));
    expect(level).toBe(0);
  });

  it('is not the first sample where that lies lower by noise alone', () => {
    const next = noiseFrom(5);
    const { level } = found(
      signalFrom((t) => (t === 0 ? 0.29 : 0.3 + 0.7 * decay(40 * t) + 0.01 * next()), { count: 4001 }),
    );
    expect(Math.abs(level - 0.3)).toBeLessThan(0.003);
  });

  it('is as sure as the median of a tenth of the samples, by the noise of that tenth', () => {
    const error = (count: number, seed: number) => {
      const next = noiseFrom(seed);
      return found(signalFrom((t) => decay(20 * t) + 0.01 * next(), { count }));
    };
    for (const seed of [1, 2, 3]) {
      const { noise, error: off } = error(20_001, seed);
      expectNear(noise, 0.01, 0.06);
      // 1.25 is √(π/2), by which the median of a Gaussian is less sure than the mean
      expectNear(off, (Math.sqrt(Math.PI / 2) * noise) / Math.sqrt(2000), 0.01);
    }
    // the noise of fewer than sixty samples is not worth a guess
    expect(error(59, 1).noise).toBe(0);
    expectNear(error(60, 1).noise, 0.01, 0.5);
  });
});

describe('a base that is given', () => {
  it('stands as it is, with the noise before the flash, or in the last tenth where nothing lies before', () => {
    const next = noiseFrom(7);
    // half as much noise before the flash as after it
    const led = signalFrom((t) => flash(t) + (t < 0.3 ? 0.005 : 0.01) * next(), { count: 20_001 });
    const given = baseGiven(led, brightestAt(led), 0.125);
    expect(given).toEqual({ level: 0.125, slope: 0, origin: 0, noise: given.noise, error: 0, sure: true });
    expectNear(given.noise, 0.005, 0.05);
    const bare = signalFrom((t) => Math.exp(-9 * t) + (t < 0.9 ? 0.002 : 0.01) * next(), { count: 20_001 });
    expectNear(baseGiven(bare, brightestAt(bare), 0).noise, 0.01, 0.05);
  });
});
