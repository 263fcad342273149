import type { Range } from '../core/range';
import { answer, type Result } from '../core/result';

/** Assumptions, from memory: a charger without power-factor correction. The maker's plate tells the truth. */
export const EFFICIENCY = 0.75;
export const POWER_FACTOR = 0.65;
export const SHARE_OF_ONE: Range = { above: 0, most: 1 };

/**
 * Average current that a head draws while it recycles: (E/(recycle·efficiency) + modelling)/(V·power factor).
 *
 * @param energy - Ws of a flash (above 0).
 * @param recycle - seconds (above 0).
 * @param volts - V (above 0).
 * @param modelling - W of the modelling lamp (from 0).
 * @param efficiency - of charging (above 0, up to 1).
 * @param powerFactor - of the supply (above 0, up to 1).
 * @returns A, averaged over the recycling; the inrush is higher.
 */
export function mainsCurrent(
  energy: number,
  recycle: number,
  volts: number,
  modelling = 0,
  efficiency = EFFICIENCY,
  powerFactor = POWER_FACTOR,
): Result<number> {
  return answer((energy / (recycle * efficiency) + modelling) / (volts * powerFactor));
}
