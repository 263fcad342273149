import { answer, isFail, type Result } from '../core/result';
import { lossWithBellows } from './bellowsLoss';

/**
 * What the meter must read for a lens setting, so that the light lost on the way is made up: N·2^(loss/2)/√pops.
 *
 * @param aperture - lens setting, exact f-number (above 0).
 * @param loss - stops lost to filters and the like.
 * @param focal - focal length in mm, with `draw` for the bellows loss.
 * @param draw - bellows draw in mm.
 * @param pupil - pupil magnification.
 * @param pops - equal pops that build the exposure (a whole number from 1 up): the answer is what one of them must read.
 * @returns f-number.
 */
export function meterTarget(
  aperture: number,
  loss = 0,
  focal?: number,
  draw?: number,
  pupil?: number,
  pops = 1,
): Result<number> {
  const all = lossWithBellows(loss, focal, draw, pupil);
  return isFail(all) ? all : answer((aperture * 2 ** (all / 2)) / Math.sqrt(pops));
}
