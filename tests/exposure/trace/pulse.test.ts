import { describe, expect, it } from 'vitest';
import { readPulse } from '../../../src/exposure/trace/pulse';
import { lightAt } from '../../../src/exposure/trace/signal';
import { expectNear, refusal, value } from '../support';
import { noiseFrom } from './shapes';

/** Values at 0, 1, 2 … milliseconds. */
const list = (count: number, at: (i: number) => number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => at(i));
const pulseIn = (values: ArrayLike<number>, base?: number) => value(readPulse([1e-3], values, base));
/** 0 in the dark, and 1 at the middle of so many samples to either side. */
const triangle = (i: number, middle: number, half: number): number =>
  Math.max(0, 1 - Math.abs(i - middle) / half);

describe('a pulse', () => {
  // dark at 4 for 100 samples, but for one at 2 after it; lit up to 12
  const values = list(400, (i) => (i === 300 ? 2 : 4 + 8 * triangle(i, 150, 40)));

  it('stands above its base in heights of its own, on a range from 0 to 1', () => {
    for (const [sign, given] of [
      [1, values],
      [-1, values.map((x) => -x)],
    ] as const) {
      for (const base of [undefined, sign * 4]) {
        const pulse = pulseIn(given, base);
        expect(pulse.signal.sign).toBe(sign);
        expectNear(pulse.base.level, 0.2);
        expectNear(pulse.top.height, 0.8);
        expect(pulse.peak).toBe(150);
        for (const i of [0, 120, 150, 170, 300, 399])
          expect(lightAt(pulse.signal, i)).toBeCloseTo(((values[i] as number) - 4) / 8, 12);
      }
    }
  });

  it('has its width at 2 % of its height, and the first dark samples as its ends', () => {
    const pulse = pulseIn(values);
    // 0.02 · 40 = 0.8 samples from either end are darker
    expectNear(pulse.width, 0.08);
    expect(pulse).toMatchObject({ from: 110, to: 190, instant: false, earlier: undefined, later: undefined });
    expect(pulse.foot).toEqual({ low: 0.02, high: 0.02 });
  });

  it('stands above the base that is given, whatever the recording shows', () => {
    for (const sign of [1, -1]) {
      const { base, top, signal } = pulseIn(
        values.map((x) => sign * x),
        sign * 3,
      );
      expectNear(base.level, 0.1);
      expectNear(top.height, 0.9);
      expectNear(lightAt(signal, 0), 1 / 9);
    }
  });

  it('is found where the values lie about 0 as far up as down', () => {
    const { base, peak } = pulseIn(values.map((x) => x - 7));
    expectNear(base.level, 0.2);
    expect(peak).toBe(150);
  });

  it('ends with the recording where its light does', () => {
    const pulse = pulseIn(
      list(400, (i) => (i < 60 ? 0 : Math.exp((60 - i) / 90))),
      0,
    );
    expect(pulse.to).toBe(399);
  });

  it('begins with its first lit sample where it rises at once', () => {
    const pulse = pulseIn(list(20_000, (i) => (i < 100 ? 0 : Math.exp((100 - i) / 1000))));
    expect(pulse).toMatchObject({ instant: true, from: 100, peak: 100 });
  });

  it('has light up to the valleys between it and its neighbours', () => {
    // a tail falls on from 0.02, until 300 samples off the middle another pulse begins on either side
    const pulse = pulseIn(
      list(2001, (i) => {
        const off = Math.abs(i - 1000);
        return (
          Math.max(triangle(off, 0, 40), 0.018 * Math.exp((40 - off) / 60) * +(off < 360)) +
          0.5 * triangle(off, 330, 30)
        );
      }),
      0,
    );
    // 302 off the middle, 0.5 · 2/30 are more than 0.02
    expect(pulse).toMatchObject({ peak: 1000, earlier: 698, later: 1302 });
    for (const end of [pulse.from, pulse.to]) {
      expect(Math.abs(end - 1000)).toBeLessThanOrEqual(300);
      expect(Math.abs(end - 1000)).toBeGreaterThan(294);
    }
  });

  it('has light down to what cannot be told from the base, by its noise and its doubt', () => {
    const [lead, decay, noise] = [50, 1000, 0.004];
    const tail = (i: number): number => Math.exp((lead - i) / decay);
    // noise that changes its sign at every second sample, and one sample so far below the base that the pulse is 5/8 of the range
    const pulse = pulseIn(
      list(20_000, (i) => (i === 19_990 ? -0.6 : (i < lead ? 0 : tail(i)) + ((i + 1) & 2 ? -noise : noise))),
    );
    expectNear(pulse.noise, noise, 0.01);
    expectNear(pulse.top.height, 5 / 8, 0.01);
    // stretches are a quarter as long as it takes to fall to 0.02
    const length = (decay * Math.log(50)) / 4;
    const meanFrom = (i: number): number => (tail(i) * (1 - Math.exp(-length / decay)) * decay) / length;
    // the base is told by the samples before and by what comes after three times the noise and three decay times more
    const after = 20_000 - lead - decay * (3 - Math.log(3 * noise));
    const doubt = 3 * (noise / Math.sqrt(length) + noise / Math.sqrt(lead + after));
    expect(meanFrom(pulse.to)).toBeLessThan(doubt);
    expect(meanFrom(pulse.to - length)).toBeGreaterThan(doubt);
  });

  it('is brightest above a base that drifts, not in the recording', () => {
    // from sample 300 to 310 the base rises by 0.001, and the light above it falls by half of that
    const drifting = list(1001, (i) => 0.0001 * i + (i < 300 || i > 310 ? 0 : 0.9 - 0.00005 * (i - 300)));
    expect(drifting.indexOf(Math.max(...drifting))).toBe(310);
    const pulse = pulseIn(drifting);
    expect(pulse.peak).toBe(300);
    expect(pulse.base.slope).not.toBe(0);
    expect(lightAt(pulse.signal, 300)).toBeCloseTo(1, 9);
    expect(Math.abs(lightAt(pulse.signal, 900))).toBeLessThan(1e-9);
  });
});

