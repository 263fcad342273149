import { roundStops, SLACK, spoken } from '../core/numbers';
import { answer, fail, type Fail, isFail, type Result } from '../core/result';

/**
 * Stops lost at a magnification: 2·log2(1 + m/p).
 *
 * The bundle that leaves the exit pupil spreads over an image that lies 1 + m/p times as far off as at infinity.
 *
 * @param magnification - image size over object size (0 for a far subject, 1 for life size).
 * @param pupil - pupil magnification, exit over entrance pupil diameter (above 0): 1 for a symmetrical lens.
 * @returns stops; life size costs two.
 */
export function magnificationLoss(magnification: number, pupil = 1): Result<number> {
  return answer(roundStops((2 / Math.LN2) * Math.log1p(magnification / pupil)));
}

/**
 * Stops lost at a bellows draw, through m = draw/focal − 1.
 *
 * @param focal - focal length in mm (above 0).
 * @param draw - rear principal point to sensor in mm (not less than the focal length).
 * @param pupil - pupil magnification (above 0).
 * @returns stops; a draw of twice the focal length costs two.
 */
export function bellowsLoss(focal: number, draw: number, pupil = 1): Result<number> {
  if (draw < focal * (1 - SLACK)) {
    const least = `at least the focal length, ${spoken(focal)} mm`;
    return fail(
      'domain',
      `draw must be ${least}, not ${spoken(draw)} mm: it is measured from the lens to the sensor.`,
    );
  }
  const magnification = answer(Math.max(0, (draw - focal) / focal));
  return isFail(magnification) ? magnification : magnificationLoss(magnification, pupil);
}

/**
 * Loss in stops, with the bellows loss added where focal length and draw are given.
 * One without the other is refused: half a statement must not pass for none.
 */
export function lossWithBellows(loss: number, focal?: number, draw?: number, pupil?: number): number | Fail {
  if (focal === undefined && draw === undefined) return loss;
  if (focal === undefined)
    return fail('unreadable', 'focal is missing: a draw says nothing without the focal length.');
  if (draw === undefined)
    return fail('unreadable', 'draw is missing: give focal length and draw, or neither.');
  const bellows = bellowsLoss(focal, draw, pupil);
  return isFail(bellows) ? bellows : loss + bellows;
}
