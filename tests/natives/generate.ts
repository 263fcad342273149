import { Draws, seedFor } from '../hostile/draws';
import type { Asked, Family } from './asked';
import * as more from './families/more';
import * as newer from './families/newer';
import * as printed from './families/printed';
import * as rows from './families/rows';
import * as values from './families/values';

export const FAMILIES: Readonly<Record<string, Family>> = {
  ...values,
  ...rows,
  ...more,
  ...newer,
  ...printed,
};
const NAMES = Object.keys(FAMILIES);

export interface Drawn extends Asked {
  readonly family: string;
}

/** So many formulas, no two alike, every family in its turn; the same ones for the same seed. */
export function generate(count: number, seed: number): Drawn[] {
  const draws = NAMES.map((name) => new Draws(seedFor(seed, name)));
  const drawn = new Map<string, Drawn>();
  // A small family has no new formula some day: the others go on.
  for (let turn = 0; drawn.size < count && turn < count * 10; turn++) {
    const at = turn % NAMES.length;
    const family = NAMES[at] as string;
    const asked = (FAMILIES[family] as Family)(draws[at] as Draws);
    if (!drawn.has(asked.formula)) drawn.set(asked.formula, { ...asked, family });
  }
  return [...drawn.values()];
}
