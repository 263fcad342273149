import type { Range } from '../core/range';
import { answer, type Result } from '../core/result';

/** A share of a head's full power. */
export const POWER_SHARE: Range = { above: 0, most: 1, hint: 'Write a half as 1/2, 0.5 or 50%.' };

/**
 * Guide number of a flash from a reading at a distance: N·d·√(quoted/S).
 *
 * @param reading - f-number read at that distance (above 0).
 * @param distance - metres from flash to subject (above 0).
 * @param iso - speed set on the meter (above 0).
 * @param isoQuoted - speed for which the guide number is to be quoted (above 0).
 * @returns guide number in metres.
 */
export function guideNumber(reading: number, distance: number, iso = 100, isoQuoted = 100): Result<number> {
  return answer(reading * distance * Math.sqrt(isoQuoted / iso));
}

/**
 * Reading at a distance from a guide number: (G/d)·√(S/quoted)·√share·2^(−loss/2). The inverse of `guideNumber`.
 *
 * @param guide - guide number in metres (above 0).
 * @param distance - metres from flash to subject (above 0).
 * @param iso - speed to be exposed (above 0).
 * @param isoQuoted - speed for which the guide number is quoted (above 0).
 * @param powerShare - share of full power (above 0, up to 1).
 * @param loss - stops lost on the way.
 * @returns f-number.
 */
export function guideReading(
  guide: number,
  distance: number,
  iso = 100,
  isoQuoted = 100,
  powerShare = 1,
  loss = 0,
): Result<number> {
  return answer((guide / distance) * Math.sqrt(iso / isoQuoted) * Math.sqrt(powerShare) * 2 ** (-loss / 2));
}