describe('the noise of a pulse', () => {
  /** Dark for 600 samples, then lit evenly after one that is brighter. Noise changes its sign at each sample. */
  const withNoise = (count: number, dark: number, lit: number) =>
    list(count, (i) => {
      const noise = i % 2 === 0 ? 1 : -1;
      return i < 600 ? dark * noise : i === 600 ? 1 : 0.8 + lit * noise;
    });
  /** Noise as it is told from a sample that lies twice its deviation off its neighbours. */
  const byBends = (deviation: number): number => (2 * deviation) / (0.6745 * Math.sqrt(1.5));
  const noiseIn = (values: Float64Array): number => {
    const { noise, top } = pulseIn(values, 0);
    return noise * top.height * (Math.max(...values) - Math.min(...values));
  };

  it('is that on the flash where a recorder hides what lies below 0, and 500 samples show it', () => {
    expectNear(noiseIn(withNoise(1100, 0, 0.02)), byBends(0.02), 1e-9);
    expectNear(noiseIn(withNoise(3000, 0, 0.02)), byBends(0.02), 1e-9);
    expect(noiseIn(withNoise(1099, 0, 0.02))).toBe(0);
    // blank rows after the recording are no samples
    expect(noiseIn(Float64Array.of(...withNoise(1099, 0, 0.02), ...Array<number>(300).fill(0)))).toBe(0);
  });

  it('is that in the dark unless that on the flash is half as much again', () => {
    const noisier = (times: number): number => noiseIn(withNoise(1500, 0.01, (times * 0.01) / byBends(1)));
    expectNear(noisier(0), 0.01, 0.001);
    expectNear(noisier(1.45), 0.01, 0.001);
    expectNear(noisier(1.55), 0.0155, 0.001);
  });

  it('is told in heights, and with the number of samples tells what noise alone does not reach', () => {
    const { noise, foot, top } = pulseIn(
      list(1500, (i) => (i === 1400 ? -0.25 : i < 600 ? (i % 2 === 0 ? 0.02 : -0.02) : 1)),
      0,
    );
    expectNear(top.height, 0.8, 1e-9);
    expectNear(noise, 0.02, 0.001);
    expectNear(foot.low, 3 * noise);
    expectNear(foot.high, (Math.sqrt(2 * Math.log(1500)) + 1) * noise);
  });
});

describe('a recording without a pulse', () => {
  const refused = (values: ArrayLike<number>, base?: number) => refusal(readPulse([1], values, base));
  const NO_RISE = 'The trace never rises above its base: is the flash in the recording?';

  it('is one that is flat, or of values too near each other for their range to be divided by', () => {
    expect(refused([3, 3, 3, 3])).toMatchObject({ fail: 'no-answer', message: NO_RISE });
    expect(refused([0, 0, 1e-310, 0, 1e-311])).toMatchObject({ fail: 'no-answer', message: NO_RISE });
  });

  it('is one of noise alone', () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const next = noiseFrom(seed);
      for (const base of [undefined, 0])
        expect(refused(list(5000, next), base)).toMatchObject({ fail: 'no-answer', message: NO_RISE });
    }
  });

  it('is one whose rise is not half as much again as what noise reaches in so many samples', () => {
    // √(2·ln 5000) is 4.1, and half as much again 6.2
    const rising = (height: number) =>
      list(5000, (i) => (i >= 2000 && i < 3500 ? height : i % 2 === 0 ? 1 : -1));
    expect(refused(rising(5), 0)).toMatchObject({ fail: 'no-answer', message: NO_RISE });
    expectNear(pulseIn(rising(9), 0).noise, 1 / 9, 0.01);
  });

  it('is one that cannot be read', () => {
    expect(refused([])).toMatchObject({
      fail: 'unreadable',
      message: 'values is blank: give the recorded values.',
    });
  });
});
