import { call } from '../../src/cells/call';
import { isCellError } from '../../src/formula/errors';
import type { AnyRow, Arg } from '../../src/catalogue/types';
import { tryCall, type Trial } from './calls';
import { Draws, seedFor } from './draws';
import type { Report } from './report';
import { anyTrace, asColumn, withJunk, type Writing, WRITINGS } from './trace';
import { written } from './written';

/** Functions that take times and values of a recording first. */
export const takesTrace = (row: AnyRow): boolean =>
  (row.args as readonly Arg[]).slice(0, 2).every(({ takes }) => takes === 'series');

/** What two answers differ by that may not: numbers by more than their texts lose, or anything else. */
function differs(answer: unknown, wanted: unknown): boolean {
  if (Array.isArray(answer) && Array.isArray(wanted))
    return answer.length !== wanted.length || answer.some((cell, i) => differs(cell, wanted[i]));
  if (typeof answer === 'number' && typeof wanted === 'number')
    return Math.abs(answer - wanted) > 1e-6 * Math.max(Math.abs(answer), Math.abs(wanted)) + 1e-9;
  return typeof answer !== typeof wanted;
}

/**
 * So many recordings pasted as texts: one writing for all cells or one for times and one for values, and junk in some.
 * What is not refused is what the same recording gives as numbers: no writing is read as another number.
 */
export function hostileTraces(
  rows: readonly AnyRow[],
  { calls, seed, sizes }: Trial,
  report: Report,
  writings: readonly Writing[] = WRITINGS,
): void {
  for (const row of rows.filter(takesTrace))
    for (let n = 0; n < calls; n++) {
      report.begins(`--seed ${seed + n} --only ${row.id} 1`);
      const draws = new Draws(seedFor(seed + n, `trace of ${row.id}`));
      const what = pasted(draws, row, sizes.cells, writings, report);
      if (what !== undefined)
        report.escaped({ what: what.fault, name: row.id, seed: seed + n, given: written(what.given) });
    }
}

function pasted(
  draws: Draws,
  row: AnyRow,
  most: number,
  writings: readonly Writing[],
  report: Report,
): { fault: string; given: unknown } | undefined {
  const { times, values } = anyTrace(draws, most);
  const forTimes = draws.pick(writings);
  const forValues = draws.isSo(0.5) ? forTimes : draws.pick(writings);
  const more = draws.isSo(0.2) ? [draws.pick(['0,5', '50 %', '0.1', '1/3', 'x'])] : [];
  const texts = [times.map(forTimes.write), values.map(forValues.write)];
  const dirty = texts.map((cells) => withJunk(draws, cells, 0.3));
  const given = [...dirty.map(asColumn), ...more];
  const fault = tryCall(row, given, report);
  if (fault !== undefined) return { fault, given };
  const isClean = dirty.every((cells, c) => cells.every((cell, i) => cell === texts[c]?.[i]));
  if (!isClean) return undefined;
  const answer = call(row, given);
  if (isCellError(answer)) return undefined;
  const wanted = call(row, [asColumn(times), asColumn(values), ...more]);
  return differs(answer, wanted)
    ? { fault: `read ${forTimes.name} and ${forValues.name} as other numbers`, given }
    : undefined;
}
