import { call } from '../../src/cells/call';
import type { AnyRow } from '../../src/catalogue/types';
import { argumentsFor, type Sizes } from './args';
import { Draws, seedFor } from './draws';
import { type Escape, HANGS, type Report, stopwatch } from './report';
import { Verdict } from './verdict';
import { written } from './written';

/** Arguments are the host's: a function that changes them throws. */
function frozen<T>(given: T): T {
  if (Array.isArray(given)) for (const member of given) frozen(member);
  return Array.isArray(given) ? Object.freeze(given) : given;
}

/** One call, by the seed that it alone has. Undefined where nothing escapes. */
export function tryCall(row: AnyRow, given: readonly unknown[], report: Report): string | undefined {
  const verdict = new Verdict(row, given);
  const worked = stopwatch();
  let answer: unknown;
  try {
    answer = call(row, frozen(given));
  } catch (error) {
    return `threw ${error instanceof Error ? `${error.name}: ${error.message}` : String(error)}`;
  }
  const seconds = worked();
  report.slowest(seconds, row.id);
  if (seconds > HANGS) return `took ${seconds.toFixed(1)} s`;
  const fault = verdict.of(answer);
  for (const name of verdict.excepted) report.excepted(name);
  if (fault === undefined) report.answered(Array.isArray(answer) || typeof answer !== 'object');
  return fault;
}

export interface Trial {
  readonly calls: number;
  readonly seed: number;
  readonly sizes: Sizes;
}

/**
 * So many hostile calls of each row. The call with the number n draws from the seed + n, so that it can be made again as
 * the first of that seed.
 */
export function hostileCalls(rows: readonly AnyRow[], { calls, seed, sizes }: Trial, report: Report): void {
  for (const row of rows)
    for (let n = 0; n < calls; n++) {
      report.begins(`--seed ${seed + n} --only ${row.id} 1`);
      const given = argumentsFor(new Draws(seedFor(seed + n, row.id)), row, sizes);
      const what = tryCall(row, given, report);
      if (what !== undefined)
        report.escaped({ what, name: row.id, seed: seed + n, given: written(given) } satisfies Escape);
    }
}
