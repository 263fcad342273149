import { describe, expect, it } from 'vitest';
import type { Base } from '../../../src/exposure/trace/base';
import type { Pulse } from '../../../src/exposure/trace/pulse';
import { baseWithRest } from '../../../src/exposure/trace/baseWithRest';
import { expectNear } from '../support';
import { DARK, pulseOf, signalFrom, signalOf } from './signals';

const NOISE = 0.01;
/** Forty samples tell the base to a 6.3rd of the noise. */
const BASE: Base = { ...DARK, error: NOISE / Math.sqrt(40), noise: NOISE };

/** A flash at 1 s that falls to 1/e in 1 s, above what the recording rests at; a thousand samples a second up to 21 s. */
const flash = (rest: number, told: Partial<Pulse> = {}): Pulse =>
  pulseOf(
    signalFrom((t) => rest + (t < 1 ? 0 : Math.exp(1 - t)), { to: 21, count: 21_001 }),
    { base: BASE, noise: NOISE, from: 1000, instant: true, ...told },
  );

describe('a base with what the recording rests at after the flash', () => {
  it('is the mean of both, each with its samples, where they agree within chance', () => {
    // Three times the noise is passed at 1 + ln(1 / 0.03) s, and the rest is counted from 2 s later: 14.5 s of samples.
    const count = 1000 * (21 - 3 - Math.log(1 / 0.03));
    const { level, error } = baseWithRest(flash(0.002));
    expectNear(level, (0.002 * count) / (count + 40), 0.03);
    expectNear(error, NOISE / Math.sqrt(count + 40), 0.02);
    expectNear(baseWithRest(flash(-0.002)).level, -level, 0.05);
  });

  it('takes the tail off first, which an exponential carries on', () => {
    // The light left at 6.5 s of a recording that ends at 9: the mean of e^(1 − t) from there is 0.0015.
    const short = pulseOf(
      signalFrom((t) => (t < 1 ? 0 : Math.exp(1 - t)), { to: 9, count: 9001 }),
      { base: BASE, noise: NOISE, from: 1000, instant: true },
    );
    expect(Math.abs(baseWithRest(short).level)).toBeLessThan(1e-4);
  });

  it('stands as it is where the recording rests elsewhere, beyond chance', () => {
    // Three times a 6.3rd of the noise, and next to nothing for 14,500 samples.
    expect(baseWithRest(flash(0.0046)).level).toBeGreaterThan(0.004);
    expect(baseWithRest(flash(0.0049))).toBe(BASE);
    expect(baseWithRest(flash(-0.0049))).toBe(BASE);
  });

  it('stands where it is given, unsure or drifts, where another flash follows, or nothing after the tail is recorded', () => {
    for (const base of [
      { ...BASE, error: 0 },
      { ...BASE, sure: false },
      { ...BASE, slope: 1e-6 },
    ])
      expect(baseWithRest(flash(0.002, { base }))).toBe(base);
    expect(baseWithRest(flash(0.002, { later: 20_000 }))).toBe(BASE);
    expect(baseWithRest(flash(0.002, { noise: 0 }))).toBe(BASE);
    const cut = pulseOf(
      signalFrom((t) => (t < 1 ? 0 : Math.exp(1 - t)), { to: 6, count: 6001 }),
      { base: BASE, noise: NOISE, from: 1000, instant: true },
    );
    expect(baseWithRest(cut)).toBe(BASE);
  });

  it('needs two samples after the tail, and takes them as they are where they have one time', () => {
    // Two decay times after the light falls through three times the noise some 6.5 s are over: then so many samples of 0.004.
    const ends = (...last: readonly number[]): Base => {
      const times = [...Array.from({ length: 6400 }, (_, i) => i / 1000), ...last];
      const values = times.map((t, i) => (i < 6400 ? (t < 1 ? 0 : Math.exp(1 - t)) : 0.004));
      const signal = signalOf(values, { times });
      return baseWithRest(pulseOf(signal, { base: BASE, noise: NOISE, from: 1000, instant: true }));
    };
    expect(ends(7)).toBe(BASE);
    // beside the forty of 0 that the base has
    expectNear(ends(7, 7).level, (2 * 0.004) / 42, 1e-9);
    expectNear(ends(7, 7, 7).level, (3 * 0.004) / 43, 1e-9);
    // from 7 s to 8 s an exponential has e^(−6) − e^(−7) left
    expectNear(ends(7, 8).level, (2 * (0.004 - Math.exp(-6) + Math.exp(-7))) / 42, 0.15);
  });

  it('is in the unit of the recording, of which the flash is a part', () => {
    const base = { ...BASE, error: 4 * BASE.error };
    const half = flash(0.002, {
      base,
      top: { height: 4, doubt: 0, at: 1000, from: 1000, to: 1000, falls: 0 },
    });
    expectNear(baseWithRest(half).level, 4 * baseWithRest(flash(0.002)).level);
  });
});
