import type { Result } from '../core/result';

/**
 * Each light's share of the whole exposure, from readings taken one light at a time: N²/ΣN².
 *
 * @param readings - exact f-numbers at one film speed (each above 0, at least one).
 * @returns shares in the order of the readings; they add up to 1. f/16, f/11, f/8: 4/7, 2/7, 1/7.
 */
export function lightShare(readings: readonly number[]): Result<readonly number[]> {
  const largest = readings.reduce((a, b) => Math.max(a, b), 0);
  const light = readings.map((n) => (n / largest) ** 2);
  const all = light.reduce((a, b) => a + b, 0);
  return light.map((l) => l / all);
}
