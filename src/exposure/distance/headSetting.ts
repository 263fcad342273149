import { isFail, type Result } from '../core/result';
import { type HeadScale, shownAt, wrongTop } from './headScale';
import { settle } from './nearestSetting';

/**
 * What to set on a head for an energy, as its display shows it: the inverse of `headPower`.
 *
 * The energy goes to the nearest setting, as in `settle`. Whole Ws and per cent, tenths of a stop; a fraction is the nearest
 * at or above with tenths off it. Where so few decimals would mean another setting, the text has more.
 *
 * @param power - energy, in Ws (above 0).
 * @param most - energy at full power, in Ws (above 0).
 * @param top - what it shows at full power, for a head that shows stops.
 * @param step - stops between two settings; not rounded to one where none is given.
 * @param least - least energy of the head, in Ws.
 * @returns `487 Ws`, `7.3`, `1/4 −0.3` or `41 %`; a `no-answer` refusal beyond the head's range.
 */
export function headSetting(
  power: number,
  most: number,
  scale: HeadScale = 'energy',
  top?: number,
  step?: number,
  least?: number,
): Result<string> {
  const wrong = wrongTop(scale, top);
  if (wrong) return wrong;
  const setting = settle(power, most, { step, least, most });
  return isFail(setting) ? setting : shownAt(setting, { most, scale, top, step });
}
