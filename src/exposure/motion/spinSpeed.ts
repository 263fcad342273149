import { answer, type Result } from '../core/result';

/**
 * Speed of the rim of something that turns: π·d·rpm/60.
 *
 * @param diameter - metres across (above 0).
 * @param rpm - turns a minute (above 0).
 * @returns m/s.
 */
export function spinSpeed(diameter: number, rpm: number): Result<number> {
  return answer((Math.PI * diameter * rpm) / 60);
}
