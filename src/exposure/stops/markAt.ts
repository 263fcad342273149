import { SLACK } from '../core/numbers';
import { isFail } from '../core/result';
import { exactHalfMark, exactMark, type MarkedScale, nearestMark } from './marks';
import { stopsPerDoubling } from './scales';
import { type MarkName, tenthsOf } from './stopText';

const isNear = (exact: number | undefined, value: number): boolean =>
  Math.abs((exact ?? NaN) - value) <= SLACK * value;

/**
 * The mark whose exact value this is, one of the third-stop series before one of the half-stop series; or the full stop that it
 * lies 1 to 9 tenths above. Undefined where it is neither.
 *
 * @param value - exact f-number, time in seconds or ISO speed.
 */
export function markAt(scale: MarkedScale, value: number): MarkName | undefined {
  const third = nearestMark(scale, value, 'third');
  if (!isFail(third) && isNear(exactMark(scale, third.marked), value))
    return { scale, figure: third.marked, tenths: 0 };
  const half = nearestMark(scale, value, 'half');
  if (!isFail(half) && isNear(exactHalfMark(scale, half.marked), value))
    return { scale, figure: half.marked, tenths: 0 };
  const name = tenthsOf(value, scale);
  if (isFail(name)) return undefined;
  const full = exactMark(scale, name.figure) ?? NaN;
  return isNear(full * 2 ** (name.tenths / 10 / stopsPerDoubling(scale)), value) ? name : undefined;
}
