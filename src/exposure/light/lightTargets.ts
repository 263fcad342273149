import { fail, type Result } from '../core/result';

/**
 * What each light must read alone so that all together read the total: T·√(2^sᵢ/Σ2^sⱼ).
 *
 * @param total - f-number wanted of all together (above 0).
 * @param stopsFromKey - stops of each light from the key light (0 the key itself, −1 one stop less).
 * @returns f-numbers in the order of the stops.
 */
export function lightTargets(total: number, stopsFromKey: readonly number[]): Result<readonly number[]> {
  const strongest = stopsFromKey.reduce((a, b) => Math.max(a, b), -Infinity);
  const light = stopsFromKey.map((s) => 2 ** (s - strongest));
  const all = light.reduce((a, b) => a + b, 0);
  const targets = light.map((l) => total * Math.sqrt(l / all));
  if (targets.some((t) => t === 0))
    return fail('domain', 'stopsFromKey lie too far apart: the weakest light would be nothing.');
  return targets;
}
