import { SLACK, spoken } from '../core/numbers';
import { answer, fail, isFail, type Result } from '../core/result';

const MIRED = 1e6;

/**
 * Mired shift from one colour temperature to another: 10⁶/to − 10⁶/from.
 *
 * @param from - K (above 0).
 * @param to - K (above 0); a lower one gives a positive, warming shift.
 * @returns mired.
 */
export function miredShift(from: number, to: number): Result<number> {
  return answer(((MIRED / from) * (from - to)) / to);
}

/**
 * Colour temperature after a mired shift: 10⁶/(10⁶/T + shift), the inverse of `miredShift`.
 *
 * @param kelvin - K (above 0).
 * @param mireds - shift of the gel, positive for a warming one.
 * @returns K; a `domain` refusal where nothing above 0 mired is left.
 */
export function kelvinShift(kelvin: number, mireds: number): Result<number> {
  const whole = answer(MIRED / kelvin);
  if (isFail(whole)) return whole;
  const left = whole + mireds;
  if (left > SLACK * whole) return answer(MIRED / left);
  return fail('domain', `mireds takes away more than there is: ${spoken(whole, 5)} mired to begin with.`);
}
