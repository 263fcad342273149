import { at } from '../../core/at';
import { isFail, type Result } from '../../core/result';
import type { Wanted } from './points';
import { relaxed } from './relaxed';
import { excessAt, factorsAt, finished, improved, type Places, search, type Settings } from './search';
import { nearestIn } from './settings';

/** What it may cost to leave heads alone, in stops: what a meter shows of it. */
export const TENTH = 0.1;
/** Ways to choose the heads that are changed which are tried. */
const MOST_WAYS = 160;

function* chosen(count: number, from: number, of: number): Generator<readonly number[]> {
  if (count === 0) {
    yield [];
    return;
  }
  for (let h = from; h < of; h++) for (const rest of chosen(count - 1, h + 1, of)) yield [h, ...rest];
}

/**
 * Settings that change fewer heads than some that are known, and cost less than a tenth of a stop; undefined for none. The
 * fewest that are found: all ways to choose them, up to 160.
 */
export function fewerHeads(
  wanted: Wanted,
  settings: Settings,
  known: Places,
  home: Places,
  looks: number,
): Result<Places | undefined> {
  const best = excessAt(wanted, settings, known);
  const turned = known.filter((place, h) => place !== at(home, h)).length;
  const enough = best + TENTH - 1e-6;
  let ways = 0;
  for (let count = 0; count < turned; count++) {
    let least: { readonly places: Places; readonly costs: number } | undefined;
    for (const heads of chosen(count, 0, settings.length)) {
      if (ways++ >= MOST_WAYS) return least?.places;
      const few: Settings = settings.map((list, h) => (heads.includes(h) ? list : [at(list, at(home, h))]));
      const whole = {
        low: factorsAt(few, few.map(() => 0)), // prettier-ignore
        high: factorsAt(few, few.map((list) => list.length - 1)), // prettier-ignore
      };
      const fit = relaxed(wanted, whole, enough);
      if (isFail(fit)) return fit;
      if (fit === undefined) continue;
      const start = few.map((list, h) => nearestIn(list, at(fit, h), 0, list.length - 1));
      let found = improved(wanted, few, start);
      if (excessAt(wanted, few, found) > enough) {
        const searched = finished(search(wanted, few, found, { looks, enough }));
        if (isFail(searched)) return searched;
        found = searched.places;
      }
      const costs = Math.max(0, excessAt(wanted, few, found) - best);
      if (costs >= TENTH || (least && costs >= least.costs)) continue;
      const places = found.map((place, h) => (heads.includes(h) ? place : at(home, h)));
      least = { places, costs };
    }
    if (least) return least.places;
  }
  return undefined;
}
