import { random } from '../random';
/** Light of a flash over time, and what is known of it exactly. */
export interface Shape {
  readonly name: string;
  /** A time of its own, of which recordings are so many long: the decay time where it has one. */
  readonly decay: number;
  /** Instant before which it is dark (or, for a Gaussian, as good as dark). */
  readonly start: number;
  readonly light: (t: number) => number;
  /** Light up to an instant. */
  readonly sum: (t: number) => number;
  readonly total: number;
  readonly rise: (level: number) => number;
  readonly fall: (level: number) => number;
}

export interface Exact {
  readonly width: number;
  readonly before: number;
  readonly inside: number;
  readonly after: number;
}

export function exactly(shape: Shape, level: number): Exact {
  const before = shape.sum(shape.rise(level)) / shape.total;
  const upTo = shape.sum(shape.fall(level)) / shape.total;
  return { width: shape.fall(level) - shape.rise(level), before, inside: upTo - before, after: 1 - upTo };
}

/** Starts at its peak. */
export const exponential = (tau: number): Shape => ({
  name: 'exponential',
  decay: tau,
  start: 0,
  light: (t) => (t < 0 ? 0 : Math.exp(-t / tau)),
  sum: (t) => (t < 0 ? 0 : -tau * Math.expm1(-t / tau)),
  total: tau,
  rise: () => 0,
  fall: (level) => -tau * Math.log(level),
});

/** Root of a function that changes its sign between two arguments, by bisection down to the last digit. */
function root(f: (t: number) => number, below: number, above: number): number {
  let [a, b] = [below, above];
  for (;;) {
    const middle = (a + b) / 2;
    if (middle <= Math.min(a, b) || middle >= Math.max(a, b)) return middle;
    if (f(middle) < 0) a = middle;
    else b = middle;
  }
}

/** e^(−t/slow) − e^(−t/fast), in heights of its peak. */
export function twoTimes(fast: number, slow: number): Shape {
  const top = (Math.log(slow / fast) * fast * slow) / (slow - fast);
  const plain = (t: number): number => Math.exp(-t / slow) - Math.exp(-t / fast);
  const peak = plain(top);
  return {
    name: `two times ${Math.round(fast * 1e6)}/${Math.round(slow * 1e6)} µs`,
    decay: slow,
    start: 0,
    light: (t) => (t < 0 ? 0 : plain(t) / peak),
    sum: (t) => (t < 0 ? 0 : (fast * Math.expm1(-t / fast) - slow * Math.expm1(-t / slow)) / peak),
    total: (slow - fast) / peak,
    rise: (level) => root((t) => plain(t) - level * peak, 0, top),
    fall: (level) => root((t) => plain(t) - level * peak, 60 * slow, top),
  };
}

/** erf by its series (Abramowitz and Stegun 7.1.6), for the arguments that occur here. */
function erf(x: number): number {
  if (Math.abs(x) > 6) return Math.sign(x);
  let term = x;
  let sum = x;
  for (let n = 1; Math.abs(term) > 1e-18 * Math.abs(sum); n++) {
    term *= (2 * x * x) / (2 * n + 1);
    sum += term;
  }
  return (2 / Math.sqrt(Math.PI)) * Math.exp(-x * x) * sum;
}

export const gaussian = (sigma: number): Shape => ({
  name: 'Gaussian',
  decay: sigma,
  start: -6 * sigma,
  light: (t) => Math.exp(-(t * t) / (2 * sigma * sigma)),
  sum: (t) => sigma * Math.sqrt(Math.PI / 2) * (1 + erf(t / (sigma * Math.SQRT2))),
  total: sigma * Math.sqrt(2 * Math.PI),
  rise: (level) => -sigma * Math.sqrt(-2 * Math.log(level)),
  fall: (level) => sigma * Math.sqrt(-2 * Math.log(level)),
});

export const halfSine = (length: number): Shape => ({
  name: 'half sine',
  decay: length / Math.PI,
  start: 0,
  light: (t) => (t < 0 || t > length ? 0 : Math.sin((Math.PI * t) / length)),
  sum: (t) => (length / Math.PI) * (1 - Math.cos(Math.PI * Math.min(1, Math.max(0, t / length)))),
  total: (2 * length) / Math.PI,
  rise: (level) => (length * Math.asin(level)) / Math.PI,
  fall: (level) => length * (1 - Math.asin(level) / Math.PI),
});

export const trapezoid = (rise: number, flat: number, fall: number): Shape => ({
  name: 'trapezoid',
  decay: (rise + flat + fall) / 3,
  start: 0,
  light: (t) => {
    if (t <= 0 || t >= rise + flat + fall) return 0;
    return t < rise ? t / rise : t <= rise + flat ? 1 : (rise + flat + fall - t) / fall;
  },
  sum: (t) => {
    const up = Math.min(Math.max(t, 0), rise);
    const on = Math.min(Math.max(t - rise, 0), flat);
    const down = Math.min(Math.max(t - rise - flat, 0), fall);
    return (rise > 0 ? (up * up) / (2 * rise) : 0) + on + (fall > 0 ? down - (down * down) / (2 * fall) : 0);
  },
  total: flat + (rise + fall) / 2,
  rise: (level) => level * rise,
  fall: (level) => rise + flat + (1 - level) * fall,
});

/** Gaussian noise with a standard deviation of 1, the same for each seed (Box and Muller 1958). */
export function noiseFrom(seed: number): () => number {
  const next = random(seed);
  return () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}

export interface Recording {
  readonly times: Float64Array;
  readonly values: Float64Array;
}

export interface Setting {
  /** Length from the start of the flash, in decay times. */
  readonly decays: number;
  readonly samples: number;
  /** Part of the recording that lies before the flash. */
  readonly lead?: number;
  /** Standard deviation of the noise, in heights. */
  readonly noise?: number;
  readonly seed?: number;
}

/** A shape as a recorder samples it. */
export function record(shape: Shape, { decays, samples, lead = 0, noise = 0, seed = 1 }: Setting): Recording {
  const length = (decays * shape.decay) / (1 - lead);
  const start = shape.start - lead * length;
  const times = Float64Array.from({ length: samples }, (_, i) => start + (length * i) / (samples - 1));
  const next = noiseFrom(seed);
  return { times, values: times.map((t) => shape.light(t) + (noise > 0 ? noise * next() : 0)) };
}

/** A recording with its values changed: by value, place in the recording from 0 to 1, and index. */
export const changed = (
  { times, values }: Recording,
  change: (value: number, part: number, i: number) => number,
): Recording => ({ times, values: values.map((value, i) => change(value, i / values.length, i)) });
