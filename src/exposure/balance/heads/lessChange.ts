import { at } from '../../core/at';
import { isFail, type Result } from '../../core/result';
import { SLACK } from '../../core/numbers';
import type { Wanted } from './points';
import { excessAt, type Limits, type Places, search, type Settings, type Steps } from './search';
import { presentIn, type Setting } from './settings';

export const largestChange = (settings: Settings, places: Places): number =>
  settings.reduce((most, list, h) => Math.max(most, at(list, at(places, h)).change), 0);
export const sumOfChanges = (settings: Settings, places: Places): number =>
  settings.reduce((sum, list, h) => sum + at(list, at(places, h)).change, 0);
export const mostPopsOf = (settings: Settings, places: Places): number =>
  settings.reduce((most, list, h) => Math.max(most, at(list, at(places, h)).pops), 1);

/** The settings among those of each head that keep a rule, and where known places lie among them. */
function among(settings: Settings, places: Places, keeps: (one: Setting) => boolean) {
  const chosen = settings.map((list, h) =>
    list.filter((one) => keeps(one) || one === at(list, at(places, h))),
  );
  return {
    chosen,
    start: chosen.map((list, h) => list.indexOf(at(at(settings, h), at(places, h)))) as Places,
    back: (found: Places): Places =>
      found.map((place, h) => at(settings, h).indexOf(at(at(chosen, h), place))),
  };
}

/** Among settings no further beyond than `stops`: those of the smallest measure. */
export interface Least {
  readonly places: Places;
  /** Whether it is known that there is no smaller one. */
  readonly isShown: boolean;
}

/**
 * The smallest measure, of a list of them, that settings can keep to and still lie no further beyond than `stops`.
 *
 * @param known - settings that do, in any measure.
 * @param measures - rising.
 */
export function* leastOf(
  wanted: Wanted,
  settings: Settings,
  known: Places,
  stops: number,
  measures: readonly number[],
  measure: (one: Setting) => number,
  limits: Pick<Limits, 'looks'>,
): Steps<Result<Least>> {
  const measured = (places: Places): number =>
    settings.reduce((most, list, h) => Math.max(most, measure(at(list, at(places, h)))), 0);
  let best = known;
  let isShown = true;
  let [low, high] = [0, measures.findIndex((x) => x >= measured(known) - SLACK)];
  if (high < 0) high = measures.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    const most = at(measures, middle) + SLACK;
    const fitting = settings.map((list) => list.filter((one) => measure(one) <= most));
    if (fitting.some((list) => list.length === 0)) {
      low = middle + 1;
      continue;
    }
    const start = fitting.map((list, h) => nearestTo(list, at(at(settings, h), at(best, h))));
    const found = yield* search(wanted, fitting, start, { looks: limits.looks, enough: stops });
    if (isFail(found)) return found;
    if (found.excess <= stops) {
      best = found.places.map((place, h) => at(settings, h).indexOf(at(at(fitting, h), place)));
      high = middle;
    } else {
      if (found.bound <= stops) isShown = false;
      low = middle + 1;
    }
  }
  return { places: best, isShown };
}

const nearestTo = (list: readonly Setting[], { factor }: Setting): number =>
  list.reduce((best, one, i) => (Math.abs(one.factor - factor) < Math.abs(at(list, best).factor - factor) ? i : best), 0); // prettier-ignore

/**
 * Makes the sum of changes smaller, one head or two at a time, without going further beyond than `stops` or changing any head
 * by more than `change`. That the sum is the least there is, is not claimed.
 */
export function smallerSum(
  wanted: Wanted,
  settings: Settings,
  known: Places,
  stops: number,
  limit: { readonly change: number; readonly pops: number },
): Places {
  const { chosen, start, back } = among(
    settings,
    known,
    ({ change, pops }) => change <= limit.change + SLACK && pops <= limit.pops,
  );
  const isIn = (places: Places): boolean => excessAt(wanted, chosen, places) <= stops;
  const rank = (places: Places): number => sumOfChanges(chosen, places);
  let best = start;
  for (let round = 0; round < 100; round++) {
    const next = nextSmaller(chosen, best, isIn, rank);
    if (!next) break;
    best = next;
  }
  return back(best);
}

/** The first settings with a smaller sum: a head put back wholly, or by steps, alone or against a step of another. */
function nextSmaller(
  settings: Settings,
  places: Places,
  isIn: (places: Places) => boolean,
  rank: (places: Places) => number,
): Places | undefined {
  const sum = rank(places);
  const put = (from: Places, h: number, to: number): Places => from.map((x, i) => (i === h ? to : x));
  for (const [h, list] of settings.entries()) {
    const home = presentIn(list);
    const place = at(places, h);
    if (place === home) continue;
    const towards = place < home ? 1 : -1;
    for (const to of new Set([home, place + 2 * towards, place + towards])) {
      if (to < 0 || to >= list.length || (to - home) * (place - home) < 0) continue;
      const one = put(places, h, to);
      if (rank(one) >= sum - SLACK) continue;
      if (isIn(one)) return one;
      for (const [other, others] of settings.entries())
        for (const step of [-1, 1]) {
          const moved = at(places, other) + step;
          if (other === h || moved < 0 || moved >= others.length) continue;
          const two = put(one, other, moved);
          if (rank(two) < sum - SLACK && isIn(two)) return two;
        }
    }
  }
  return undefined;
}
