import { SLACK } from '../core/numbers';
import type { Result } from '../core/result';
import { lightMinus } from './lightMinus';

/** The tenth of a stop that a meter shows. */
export const METER_STEP = 0.1;

/**
 * Least, likely and most of what is left once a part of the light is taken away, as a meter leaves it open.
 *
 * A meter that shows steps rounds each reading by up to half a step either way: the most is √(T²·2^(step/2) −
 * P²·2^(−step/2)), the least the other way round, the likely √(T² − P²). Where two readings lie near each other, hardly
 * anything is known of their difference.
 *
 * @param total - f-number of all the light (above 0).
 * @param part - f-number of the part alone (above 0).
 * @param step - stops between two readings that the meter can show (from 0).
 * @returns three f-numbers, 0 for no light; for the most a `no-answer` refusal where even that is none.
 */
export function lightMinusRange(
  total: number,
  part: number,
  step = METER_STEP,
): readonly [least: Result<number>, likely: Result<number>, most: Result<number>] {
  const off = 2 ** (step / 4);
  return [leftOrNone(total / off, part * off), leftOrNone(total, part), lightMinus(total * off, part / off)];
}

/** What is left, 0 where nothing is. */
function leftOrNone(total: number, part: number): Result<number> {
  return part >= total * (1 - SLACK) ? 0 : lightMinus(total, part);
}
