import { random } from '../exposure/random';

/** Normal values from one seed, mean 0 and deviation 1 (Box and Muller, 1958). */
export function normal(seed: number): () => number {
  const next = random(seed);
  return () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, each) => sum + each / values.length, 0);
export const range = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

const STEP = 0.01;
const density = (z: number): number => Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
/** The share of normal values below −9, −9 + STEP … 40, by Simpson's rule over each step. */
const SHARES = ((): number[] => {
  const shares = [0];
  for (let i = 0; i < 49 / STEP; i++) {
    const z = -9 + i * STEP;
    const slice = (STEP / 6) * (density(z) + 4 * density(z + STEP / 2) + density(z + STEP));
    shares.push((shares[i] as number) + slice);
  }
  return shares;
})();
function share(z: number): number {
  const at = (Math.min(z, 39) + 9) / STEP;
  const i = Math.floor(at);
  return (SHARES[i] as number) + (at - i) * ((SHARES[i + 1] as number) - (SHARES[i] as number));
}

/** How probable it is that so many normal values of deviation 1 lie within a range of each other: k ∫ φ(z) (Φ(z + q) − Φ(z))^(k − 1) dz. */
export function withinRange(places: number, q: number): number {
  let sum = 0;
  for (let z = -9; z < 9; z += STEP) sum += density(z) * (share(z + q) - share(z)) ** (places - 1);
  return places * STEP * sum;
}

/**
 * The same where the deviation is known from so many degrees of freedom alone, and the range is a multiple of that: the
 * mean over s, whose density goes with s^(ν − 1) exp(−ν s²/2).
 */
export function withinRangeOf(places: number, q: number, freedom: number): number {
  let [sum, weights] = [0, 0];
  for (let s = 0.01; s < 5; s += 0.02) {
    const weight = Math.exp((freedom - 1) * Math.log(s) - (freedom * s * s) / 2);
    if (weight < 1e-12 * weights) continue;
    sum += weight * withinRange(places, q * s);
    weights += weight;
  }
  return sum / weights;
}
