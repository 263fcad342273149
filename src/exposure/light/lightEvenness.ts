import { answer, type Result } from '../core/result';

/** What the values count: f-numbers, lux, or raw values of a linear file. */
export type EvennessScale = 'aperture' | 'lux' | 'raw';
export const EVENNESS_SCALES: readonly EvennessScale[] = ['aperture', 'lux', 'raw'];

/**
 * Unevenness of the light over a flat original, in percent: 100·(max − min)/max of the light.
 *
 * @param values - readings over the field (each above 0, at least one): f-numbers, whose squares are the light, or lux
 *   or linear raw values.
 * @returns percent, 0 for perfectly even light.
 */
export function lightEvenness(values: readonly number[], scale: EvennessScale = 'aperture'): Result<number> {
  const least = values.reduce((a, b) => Math.min(a, b), Infinity);
  const most = values.reduce((a, b) => Math.max(a, b), 0);
  const lost = (most - least) / most;
  return answer(100 * lost * (scale === 'aperture' ? 1 + least / most : 1));
}
