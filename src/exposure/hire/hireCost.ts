import { floorSteady } from '../core/numbers';
import type { Range } from '../core/range';
import { answer, type Result } from '../core/result';

/** Days that a hired week costs, by common practice. */
export const WEEK_DAYS = 3;
export const DAYS_A_WEEK: Range = { above: 0, most: 7 };

/**
 * Hire with a capped week: each seven days cost at most `daysPerWeek` day rates.
 *
 * @param dayRate - money a day (from 0).
 * @param days - days of hire (above 0); a part of a day counts as that part.
 * @param daysPerWeek - day rates that a week costs at most (above 0, up to 7).
 * @returns money.
 */
export function hireCost(dayRate: number, days: number, daysPerWeek = WEEK_DAYS): Result<number> {
  const weeks = floorSteady(days / 7);
  const rest = Math.max(0, days - 7 * weeks);
  return answer(dayRate * (weeks * daysPerWeek + Math.min(rest, daysPerWeek)));
}
