import type { Range } from '../core/range';
import { answer, type Result } from '../core/result';

/** Assumptions, from memory: a charger without power-factor correction. The maker's plate tells the truth. */
export const EFFICIENCY = 0.75;
export const POWER_FACTOR = 0.65;
/** A halogen lamp is a resistor. */
export const LAMP_POWER_FACTOR = 1;
export const SHARE_OF_ONE: Range = { above: 0, most: 1 };

/**
 * Average current that a head draws while it recycles: E/(recycle·efficiency·V·power factor) + modelling/(V·its power factor).
 *
 * The two are added as numbers, though they may be out of phase: an upper bound.
 *
 * @param energy - Ws of a flash, at the setting that is used; 0 for the lamp alone.
 * @param recycle - seconds at that setting (above 0; any where there is no energy).
 * @param volts - V (above 0).
 * @param modelling - W of the modelling lamp (from 0).
 * @param efficiency - of charging (above 0, up to 1).
 * @param powerFactor - of the charger (above 0, up to 1).
 * @param lampPowerFactor - of the modelling lamp (above 0, up to 1).
 * @returns A, averaged over the recycling; the inrush is higher.
 */
export function mainsCurrent(
  energy: number,
  recycle: number,
  volts: number,
  modelling = 0,
  efficiency = EFFICIENCY,
  powerFactor = POWER_FACTOR,
  lampPowerFactor = LAMP_POWER_FACTOR,
): Result<number> {
  const lamp = modelling / (volts * lampPowerFactor);
  return energy === 0 ? answer(lamp) : answer(energy / (recycle * efficiency * volts * powerFactor) + lamp);
}
