import { ceilSteady, floorSteady, roundSteady, SLACK } from '../core/numbers';
import type { Vector } from '../core/vector';
import { AS_GOOD, changes, type Lighting } from './lighting';
import { searchSteps } from './searchSteps';

/** Settings of the heads: most·2^(−k·step), k from 0 to `last`. */
export interface Steps {
  readonly step: number;
  readonly last: Vector;
}

/** A setting of all heads, undefined for off, and its worst miss. */
interface Setting {
  readonly marks: readonly (number | undefined)[];
  readonly worst: number;
}

/** Ways to settle all heads that are tried one by one. */
const MOST_WAYS = 5000;
/** Moves of one head that are tried, alone and with one other. */
const MOVES = [-2, -1, 1, 2];
/** More rounds of moves than have been seen to help. */
const ROUNDS = 100;

const at = (list: Vector, i: number): number => list[i] as number;

/**
 * Whole numbers nearest to a place, at least those on either side of it, from 0 to `last`; no more than `count` (from 2).
 */
function around(place: number, last: number, count: number): number[] {
  const within = (k: number): number => Math.min(last, Math.max(0, k));
  let low = within(floorSteady(place));
  let high = within(ceilSteady(place));
  while (high - low + 1 < count && (low > 0 || high < last)) {
    if (high === last || (low > 0 && place - low < high - place)) low--;
    else high++;
  }
  return Array.from({ length: high - low + 1 }, (_, i) => low + i);
}

/**
 * Settings in steps for powers between them.
 *
 * All ways to settle the heads near their powers are tried, as many settings of each head as make 5000 ways: 2 for 12 heads
 * (above and below), 5 for five, 17 for three, 70 for two. From the best, single heads and pairs are moved by up to two
 * steps as long as that makes the worst miss smaller, and then a search over all settings tries to better it
 * (`searchSteps`, which ends early where there are many heads). Among all these, and the present settings, that are within
 * 0.005 stop of the best found: the smallest largest change, then the smallest sum.
 *
 * @param shares - powers as shares of the most, 0 for off.
 * @returns the same, each on a setting.
 */
export function inSteps({ reach, now }: Lighting, shares: Vector, { step, last }: Steps): number[] {
  const place = (share: number): number => -Math.log2(share) / step;
  const within = (mark: number, h: number): number => Math.min(at(last, h), Math.max(0, mark));
  const lit = shares.filter((x) => x > 0).length;
  const each = Math.floor(MOST_WAYS ** (1 / lit));
  const share = (mark: number | undefined): number => (mark === undefined ? 0 : 2 ** (-mark * step));
  const columns = now.map((_, h): Vector => reach.map((row) => at(row, h)));
  const columnOf = (h: number): Vector => columns[h] as Vector;

  const plus = (light: Vector, h: number, by: number): number[] =>
    light.map((l, p) => l + by * at(columnOf(h), p));
  const miss = (light: Vector): number => {
    let low = Infinity;
    let high = 0;
    for (const l of light) {
      if (l < low) low = l;
      if (l > high) high = l;
    }
    return Math.max(Math.log2(high), -Math.log2(low));
  };
  const dark = reach.map(() => 0);
  const lightOf = (marks: Setting['marks']): Vector =>
    marks.reduce<Vector>((light, mark, h) => plus(light, h, share(mark)), dark);
  const setting = (marks: Setting['marks']): Setting => ({ marks, worst: miss(lightOf(marks)) });

  const all: Setting[] = [];
  /** Settles the heads from one on in all ways, the marks of those before it being chosen. */
  function settle(h: number, light: Vector, marks: (number | undefined)[]): void {
    if (h === now.length) {
      all.push({ marks: [...marks], worst: miss(light) });
      return;
    }
    const choices = at(shares, h) > 0 ? around(place(at(shares, h)), at(last, h), each) : [undefined];
    for (const choice of choices) {
      marks[h] = choice;
      settle(h + 1, plus(light, h, share(choice)), marks);
    }
  }

  /** The best that moves of one or two heads make of a setting. */
  function moved({ marks, worst }: Setting): Setting {
    let best: Setting = { marks, worst };
    const light = lightOf(marks);
    const singles = marks.flatMap((mark, h) =>
      MOVES.flatMap((by) => {
        const to = mark === undefined ? undefined : within(mark + by, h);
        return to === undefined || to === mark ? [] : [{ h, to, by: share(to) - share(mark) }];
      }),
    );
    for (const a of singles) {
      const one = plus(light, a.h, a.by);
      const swapped = marks.map((mark, h) => (h === a.h ? a.to : mark));
      if (miss(one) < best.worst - SLACK) best = { marks: swapped, worst: miss(one) };
      for (const b of singles) {
        if (b.h <= a.h) continue;
        const found = miss(plus(one, b.h, b.by));
        if (found < best.worst - SLACK)
          best = { marks: swapped.map((mark, h) => (h === b.h ? b.to : mark)), worst: found };
      }
    }
    return best;
  }

  settle(0, dark, []);
  all.push(setting(now.map((x, h) => within(roundSteady(place(x)), h))));
  let best = all.reduce((a, b) => (b.worst < a.worst ? b : a));
  for (let round = 0; round < ROUNDS; round++) {
    const next = moved(best);
    if (next.worst >= best.worst) break;
    all.push(next);
    best = next;
  }
  const heads = now.flatMap((_, h) => (at(shares, h) > 0 ? [h] : []));
  const better = searchSteps(
    heads.map((h) => ({
      shares: Array.from({ length: at(last, h) + 1 }, (_, mark) => share(mark)),
      light: columnOf(h),
    })),
    best.worst,
  );
  if (better) {
    best = setting(now.map((_, h) => better[heads.indexOf(h)]));
    all.push(best);
  }
  const rated = all
    .filter(({ worst }) => worst <= best.worst + AS_GOOD)
    .map(({ marks, worst }) => ({ marks, worst, ...changes(now, marks.map(share)) }));
  const kept = rated.reduce((a, b) => {
    const order =
      Math.abs(a.largest - b.largest) > SLACK
        ? a.largest - b.largest
        : Math.abs(a.sum - b.sum) > SLACK
          ? a.sum - b.sum
          : a.worst - b.worst;
    return order > 0 ? b : a;
  });
  return kept.marks.map(share);
}
