import { log2Ratio, SLACK, spokenStops } from '../core/numbers';
import { answer, fail, type Result } from '../core/result';

/**
 * The reading that is left once a part of the light is taken away: the ambient, or one head.
 *
 * √(total² − part²), taken as √((total − part)(total + part)), which keeps its digits where the two are close.
 *
 * @param total - f-number of all the light (above 0).
 * @param part - f-number of the part alone (above 0).
 * @returns f-number; a `no-answer` refusal where the part is as much as the total, or more.
 */
export function lightMinus(total: number, part: number): Result<number> {
  if (part >= total * (1 - SLACK)) {
    const over = spokenStops(2 * log2Ratio(part, total));
    const by = part > total * (1 + SLACK) ? `${over} more than` : 'as much as';
    return fail(
      'no-answer',
      `part is ${by} the total: nothing is left. Meter both again, at one film speed.`,
    );
  }
  return answer(Math.sqrt(total - part) * Math.sqrt(total + part));
}
