import { isFail, type Result } from '../core/result';
import { type Direction, type Division, type MarkedScale, nearestMark } from './marks';

/**
 * The mark nearest to a value, as it is marked on a ring or a display; or the next one up or down.
 *
 * Nearest in stops, not in number: 11.99 lies nearer to f/13 (12.70) than to f/11 (11.31). A tie goes to the higher. Up is to
 * the larger number behind a mark: more seconds, a higher ISO speed. A value within 1e-9 of a mark stays.
 *
 * @param value - exact f-number, time in seconds or ISO speed (above 0).
 * @returns the marked figure (13, 0.008, 125); a `no-answer` refusal beyond the series.
 */
export function stopMark(
  value: number,
  scale: MarkedScale = 'aperture',
  division: Division = 'third',
  direction: Direction = 'nearest',
): Result<number> {
  const mark = nearestMark(scale, value, division, direction);
  return isFail(mark) ? mark : mark.marked;
}
