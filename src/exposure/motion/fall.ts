import { answer, type Result } from '../core/result';

/** Standard acceleration of free fall, m/s² (3rd General Conference on Weights and Measures, 1901). */
export const G = 9.80665;

/**
 * Speed after a free fall: √(v² + 2·g·h). Air is left out.
 *
 * @param drop - height fallen through, in metres (above 0).
 * @param startSpeed - speed downwards at the start, in m/s (from 0).
 * @returns m/s.
 */
export function fallSpeed(drop: number, startSpeed = 0): Result<number> {
  return answer(Math.hypot(startSpeed, Math.sqrt(2 * G * drop)));
}

/**
 * Time of a free fall, the delay to set on a trigger: (√(v² + 2gh) − v)/g, taken as 2h/(√(v² + 2gh) + v), which keeps
 * its digits where the start is fast.
 *
 * @param drop - height fallen through, in metres (above 0).
 * @param startSpeed - speed downwards at the start, in m/s (from 0).
 * @returns seconds.
 */
export function fallTime(drop: number, startSpeed = 0): Result<number> {
  return answer((2 * drop) / (Math.hypot(startSpeed, Math.sqrt(2 * G * drop)) + startSpeed));
}
