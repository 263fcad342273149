import { ceilSteady, log2Ratio, roundStops } from '../core/numbers';
import { answer, fail, isFail, type Result } from '../core/result';
import { lossWithBellows } from '../loss/bellowsLoss';

/** Half of the tenth that a meter shows: a miss of less cannot be read. */
export const TOLERANCE = 0.05;

/** Stops that all pops together must bring: from one pop's reading to the target, and what is lost on the way. */
function stopsNeeded(
  reading: number,
  target: number,
  loss: number,
  focal?: number,
  draw?: number,
  pupil?: number,
): Result<number> {
  const lost = lossWithBellows(loss, focal, draw, pupil);
  return isFail(lost) ? lost : roundStops(2 * log2Ratio(target, reading) + lost);
}

/**
 * Fewest equal pops that reach an aperture: the smallest whole n with log2 n ≥ stops needed − tolerance.
 *
 * Light from repeated pops adds, so each doubling of the pops adds one stop.
 *
 * @param reading - f-number of one pop (above 0).
 * @param target - f-number wanted on the lens (above 0).
 * @param loss - stops lost to filters and the like.
 * @param focal - focal length in mm, with `draw` for the bellows loss.
 * @param draw - bellows draw in mm.
 * @param pupil - pupil magnification.
 * @param tolerance - stops that may be missing (from 0).
 * @returns whole pops, at least 1.
 */
export function popsForTarget(
  reading: number,
  target: number,
  loss = 0,
  focal?: number,
  draw?: number,
  pupil?: number,
  tolerance = TOLERANCE,
): Result<number> {
  const stops = stopsNeeded(reading, target, loss, focal, draw, pupil);
  if (isFail(stops)) return stops;
  if (stops - tolerance > 50)
    return fail('no-answer', `That is ${Math.round(stops)} stops away: no number of pops gets there.`);
  return answer(Math.max(1, ceilSteady(2 ** (stops - tolerance))));
}

/**
 * Reading at the film after n equal pops: N·√n·2^(−loss/2).
 *
 * @param reading - f-number of one pop (above 0).
 * @param pops - whole pops (from 1 up).
 * @returns f-number.
 */
export function popsReading(
  reading: number,
  pops: number,
  loss = 0,
  focal?: number,
  draw?: number,
  pupil?: number,
): Result<number> {
  const lost = lossWithBellows(loss, focal, draw, pupil);
  return isFail(lost) ? lost : answer(reading * Math.sqrt(pops) * 2 ** (-lost / 2));
}

/**
 * Stops by which n pops miss a target: over (+) or under (−).
 *
 * @param reading - f-number of one pop (above 0).
 * @param target - f-number wanted on the lens (above 0).
 * @param pops - whole pops (from 1 up).
 * @returns log2 n − stops needed.
 */
export function popsMiss(
  reading: number,
  target: number,
  pops: number,
  loss = 0,
  focal?: number,
  draw?: number,
  pupil?: number,
): Result<number> {
  const stops = stopsNeeded(reading, target, loss, focal, draw, pupil);
  return isFail(stops) ? stops : answer(roundStops(Math.log2(pops) - stops));
}
