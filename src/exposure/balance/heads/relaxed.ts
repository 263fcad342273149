import { at } from '../../core/at';
import { isFail, type Result } from '../../core/result';
import type { Vector } from '../../core/vector';
import { linearProgramme } from '../linearProgramme';
import { excessOf, lightOf, type Wanted } from './points';

/** Factors of the heads between bounds. */
export interface Box {
  readonly low: Vector;
  readonly high: Vector;
}

/** To how many stops the smallest excess is found. */
const FINE = 1e-4;
const ROUNDS = 40;

/**
 * The box, without what no head may do as it would light a point too much by itself. A head that goes down by forty stops would
 * otherwise have numbers of the programme so far apart that they lose their last places.
 */
function withinRoom({ reach }: Wanted, { low, high }: Box, rooms: Vector): Vector {
  return high.map((most, h) => {
    const may = reach.reduce(
      (least, row, p) => (at(row, h) > 0 ? Math.min(least, at(rooms, p) / at(row, h)) : least),
      most,
    );
    return Math.min(most, Math.max(at(low, h), may * (1 + 1e-9)));
  });
}

/**
 * Factors in a box, any number between its ends, with no point further than some stops beyond what it may.
 *
 * The powers are counted in parts of the box's upper ends, and the light of each point in parts of what is asked of it, as
 * the linear programme wants numbers of about 1.
 *
 * @param objective - what is to be small, a price for each head; nothing: any answer will do.
 * @returns the factors; undefined where there are none.
 */
export function relaxed(
  wanted: Wanted,
  box: Box,
  stops: number,
  objective?: Vector,
): Result<Vector | undefined> {
  const { reach, fixed, under, over } = wanted;
  const { low } = box;
  const rooms = over.map((above, p) => 2 ** (above + stops) - at(fixed, p));
  const high = withinRoom(wanted, box, rooms);
  const ends = high.map((x) => (x > 0 ? x : 1));
  const rows: Vector[] = [];
  const rowLeast: number[] = [];
  const rowMost: number[] = [];
  for (const [p, row] of reach.entries()) {
    const most = row.reduce((sum, a, h) => sum + a * at(high, h), 0);
    const need = 2 ** -(at(under, p) + stops) - at(fixed, p);
    const room = at(rooms, p);
    if (room < 0 || need > most * (1 + 1e-12)) return undefined;
    if (most === 0) continue;
    const scale = 1 / Math.min(most, Math.max(1, Math.min(room, most)));
    rows.push(row.map((a, h) => a * at(ends, h) * scale));
    rowLeast.push(Math.max(0, need) * scale);
    rowMost.push(Math.min(room, 2 * most) * scale);
  }
  const found = linearProgramme({
    objective: ends.map((end, h) => (objective ? at(objective, h) * end : 0)),
    rows,
    rowLeast,
    rowMost,
    least: low.map((x, h) => x / at(ends, h)),
    most: high.map((x, h) => x / at(ends, h)),
  });
  if (isFail(found) || found === undefined) return found;
  return found.map((x, h) => x * at(ends, h));
}

/** The smallest excess that factors in a box can have, from below to a ten-thousandth of a stop, and such factors. */
export function leastExcess(
  wanted: Wanted,
  box: Box,
  known: Vector,
): Result<{ bound: number; factors: Vector }> {
  let factors = known;
  let [from, to] = [0, excessOf(wanted, lightOf(wanted, known))];
  const none = relaxed(wanted, box, 0);
  if (isFail(none)) return none;
  if (none !== undefined) return { bound: 0, factors: none };
  // an end without light is infinitely far: whatever is nearer is looked for from a bound that no studio exceeds
  if (!Number.isFinite(to)) to = 64;
  for (let round = 0; round < ROUNDS && to - from > FINE; round++) {
    const middle = (from + to) / 2;
    const fit = relaxed(wanted, box, middle);
    if (isFail(fit)) return fit;
    if (fit === undefined) from = middle;
    else {
      factors = fit;
      to = Math.min(middle, excessOf(wanted, lightOf(wanted, fit)));
    }
  }
  return { bound: from, factors };
}
