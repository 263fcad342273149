import { isFail, type Result } from '../core/result';
import { fallOff, onAxis } from './fallOff';
import { settle } from './nearestSetting';

/**
 * Energy that gives the same reading, plus some stops, with the light at another distance: P·2^(fall-off + stops).
 *
 * @param power - energy now, in Ws (above 0).
 * @param distance - metres now (above 0).
 * @param newDistance - metres then (above 0).
 * @param stops - stops more (or, negative, less) than now.
 * @param step - stops between two settings of the head; not rounded where none is given.
 * @param least - least energy of the head, in Ws.
 * @param most - most energy of the head, in Ws.
 * @param width - size of the light in metres, as in `fallOff`.
 * @param height - its other side in metres.
 * @returns Ws; a `no-answer` refusal beyond the head's range.
 */
export function powerForDistance(
  power: number,
  distance: number,
  newDistance: number,
  stops = 0,
  step?: number,
  least?: number,
  most?: number,
  width?: number,
  height?: number,
): Result<number> {
  const lost = fallOff(distance, newDistance, width, height);
  if (isFail(lost)) return lost;
  const there =
    width === undefined
      ? (((power * newDistance) / distance) * newDistance) / distance
      : power * (onAxis(distance, width, height) / onAxis(newDistance, width, height));
  return settle(there * 2 ** stops, power, { step, least, most });
}

/**
 * Energy that brings a reading to a target: P·(target/reading)²·2^loss/pops.
 *
 * @param power - energy at which the reading was taken, in Ws (above 0).
 * @param reading - f-number read (above 0).
 * @param target - f-number wanted (above 0).
 * @param step - stops between two settings of the head; not rounded where none is given.
 * @param least - least energy of the head, in Ws.
 * @param most - most energy of the head, in Ws.
 * @param loss - stops lost between meter and film.
 * @param pops - equal pops that build the target together (a whole number from 1 up): the energy is that of each.
 * @returns Ws; a `no-answer` refusal beyond the head's range.
 */
export function powerForReading(
  power: number,
  reading: number,
  target: number,
  step?: number,
  least?: number,
  most?: number,
  loss = 0,
  pops = 1,
): Result<number> {
  return settle((power * (target / reading) ** 2 * 2 ** loss) / pops, power, { step, least, most });
}
