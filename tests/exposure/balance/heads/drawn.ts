import { bandOf, type MeteredPoint, NO_LIGHT } from '../../../../src/exposure/balance/heads/bands';
import type { PointKind } from '../../../../src/exposure/balance/heads/points';
import type { Head } from '../../../../src/exposure/balance/heads/settings';
import { random } from '../../random';

export interface Drawn {
  readonly points: readonly MeteredPoint[];
  readonly heads: readonly Head[];
}

export interface Sizes {
  readonly heads: number;
  readonly points: number;
  readonly pops: number;
  /** Settings of a head at the most. */
  readonly settings: number;
  /** Whether some heads are locked or may go off, and some points want more or less than a target. */
  readonly plain?: boolean;
}

const pick = <T>(list: readonly T[], part: number): T => list[Math.floor(part * list.length)] as T;

/** A lighting with its readings: heads of several sizes that light the points unlike each other. */
export function drawLighting(seed: number, { heads, points, pops, settings, plain = false }: Sizes): Drawn {
  const next = random(seed);
  const list = <T>(count: number, one: (i: number) => T): T[] =>
    Array.from({ length: count }, (_, i) => one(i));
  const drawnHeads = list(heads, (): Head => {
    const step = pick([0.1, 1 / 3, 0.5, 1], next());
    const last = 1 + Math.floor(next() * (settings - 1));
    const now = Math.floor(next() * (last + 1));
    const most = pick([400, 600, 1200], next());
    const power = most * 2 ** (-now * step);
    return {
      metered: power,
      power,
      pops: 1,
      least: most * 2 ** (-last * step),
      most,
      step,
      mostPops: 1 + Math.floor(next() * pops),
      isLocked: !plain && next() < 0.1,
      mayGoOff: !plain && next() < 0.2,
    };
  });
  const spread = next() < 0.5 ? 0.8 : 3;
  return {
    heads: drawnHeads,
    points: list(points, (): MeteredPoint => {
      const kind: PointKind =
        plain || next() < 0.6 ? 'equal' : pick(['at least', 'at most', 'equal'], next());
      return {
        target: 2 ** (2.75 + Math.log2(heads) / 2 + 2 * next() - 1),
        tolerance: pick([0, 0, 0.1, 0.3], next()),
        kind,
        heads: list(heads, () => bandOf(2 ** (2.75 + spread * (next() - 0.5)), 0)),
        ambient: next() < 0.3 ? bandOf(2 ** (1 + next()), 0) : NO_LIGHT,
      };
    }),
  };
}

/** Everything a head can be set to, by the definition: power, and pops. */
export function everySetting({ power, pops, least, most, step, mostPops, isLocked, mayGoOff }: Head) {
  const all = [{ power, pops }];
  if (isLocked) return all;
  for (let k = 0; k <= Math.round(Math.log2(most / least) / step); k++)
    for (let n = 1; n <= mostPops; n++) all.push({ power: most * 2 ** (-k * step), pops: n });
  if (mayGoOff) all.push({ power: 0, pops: 1 });
  return all;
}

/** Stops that the worst point lies beyond its tolerance, from the readings. */
export function worstExcess(
  { points, heads }: Drawn,
  set: readonly { power: number; pops: number }[],
): number {
  return Math.max(
    ...points.map(({ target, tolerance, kind, heads: lights, ambient }) => {
      const light = lights.reduce(
        (sum, { likely }, h) =>
          sum + (likely * (set[h]?.power ?? NaN) * (set[h]?.pops ?? NaN)) / (heads[h]?.metered ?? NaN),
        ambient.likely,
      );
      const stops = Math.log2(light / target ** 2);
      const over = kind === 'at least' ? 0 : stops - tolerance;
      const under = kind === 'at most' ? 0 : -stops - tolerance;
      return Math.max(0, over, under);
    }),
  );
}
