import { log2Ratio, SLACK, spokenStops } from '../core/numbers';
import { ABOVE_ZERO, ANY, outside } from '../core/range';
import { answer, answerAboveZero, fail, isFail, type Result } from '../core/result';
import { energyShown, type HeadScale, settingMeant, wrongTop } from './headScale';

/**
 * Energy of what a head shows.
 *
 * Energy: as shown. Stops: most·2^(shown − top). Fraction and per cent of full power: most·shown. Displays round: where a
 * setting most·2^(−k·step), k = 0, 1, 2 …, lies within 0.05 stop of that, the nearest such is what the head flashes at.
 *
 * @param setting - what the head shows: Ws, stops, or the share of full power (above 0, stops any).
 * @param most - energy at full power, in Ws (above 0).
 * @param top - what it shows at full power, for a head that shows stops.
 * @param step - stops between two settings; taken as shown where none is given.
 * @returns Ws; a `no-answer` refusal above full power, which says by how many stops.
 */
export function headPower(
  setting: number,
  most: number,
  scale: HeadScale = 'energy',
  top?: number,
  step?: number,
): Result<number> {
  const wrong = wrongTop(scale, top) ?? outside('setting', setting, scale === 'stops' ? ANY : ABOVE_ZERO);
  if (wrong) return wrong;
  const head = { most, scale, top, step };
  const shown = answerAboveZero(energyShown(setting, head));
  if (isFail(shown)) return shown;
  const energy = settingMeant(shown, head);
  const over = log2Ratio(energy, most);
  if (over <= SLACK) return answer(energy);
  return fail(
    'no-answer',
    `setting is ${spokenStops(over)} above full power: is it of another head or scale?`,
  );
}
