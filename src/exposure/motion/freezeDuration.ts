import { SLACK, spoken } from '../core/numbers';
import { answer, fail, isFail, type Result } from '../core/result';
import { durationTable } from './durationTable';

/**
 * Duration of a head at an energy, from its table of energies and durations: the question that `freezePower` asks backwards.
 *
 * Between two rows the logarithms are interpolated, as durations go with a power of the energy. Nothing is guessed beyond
 * the table.
 *
 * @param powers - energies in Ws (each above 0, no two alike), in any order.
 * @param durations - duration in seconds at each of them (each above 0).
 * @param power - energy in Ws (above 0).
 * @returns seconds, at the level of the table; a `no-answer` refusal beyond the ends of the table.
 */
export function freezeDuration(
  powers: readonly number[],
  durations: readonly number[],
  power: number,
): Result<number> {
  const rows = durationTable(powers, durations);
  if (isFail(rows)) return rows;
  const near = rows.find((row) => Math.abs(row.power / power - 1) <= SLACK);
  if (near) return answer(near.time);
  const lower = rows.findIndex((row) => row.power < power);
  const [above, below] = [rows[lower - 1], rows[lower]];
  if (!above || !below) {
    const ends = [...rows.slice(0, 1), ...rows.slice(-1)].map((row) => spoken(row.power));
    return fail(
      'no-answer',
      `The table goes from ${ends[1]} to ${ends[0]} Ws: it says nothing of ${spoken(power)} Ws.`,
    );
  }
  const part = Math.log(power / below.power) / Math.log(above.power / below.power);
  return answer(below.time * (above.time / below.time) ** part);
}
