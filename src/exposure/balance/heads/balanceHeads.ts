import { at } from '../../core/at';
import { roundStops, SLACK } from '../../core/numbers';
import { fail, type Fail, isFail, type Result } from '../../core/result';
import type { Vector } from '../../core/vector';
import { AS_GOOD } from '../lighting';
import { type Band, bandsAt, type MeteredPoint, wantedOf } from './bands';
import { fewerHeads, TENTH } from './fewerHeads';
import { largestChange, leastOf, mostPopsOf, smallerSum } from './lessChange';
import { type Limit, limitsOf } from './limits';
import { missOfKind, type Wanted } from './points';
import { excessAt, factorsAt, type Found, type Places, search, type Settings, type Steps } from './search';
import { type Head, presentIn, type Setting, settingsOf } from './settings';

/** As many as are balanced while somebody waits. */
export const MOST_HEADS = 12;
export const MOST_POINTS = 25;

/** What a point reads, before or after. */
export interface PointOutcome {
  /** Likely f-number of all light. */
  readonly reading: number;
  /** Stops over (+) or under (−) the target. */
  readonly stops: number;
  /** Of them what counts as a miss, by the kind of the point. */
  readonly miss: number;
  /** How far the likely reading may be off, up and down, as the meter rounds. */
  readonly mayBeOver: number;
  readonly mayBeUnder: number;
}

export interface Proposal {
  readonly heads: readonly Setting[];
  readonly points: readonly PointOutcome[];
  /** The largest miss, without its sign, and with what the readings leave open. */
  readonly worst: number;
  readonly utmost: number;
  /** Stops by which a point lies beyond what is allowed and what the readings tell. */
  readonly excess: number;
}

export interface Balanced {
  readonly before: Proposal;
  readonly after: Proposal;
  /** Whether nothing is to be changed, as the readings could not tell it from what there is. */
  readonly isLeft: boolean;
  /** The least excess there can be, as far as the search has shown. */
  readonly bound: number;
  /** Whether points may miss unlike amounts: then the smallest excess need not be the smallest worst miss. */
  readonly isUneven: boolean;
  /** Whether the search has shown that there is nothing better by more than a hundredth of a stop. */
  readonly isShown: boolean;
  readonly limits: readonly Limit[];
  /** Settings that change fewer heads, where the worst point is off by less than a tenth more. */
  readonly fewer: Proposal | undefined;
}

/** A thousandth either way is the search's own. */
const SHOWN = 0.0021;
/** Linear programmes of one search: with one pop a head, and with more. */
const LOOKS = 60;
const LOOKS_WITH_POPS = 250;

function refusal(points: readonly MeteredPoint[], heads: readonly Head[]): Fail | undefined {
  if (heads.length > MOST_HEADS || points.length > MOST_POINTS)
    return fail(
      'domain',
      `Up to ${MOST_HEADS} heads and ${MOST_POINTS} points are balanced at once, not ${heads.length} and ${points.length}: leave some out.`,
    );
  if (points.every(({ kind }) => kind === 'ignore'))
    return fail('no-answer', 'Every point is ignored: say what at least one of them shall read.');
  return undefined;
}

const worstOf = (points: readonly PointOutcome[]): number =>
  points.reduce((most, { miss }) => Math.max(most, Math.abs(miss)), 0);

/** A miss at the worst of what the readings leave open. */
const utmostOf = (points: readonly MeteredPoint[], outcomes: readonly PointOutcome[]): number =>
  outcomes.reduce((most, { stops, mayBeOver, mayBeUnder }, p) => {
    const { kind } = at(points, p);
    const over = missOfKind(stops + mayBeOver, kind);
    const under = missOfKind(stops - mayBeUnder, kind);
    return Math.max(most, Math.abs(over), Math.abs(under));
  }, 0);

function outcome({ target, kind }: MeteredPoint, { least, likely, most }: Band): PointOutcome {
  const stops = roundStops(Math.log2(likely) - 2 * Math.log2(target));
  return {
    reading: Math.sqrt(likely),
    stops,
    miss: missOfKind(stops, kind),
    mayBeOver: roundStops(Math.log2(most / likely)),
    mayBeUnder: roundStops(Math.log2(likely / least)),
  };
}

