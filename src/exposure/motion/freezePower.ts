import { at } from '../core/at';
import { ceilSteady, log2Ratio, SLACK, spoken, spokenStops } from '../core/numbers';
import { answer, fail, isFail, type Result } from '../core/result';
import { flashLevel } from '../duration/flashLevel';
import { durationTable, type TableRow } from './durationTable';
import { FREEZE_LEVEL } from './freeze';

/** Energies from one to another in Ws, all of which are short enough. */
interface Stretch {
  readonly low: number;
  readonly high: number;
}

/** The part between two rows of a table that keeps a limit; one end of it, as times there only rise or only fall. */
function shortPart(below: TableRow, above: TableRow, limit: number): Stretch | undefined {
  const [low, high] = [below, above].map(({ time }) => time <= limit * (1 + SLACK)) as [boolean, boolean];
  if (low && high) return { low: below.power, high: above.power };
  if (!low && !high) return undefined;
  const part = Math.log(limit / below.time) / Math.log(above.time / below.time);
  const edge = below.power * (above.power / below.power) ** Math.min(1, Math.max(0, part));
  return low ? { low: below.power, high: edge } : { low: edge, high: above.power };
}

/** Where a head is short enough, the highest energies first; parts that meet are one stretch. */
function shortStretches(rows: readonly TableRow[], limit: number): readonly Stretch[] {
  const found: Stretch[] = [];
  for (const [i, row] of rows.entries()) {
    // the last row is a stretch of its own, which meets that above it
    const part = shortPart(rows[i + 1] ?? row, row, limit);
    const last = found[found.length - 1];
    if (part && last?.low === part.high) found[found.length - 1] = { low: part.low, high: last.high };
    else if (part) found.push(part);
  }
  return found;
}

/** The highest energy of a stretch that can be set, counting steps down from the most; undefined where none lies in it. */
function settingIn({ low, high }: Stretch, most: number, step: number): number | undefined {
  const setting = most * 2 ** (-Math.max(0, ceilSteady(log2Ratio(most, high) / step)) * step);
  return setting >= low * (1 - SLACK) ? setting : undefined;
}

/** The highest energy of a stretch, where no more than `most` can be set. */
const upTo = ({ low, high }: Stretch, most: number): number | undefined =>
  low <= most * (1 + SLACK) ? Math.min(high, most) : undefined;

/**
 * Most energy at which a head is short enough, from its table of energies and durations.
 *
 * Between two rows the logarithms are interpolated, as durations go with a power of the energy. Some heads get shorter as
 * they are turned down, others longer: the highest energy anywhere in the table that keeps the limit is taken. With a step
 * it is the highest setting most·2^(−k·step) inside the table at which the head keeps the limit: on a head that flashes
 * longer when it is turned down, an answer rounded down would not. Nothing is guessed beyond the table.
 *
 * @param powers - energies in Ws (each above 0, no two alike), in any order.
 * @param durations - duration in seconds at each of them (each above 0), at `level`.
 * @param limit - longest duration allowed, in seconds at `limitLevel` (above 0).
 * @param level - level of the durations in the table; the limit is turned into it for an exponential decay.
 * @param limitLevel - level of the limit.
 * @param step - stops between two settings (above 0); not rounded to one where none is given.
 * @param most - energy at full power, in Ws (above 0); the highest of the table where none is given.
 * @returns Ws; a `no-answer` refusal where no row, or no setting, is short enough.
 */
export function freezePower(
  powers: readonly number[],
  durations: readonly number[],
  limit: number,
  level = FREEZE_LEVEL,
  limitLevel = FREEZE_LEVEL,
  step?: number,
  most?: number,
): Result<number> {
  const rows = durationTable(powers, durations);
  if (isFail(rows)) return rows;
  const longest = flashLevel(limit, limitLevel, level);
  if (isFail(longest)) return longest;
  const stretches = shortStretches(rows, longest);
  if (stretches.length === 0) return noneShort(rows, longest);
  const full = most ?? at(rows, 0).power;
  const best = stretches
    .map((stretch) => (step === undefined ? upTo(stretch, full) : settingIn(stretch, full, step)))
    .find((power) => power !== undefined);
  return best === undefined ? noSetting(at(stretches, 0), full, step) : answer(best);
}

function noneShort(rows: readonly TableRow[], longest: number): Result<number> {
  const shortest = rows.reduce((least, row) => Math.min(least, row.time), Infinity);
  const times = answer(shortest / longest);
  if (isFail(times)) return times;
  return fail('no-answer', `The shortest flash in the table lasts ${spoken(times, 3)} times the limit.`);
}

function noSetting({ low, high }: Stretch, full: number, step: number | undefined): Result<number> {
  const where = low === high ? `at ${spoken(low)}` : `from ${spoken(low)} to ${spoken(high)}`;
  const short = `The head is short enough ${where} Ws,`;
  if (step === undefined) return fail('no-answer', `${short} which is more than its ${spoken(full)} Ws.`);
  return fail(
    'no-answer',
    `${short} where steps of ${spokenStops(step)} down from ${spoken(full)} Ws have no setting.`,
  );
}
