import { SLACK, spoken } from '../core/numbers';
import { answer, fail, isFail, type Result } from '../core/result';
import { durationTable } from './durationTable';

/**
 * Most energy at which a head is short enough, from its table of energies and durations.
 *
 * Between two rows the logarithms are interpolated, as durations go with a power of the energy. Some heads get shorter as
 * they are turned down, others longer: the highest energy anywhere in the table that keeps the limit is taken.
 * Nothing is guessed beyond the table.
 *
 * @param powers - energies in Ws (each above 0, no two alike), in any order.
 * @param durations - duration in seconds at each of them (each above 0), at the level of the limit.
 * @param limit - longest duration allowed, in seconds (above 0).
 * @returns Ws; a `no-answer` refusal where no row is short enough.
 */
export function freezePower(
  powers: readonly number[],
  durations: readonly number[],
  limit: number,
): Result<number> {
  const rows = durationTable(powers, durations);
  if (isFail(rows)) return rows;
  const fits = (time: number): boolean => time <= limit * (1 + SLACK);
  for (const [i, row] of rows.entries()) {
    const above = rows[i - 1];
    if (!fits(row.time)) continue;
    if (!above) return answer(row.power);
    const part = Math.log(limit / row.time) / Math.log(above.time / row.time);
    return answer(row.power * (above.power / row.power) ** Math.max(0, part));
  }
  const shortest = rows.reduce((least, row) => Math.min(least, row.time), Infinity);
  const times = answer(shortest / limit);
  if (isFail(times)) return times;
  return fail('no-answer', `The shortest flash in the table lasts ${spoken(times, 3)} times the limit.`);
}
