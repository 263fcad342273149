import { at } from '../../core/at';
import { isFail, type Result } from '../../core/result';
import type { Vector } from '../../core/vector';
import { excessOf, lightOf, type Wanted } from './points';
import { leastExcess, relaxed } from './relaxed';
import { nearestIn, type Setting } from './settings';

/** For each head the place of its setting among its settings. */
export type Places = Vector;
export type Settings = readonly (readonly Setting[])[];

/** How far a search has got: from 0 to 1. Between two of them the caller may do something else, or end it. */
export type Steps<T> = Generator<number, T, void>;

/** Runs to the end what reports its steps. */
export function finished<T>(steps: Steps<T>): T {
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}

export interface Found {
  readonly places: Places;
  readonly excess: number;
  /** No setting whatever has a smaller excess than this. */
  readonly bound: number;
}

/** A setting that is better by less than this is not looked for, in stops. */
export const NO_BETTER = 0.001;
/** Moves of a head along its settings that are tried, alone and with one other. */
const MOVES = [-2, -1, 1, 2];
/** More rounds than have been seen to help. */
const MOST_ROUNDS = 60;
/** Linear programmes between two reports. */
const REPORT = 8;

export const factorsAt = (settings: Settings, places: Places): number[] =>
  settings.map((list, h) => at(list, at(places, h)).factor);
export const excessAt = (wanted: Wanted, settings: Settings, places: Places): number =>
  excessOf(wanted, lightOf(wanted, factorsAt(settings, places)));

/** For a loop that runs a million times: `at`, which takes all lists, is slow for each. */
const numberAt = (list: Float64Array, i: number): number => list[i] ?? NaN;

interface Move {
  readonly h: number;
  readonly to: number;
  readonly by: number;
}

const movesFrom = (settings: Settings, places: Places): Move[] =>
  settings.flatMap((list, h) =>
    MOVES.flatMap((step) => {
      const [from, to] = [at(list, at(places, h)), list[at(places, h) + step]];
      return to ? [{ h, to: at(places, h) + step, by: to.factor - from.factor }] : [];
    }),
  );

const moved = (places: Places, ...moves: readonly Move[]): Places =>
  places.map((place, h) => moves.find((move) => move.h === h)?.to ?? place);

/** How much light each point may have, at an excess: what is compared a million times, and so without logarithms. */
const bounds = ({ under, over }: Wanted, excess: number) => ({
  low: Float64Array.from(under, (stops) => 2 ** -(stops + excess)),
  high: Float64Array.from(over, (stops) => 2 ** (stops + excess)),
});

/**
 * Moves single heads and pairs as long as that makes the excess smaller: from each setting to the best of a round.
 *
 * A move counts where every point then lies within the bounds of the excess so far, which most moves leave at their first
 * points.
 */
export function improved(wanted: Wanted, settings: Settings, start: Places): Places {
  let best = start;
  let excess = excessAt(wanted, settings, start);
  const columns = settings.map((_, h) => Float64Array.from(wanted.reach, (row) => at(row, h)));
  for (let round = 0; round < MOST_ROUNDS; round++) {
    if (excess <= 0) break;
    const light = Float64Array.from(lightOf(wanted, factorsAt(settings, best)));
    const moves = movesFrom(settings, best);
    let { low, high } = bounds(wanted, excess - 1e-12);
    let next: Places | undefined;
    const isBetter = (a: Move, b: Move | undefined): boolean => {
      const one = at(columns, a.h);
      const other = b && at(columns, b.h);
      const by = b ? b.by : 0;
      for (let p = 0; p < light.length; p++) {
        const l = numberAt(light, p) + numberAt(one, p) * a.by + (other ? numberAt(other, p) * by : 0);
        if (!(l >= numberAt(low, p) && l <= numberAt(high, p))) return false;
      }
      return true;
    };
    const take = (...taken: readonly Move[]): void => {
      next = moved(best, ...taken);
      excess = excessAt(wanted, settings, next);
      ({ low, high } = bounds(wanted, excess - 1e-12));
    };
    for (const [i, a] of moves.entries()) {
      if (isBetter(a, undefined)) take(a);
      for (let j = i + 1; j < moves.length; j++) {
        const b = at(moves, j);
        if (b.h !== a.h && isBetter(a, b)) take(a, b);
      }
    }
    if (!next) break;
    best = next;
  }
  return best;
}

