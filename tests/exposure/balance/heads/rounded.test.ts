import { expect, test } from 'vitest';
import { balanceHeads } from '../../../../src/exposure/balance/heads/balanceHeads';
import { bandOf, NO_LIGHT } from '../../../../src/exposure/balance/heads/bands';
import { finished } from '../../../../src/exposure/balance/heads/search';
import { isFail } from '../../../../src/exposure/core/result';
import { caseNumbers } from '../../../full';
import { random } from '../../random';

/** A meter that shows tenths of a stop: half a tenth either way is lost. */
const shown = (reading: number): number => 2 ** (Math.round(Math.log2(reading) * 2 * 10) / 10 / 2);
const HALF_STEP = 0.05;

/*
 * A set whose true lights are known: they are drawn, read with a meter that rounds, balanced from what it shows, and the
 * light that then is there is added up from the true ones.
 */
function simulated(seed: number): { truly: number; utmost: number; measured: number } {
  const next = random(seed);
  const [heads, points] = [2 + Math.floor(3 * next()), 2 + Math.floor(5 * next())];
  const truth = Array.from({ length: points }, () =>
    Array.from({ length: heads }, () => 2 ** (2.5 + 2 * (next() - 0.5))),
  );
  const ambient = 2 ** (1 + next());
  const target = 2 ** (3 + next());
  const bench = Array.from({ length: heads }, () => ({
    metered: 150, power: 150, pops: 1, least: 9.375, most: 600, step: 0.1, mostPops: next() < 0.3 ? 4 : 1,
    isLocked: false, mayGoOff: false,
  })); // prettier-ignore
  const metered = truth.map((row) => ({
    target,
    tolerance: 0.1,
    kind: 'equal' as const,
    heads: row.map((reading) => bandOf(shown(reading), HALF_STEP)),
    ambient: next() < 0.5 ? bandOf(shown(ambient), HALF_STEP) : NO_LIGHT,
  }));
  const answer = finished(balanceHeads(metered, bench));
  if (isFail(answer)) throw new Error(answer.message);
  const lightThen = truth.map((row, p) =>
    row.reduce(
      (sum, reading, h) => sum + reading ** 2 * (answer.after.heads[h]?.factor ?? NaN),
      metered[p]?.ambient === NO_LIGHT ? 0 : ambient ** 2,
    ),
  );
  const miss = lightThen.map((light) => Math.abs(Math.log2(light / target ** 2)));
  return { truly: Math.max(...miss), utmost: answer.after.utmost, measured: answer.after.worst };
}

test('the light that is really there lies within the stated worst miss in 95 of 100 sets', () => {
  const sets = caseNumbers(400).map(simulated);
  const within = sets.filter(({ truly, utmost }) => truly <= utmost + 1e-9);
  expect(within.length / sets.length).toBeGreaterThanOrEqual(0.95);
  // a bound that nothing comes near would say nothing
  const near = sets.filter(({ truly, utmost }) => truly > utmost - 2 * HALF_STEP);
  expect(near.length / sets.length).toBeGreaterThan(0.5);
});
