import { ceilSteady, log2Ratio, roundSteady, SLACK, spoken, spokenStops } from '../core/numbers';
import { answer, answerAboveZero, fail, type Fail, isFail, type Result } from '../core/result';

/** A head's range and the step it is set in. Energies in Ws, the step in stops (each above 0); what is left out does not bind. */
export interface Setting {
  readonly step?: number | undefined;
  readonly least?: number | undefined;
  readonly most?: number | undefined;
}

const beyond = (stops: number, way: 'more' | 'less', end: string): Fail =>
  fail('no-answer', `That takes ${spokenStops(stops)} ${way} than the head gives at ${end}.`);

/** Steps from `most` down to the mark nearest to an energy; a head's marks end at that nearest to its least energy. */
export const stepsDown = (energy: number, most: number, step: number): number =>
  Math.max(0, roundSteady(log2Ratio(most, energy) / step));

/** A refusal where an energy is more than the most. `called` names it. */
export const aboveMost = (called: string, energy: number, most: number): Fail | undefined =>
  energy > most * (1 + SLACK)
    ? fail('domain', `${called} must not be more than most: ${spoken(energy)} is more than ${spoken(most)}.`)
    : undefined;

/**
 * The energy that can be set for an energy wanted.
 *
 * Steps are counted in stops, down from `most`, or from `anchor` where no most is given; the nearest is taken, a tie
 * goes to the higher. Down to round(log2(most/least)/step) steps, as the marks of a head end near its least energy.
 *
 * @param wanted - energy, exact (above 0).
 * @param anchor - energy from which steps are counted where there is no `most`.
 * @returns Ws; a `no-answer` refusal that says by how many stops the energy is out of reach.
 */
export function settle(wanted: number, anchor: number, { step, least, most }: Setting): Result<number> {
  const turned = aboveMost('least', least ?? 0, most ?? Infinity);
  if (turned) return turned;
  const there = answerAboveZero(wanted);
  if (isFail(there)) return there;
  const over = log2Ratio(wanted, most ?? Infinity);
  const under = log2Ratio(least ?? 0, wanted);
  if (step === undefined) {
    if (over > SLACK) return beyond(over, 'more', 'full power');
    if (under > SLACK) return beyond(under, 'less', 'its least power');
    return answer(wanted);
  }
  const top = most ?? anchor;
  const down = roundSteady(log2Ratio(wanted, top) / step);
  if (most !== undefined && down > 0) return beyond(over, 'more', 'full power');
  if (least === undefined) return answer(top * 2 ** (down * step));
  // the marks of a head end near its least energy; without a most they are counted from elsewhere, and end above it
  const lowest =
    most === undefined ? ceilSteady(log2Ratio(least, top) / step) : -stepsDown(least, most, step);
  if (down < lowest && under > SLACK) return beyond(under, 'less', 'its least power');
  return answer(top * 2 ** (Math.max(down, lowest) * step));
}