/** Places between which the heads are still to be set. */
interface Node {
  readonly low: Places;
  readonly high: Places;
}

const boxOf = (settings: Settings, { low, high }: Node) => ({
  low: factorsAt(settings, low),
  high: factorsAt(settings, high),
});

/** The head whose factor lies between two settings and lights a point most there; undefined where none does. */
function toSplit(wanted: Wanted, settings: Settings, node: Node, factors: Vector) {
  let widest = 0;
  let found: { h: number; place: number; above: boolean } | undefined;
  for (const [h, list] of settings.entries()) {
    const [low, high] = [at(node.low, h), at(node.high, h)];
    if (low === high) continue;
    const factor = at(factors, h);
    let place = low;
    for (let top = high; top - place > 1;) {
      const middle = (place + top) >> 1;
      if (at(list, middle).factor <= factor) place = middle;
      else top = middle;
    }
    if (place === high) place = high - 1;
    const [below, above] = [at(list, place).factor, at(list, place + 1).factor];
    const off = Math.min(Math.abs(factor - below), Math.abs(above - factor));
    const light = wanted.reach.reduce((most, row) => Math.max(most, at(row, h)), 0);
    // a head that stands on a setting may have to leave it all the same, once the others are settled
    const width = off * light + 1e-9 * (above - below) * light + 1e-15;
    if (width <= widest) continue;
    widest = width;
    found = { h, place, above: above - factor < factor - below };
  }
  return found;
}

function halves({ low, high }: Node, h: number, place: number): readonly [below: Node, above: Node] {
  const set = (list: Places, to: number): Places => list.map((x, i) => (i === h ? to : x));
  return [
    { low, high: set(high, place) },
    { low: set(low, place + 1), high },
  ];
}

export interface Limits {
  /** Linear programmes that may be solved. */
  readonly looks: number;
  /** An excess that is good enough: the search ends with the first that has no more. */
  readonly enough: number;
}

/**
 * The settings of all heads with the smallest excess over the points: branch and bound.
 *
 * What the heads could do if they had all powers between their settings, a linear programme, tells which settings cannot
 * be better than the best that is known by 0.001 stop; the others are halved, head by head, until none is left. Each answer
 * of a programme is settled on the nearest settings and moved about as long as that helps. Where the looks run out first,
 * `bound` says what has been shown so far.
 *
 * @param start - settings that are known.
 */
export function* search(
  wanted: Wanted,
  settings: Settings,
  start: Places,
  { looks, enough }: Limits,
): Steps<Result<Found>> {
  let best = improved(wanted, settings, start);
  let excess = excessAt(wanted, settings, best);
  const take = (places: Places): void => {
    const better = improved(wanted, settings, places);
    const found = excessAt(wanted, settings, better);
    if (found < excess) [best, excess] = [better, found];
  };
  const done = (bound: number): Found => ({ places: best, excess, bound: Math.min(bound, excess) });
  if (excess <= enough) return done(0);

  const whole: Node = { low: settings.map(() => 0), high: settings.map((list) => list.length - 1) };
  const root = leastExcess(wanted, boxOf(settings, whole), factorsAt(settings, best));
  if (isFail(root)) return root;
  if (root.bound > enough) take(settings.map((list, h) => nearestIn(list, at(root.factors, h), 0, list.length - 1))); // prettier-ignore
  const stack = [whole];
  for (let look = 0; ; look++) {
    const node = stack.pop();
    if (!node) break;
    if (excess <= enough || root.bound > Math.max(enough, excess - NO_BETTER)) return done(root.bound);
    if (look >= looks) return done(root.bound);
    if (look % REPORT === 0) yield look / looks;
    const fit = relaxed(wanted, boxOf(settings, node), Math.max(enough, excess - NO_BETTER));
    if (isFail(fit)) return fit;
    if (fit === undefined) continue;
    take(settings.map((list, h) => nearestIn(list, at(fit, h), at(node.low, h), at(node.high, h))));
    const split = toSplit(wanted, settings, node, fit);
    if (!split) continue;
    const [below, above] = halves(node, split.h, split.place);
    stack.push(...(split.above ? [below, above] : [above, below]));
  }
  return done(Math.max(root.bound, excess - NO_BETTER));
}
