import { at } from '../../core/at';
import type { Vector } from '../../core/vector';
import type { PointKind, Wanted } from './points';

/** Light in a range: what it is at the least, likely, and at the most. */
export interface Band {
  readonly least: number;
  readonly likely: number;
  readonly most: number;
}
export const NO_LIGHT: Band = { least: 0, likely: 0, most: 0 };

/** A point as it was metered. Light is the square of the f-number. */
export interface MeteredPoint {
  /** f-number that all light together shall read. */
  readonly target: number;
  /** Stops that may be missed. */
  readonly tolerance: number;
  readonly kind: PointKind;
  /** Light of each head alone, as it was metered. */
  readonly heads: readonly Band[];
  readonly ambient: Band;
  /** Light of everything as it is set now, where that was metered: then only what changes is unsure. */
  readonly check?: Band | undefined;
}

/** What a meter that rounds leaves open of one reading. */
export const bandOf = (reading: number, stops: number): Band => {
  const likely = reading ** 2;
  return { least: likely * 2 ** -stops, likely, most: likely * 2 ** stops };
};

/** Where nothing was shown that the meter could read: anything from none up to its least. Likely is the middle. */
export const belowReading = (reading: number): Band => ({
  least: 0,
  likely: reading ** 2 / 2,
  most: reading ** 2,
});

const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);

/** Light at a point for the light of each head as a multiple of what was metered, now and then. */
export function bandsAt({ heads, ambient, check }: MeteredPoint, now: Vector, then: Vector): Band {
  const likely = sum(heads.map((head, h) => head.likely * at(then, h))) + ambient.likely;
  if (!check)
    return {
      least: sum(heads.map((head, h) => head.least * at(then, h))) + ambient.least,
      likely,
      most: sum(heads.map((head, h) => head.most * at(then, h))) + ambient.most,
    };
  const changed = (up: 'least' | 'most', down: 'least' | 'most'): number =>
    sum(
      heads.map((head, h) => {
        const by = at(then, h) - at(now, h);
        return by * head[by > 0 ? up : down];
      }),
    );
  return {
    least: Math.max(0, check.least + changed('least', 'most')),
    likely,
    most: check.most + changed('most', 'least'),
  };
}

/** More than this a tolerance does not grow by what the readings leave open: who knows less must meter again. */
const MOST_OPEN = 1;

/** What is wanted of the points that count. What readings leave open counts as allowed: no change mends it. */
export function wantedOf(points: readonly MeteredPoint[], now: Vector): Wanted {
  const counted = points.filter(({ kind }) => kind !== 'ignore');
  const open = counted.map((point) => {
    const { least, likely, most } = bandsAt(point, now, now);
    const stops = (x: number): number =>
      x > 0 && Number.isFinite(x) ? Math.min(MOST_OPEN, Math.log2(x)) : 0;
    return { under: stops(likely / least), over: stops(most / likely) };
  });
  return {
    reach: counted.map(({ heads, target }) => heads.map(({ likely }) => likely / target ** 2)),
    fixed: counted.map(({ ambient, target }) => ambient.likely / target ** 2),
    under: counted.map(({ kind, tolerance }, p) =>
      kind === 'at most' ? Infinity : Math.max(tolerance, at(open, p).under),
    ),
    over: counted.map(({ kind, tolerance }, p) =>
      kind === 'at least' ? Infinity : Math.max(tolerance, at(open, p).over),
    ),
  };
}