/**
 * Settings of several heads that bring several points nearest to what is wanted of each, and otherwise keep the lighting.
 *
 * Light adds: a head brings each point its light there as metered, times its power and its pops. A point may read over or
 * under by its tolerance, and by what its readings leave open; what lies beyond that is its excess. In this order: the
 * smallest worst excess, the fewest pops of the head that has most, the smallest largest change, a small sum of changes
 * (not claimed to be the smallest). Excesses within 0.005 stop count as one. Where the settings there are cannot be told
 * from the best by the readings, they are kept.
 *
 * Ends with what it has found once the search has taken its looks, and says what it has shown: `bound`.
 *
 * @param points - up to 25, with the light of each head there.
 * @param heads - up to 12.
 */
export function* balanceHeads(
  points: readonly MeteredPoint[],
  heads: readonly Head[],
): Steps<Result<Balanced>> {
  const wrong = refusal(points, heads);
  if (wrong) return wrong;
  const settings: Settings = heads.map(settingsOf);
  const home: Places = settings.map(presentIn);
  const present = factorsAt(settings, home);
  const wanted = wantedOf(points, present);
  const looks = heads.some(({ mostPops }) => mostPops > 1) ? LOOKS_WITH_POPS : LOOKS;

  const best = yield* search(wanted, settings, home, { looks, enough: 0 });
  if (isFail(best)) return best;
  const stops = best.excess + AS_GOOD;
  const kept = yield* keptClose(wanted, settings, best, stops, looks);
  if (isFail(kept)) return kept;

  const proposal = (places: Places): Proposal => {
    const factors: Vector = factorsAt(settings, places);
    const outcomes = points.map((point) => outcome(point, bandsAt(point, present, factors)));
    return {
      heads: settings.map((list, h) => at(list, at(places, h))),
      points: outcomes,
      worst: worstOf(outcomes),
      utmost: utmostOf(points, outcomes),
      excess: excessAt(wanted, settings, places),
    };
  };
  const gain = excessAt(wanted, settings, home) - excessAt(wanted, settings, kept);
  const isLeft = gain <= tells(points, present) || kept.every((place, h) => place === at(home, h));
  const places = isLeft ? home : kept;
  const limits = limitsOf(wanted, settings, heads, places, best.excess);
  if (isFail(limits)) return limits;
  const fewer = isLeft ? undefined : fewerHeads(wanted, settings, kept, home, looks);
  if (isFail(fewer)) return fewer;
  const after = proposal(places);
  const few = fewer && proposal(fewer);
  return {
    before: proposal(home),
    after,
    isLeft,
    bound: best.bound,
    isUneven: isUneven(wanted),
    isShown: best.excess - best.bound <= SHOWN,
    limits,
    fewer: few && few.worst - after.worst < TENTH ? few : undefined,
  };
}

/** Less than half a tenth between what points may miss is not told from none. */
const EVEN = 0.05;

function isUneven({ under, over }: Wanted): boolean {
  const allowed = [...under, ...over].filter(Number.isFinite);
  return allowed.length > 0 && Math.max(...allowed) - Math.min(...allowed) > EVEN + SLACK;
}

/** An improvement of the worst point by no more than this is none, for all that the readings tell: half a step of the meter. */
const tells = (points: readonly MeteredPoint[], present: Vector): number =>
  points.reduce((least, point) => {
    const { likely, most } = bandsAt(point, present, present);
    return point.kind === 'ignore' || likely === 0 ? least : Math.min(least, Math.log2(most / likely));
  }, 0.05) - SLACK;

function* keptClose(
  wanted: ReturnType<typeof wantedOf>,
  settings: Settings,
  best: Found,
  stops: number,
  looks: number,
): Steps<Result<Places>> {
  const all = settings.flat();
  const rising = (list: readonly number[]): number[] => [...new Set(list)].sort((a, b) => a - b);
  const pops = yield* leastOf(wanted, settings, best.places, stops, rising(all.map((one) => one.pops)), (one) => one.pops, { looks }); // prettier-ignore
  if (isFail(pops)) return pops;
  const cap = mostPopsOf(settings, pops.places);
  const capped = settings.map((list) => list.filter((one) => one.pops <= cap || one.change === 0));
  const start = pops.places.map((place, h) => at(capped, h).indexOf(at(at(settings, h), place)));
  const changes = rising(capped.flat().map(({ change }) => Math.round(change * 1e9) / 1e9));
  const near = yield* leastOf(wanted, capped, start, stops, changes, ({ change }) => change, { looks });
  if (isFail(near)) return near;
  const limit = { change: largestChange(capped, near.places), pops: cap };
  const least = smallerSum(wanted, capped, near.places, stops, limit);
  return least.map((place, h) => at(settings, h).indexOf(at(at(capped, h), place)));
}
