import { at } from '../core/at';
import { spoken } from '../core/numbers';
import { fail, type Result } from '../core/result';

/** A head's duration at one energy. */
export interface TableRow {
  /** Ws. */
  readonly power: number;
  /** Seconds. */
  readonly time: number;
}

/** A head's table of energies and durations, the highest energy first; or why it is none. */
export function durationTable(
  powers: readonly number[],
  durations: readonly number[],
): Result<readonly TableRow[]> {
  if (durations.length !== powers.length)
    return fail(
      'unreadable',
      `durations must be as many as the powers: ${durations.length} for ${powers.length} powers.`,
    );
  const rows = powers
    .map((power, i) => ({ power, time: at(durations, i) }))
    .sort((a, b) => b.power - a.power);
  const twice = rows.find((row, i) => row.power === rows[i - 1]?.power);
  return twice ? fail('unreadable', `powers lists ${spoken(twice.power)} Ws twice.`) : rows;
}
