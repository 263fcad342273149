import { describe, expect, it } from 'vitest';
import type { Pulse } from '../../../src/exposure/trace/pulse';
import { rippleIn } from '../../../src/exposure/trace/ripple';
import { traceDoubts } from '../../../src/exposure/trace/traceDoubts';
import { expectNear, value } from '../support';
import { noiseFrom } from './shapes';
import { pulseOf, signalFrom } from './signals';

/** A flash of 1 ms at 5 ms that decays in 0.2 ms, beside some other light, from 0 to `to` seconds. */
function beside(light: (t: number) => number, to: number, { noise = 0, count = 8001 } = {}): Pulse {
  const next = noiseFrom(7);
  const flash = (t: number): number => (t < 0.005 || t > 0.006 ? 0 : Math.exp((0.005 - t) / 2e-4));
  const signal = signalFrom((t) => flash(t) + light(t) + noise * next(), { to, count });
  const at = (t: number): number => Math.round((t / to) * (count - 1));
  return pulseOf(signal, { from: at(0.005), to: at(0.006), noise });
}
const wave = (hertz: number, swing: number) => (t: number) => swing * Math.sin(2 * Math.PI * hertz * t + 1);

describe('the ripple beside a flash', () => {
  it('is that of a lamp at 100 or 120 Hz, with what it swings by', () => {
    for (const hertz of [100, 120])
      for (const [to, noise] of [
        [0.02, 0],
        [0.05, 0.01],
        [0.2, 0.01],
      ] as const) {
        const ripple = rippleIn(beside(wave(hertz, 0.03), to, { noise }));
        expect(ripple?.hertz).toBe(hertz);
        expectNear(ripple?.swing as number, 0.03, 0.05);
      }
  });

  it('is read above the light that the lamp gives all the time', () => {
    expectNear(rippleIn(beside((t) => 0.4 + wave(100, 0.05)(t), 0.04))?.swing as number, 0.05, 0.01);
  });

  it('is none in the dark, in noise, a drift, a hum of 50 Hz or a fast ripple', () => {
    const other = [() => 0, (t: number) => 0.05 * t, wave(50, 0.03), wave(1000, 0.03), wave(300, 0.03)];
    for (const light of other)
      for (const noise of [0, 0.01]) expect(rippleIn(beside(light, 0.04, { noise }))).toBeUndefined();
  });

  it('is not looked for where the recording lasts less than 20 ms, or hardly any of it is dark', () => {
    expect(rippleIn(beside(wave(100, 0.03), 0.0199))).toBeUndefined();
    expect(rippleIn(beside(wave(100, 0.03), 0.02))).toBeDefined();
    expect(rippleIn({ ...beside(wave(100, 0.03), 0.02), from: 0, to: 4100 })).toBeUndefined();
    expect(rippleIn({ ...beside(wave(100, 0.03), 0.02), from: 0, to: 8000 })).toBeUndefined();
  });

  it('is found in a long recording, of which it reads a part', () => {
    expect(rippleIn(beside(wave(120, 0.03), 0.5, { count: 300_001 }))?.hertz).toBe(120);
  });

  it('is a doubt from a hundredth of the height on', () => {
    const doubts = (swing: number): readonly string[] => {
      const { samples } = beside(wave(100, swing), 0.05, { noise: 0.002 }).signal;
      return value(traceDoubts(samples.times as Float64Array, samples.values)).map(({ doubt }) => doubt);
    };
    expect(doubts(0.03)).toContain('lamp');
    expect(doubts(0.005)).not.toContain('lamp');
  });
});
