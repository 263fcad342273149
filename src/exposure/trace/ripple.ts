import { at } from '../core/at';
import { NEVER_BY_CHANCE } from './noiseChance';
import type { Pulse } from './pulse';
import { timeAt } from './samples';
import { lightAt } from './signal';
import { ENOUGH } from './meanOverTime';

/** Lamps on the mains flicker twice a period, at 50 or 60 Hz. */
const FLICKER = [100, 120] as const;
/** Two periods at 100 Hz, in seconds: less does not tell a ripple from a drift. */
const SHOWS_RIPPLE = 0.02;
/** A ripple is what makes out more than half of the variance that lies in the dark samples beyond noise without memory. */
const MOST = 0.5;

/** A ripple of the light beside the flash: its frequency, and what it swings by from its middle, in heights. */
export interface Ripple {
  readonly hertz: number;
  readonly swing: number;
}

/** Samples beside the pulse, of which no more are read than tell a ripple. */
function darkSamples({ signal, from, to }: Pulse): readonly number[] {
  const { count } = signal.samples;
  const stride = Math.ceil(count / ENOUGH);
  return Array.from({ length: Math.ceil(count / stride) }, (_, k) => k * stride).filter(
    (i) => i < from || i > to,
  );
}

/** Share of the variance of some numbers that sine and cosine of a frequency explain, and their amplitude. */
function waveIn(
  times: readonly number[],
  lights: readonly number[],
  hertz: number,
): { share: number; swing: number } {
  const turns = times.map((t) => 2 * Math.PI * hertz * t);
  const mean = lights.reduce((sum, x) => sum + x, 0) / lights.length;
  let [ss, sc, cc, sy, cy, yy] = [0, 0, 0, 0, 0, 0];
  const [sines, cosines] = [Math.sin, Math.cos].map((wave) => {
    const all = turns.map(wave);
    const middle = all.reduce((sum, x) => sum + x, 0) / all.length;
    return all.map((x) => x - middle);
  }) as [number[], number[]];
  for (const [i, light] of lights.entries()) {
    const [s, c, y] = [at(sines, i), at(cosines, i), light - mean];
    ss += s * s;
    sc += s * c;
    cc += c * c;
    sy += s * y;
    cy += c * y;
    yy += y * y;
  }
  const det = ss * cc - sc * sc;
  const [a, b] = [(sy * cc - cy * sc) / det, (cy * ss - sy * sc) / det];
  return { share: (a * sy + b * cy) / yy, swing: Math.hypot(a, b) };
}

/**
 * The ripple at 100 or 120 Hz that a recording shows beside the flash; undefined where it lasts less than 20 ms, or what it shows
 * is noise, or something else.
 */
export function rippleIn(pulse: Pulse): Ripple | undefined {
  const { samples } = pulse.signal;
  if (timeAt(samples, samples.count - 1) - timeAt(samples, 0) < SHOWS_RIPPLE) return undefined;
  const dark = darkSamples(pulse);
  const times = dark.map((i) => timeAt(samples, i));
  const length = (times.at(-1) ?? 0) - (times[0] ?? 0);
  if (length < SHOWS_RIPPLE / 2) return undefined;
  const lights = dark.map((i) => lightAt(pulse.signal, i));
  const found = FLICKER.map((hertz) => ({ hertz, ...waveIn(times, lights, hertz) }));
  const best = found.reduce((one, other) => (other.share > one.share ? other : one));
  const chance = NEVER_BY_CHANCE * Math.sqrt(2 / dark.length);
  return best.share > MOST && Math.sqrt(best.share) > chance
    ? { hertz: best.hertz, swing: best.swing }
    : undefined;
}
