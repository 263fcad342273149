import { expect, test } from 'vitest';
import { balanceHeads } from '../../../../src/exposure/balance/heads/balanceHeads';
import { finished } from '../../../../src/exposure/balance/heads/search';
import { isFail } from '../../../../src/exposure/core/result';
import { caseNumbers } from '../../../full';
import { type Highs, highsLibrary } from '../highs';
import { type Drawn, drawLighting, everySetting, worstExcess } from './drawn';

/**
 * Whether any setting has no more than an excess, as a general library for integer programmes has it: for each head one of
 * its settings is chosen, a variable that is 0 or 1 for each.
 */
function isInReach(highs: Highs, { points, heads }: Drawn, excess: number): boolean {
  const lists = heads.map(everySetting);
  const name = (h: number, i: number): string => `x${h}_${i}`;
  const light = (p: number): string =>
    lists
      .flatMap((list, h) =>
        list.map(({ power, pops }, i) => {
          const { heads: lights = [], target = NaN } = points[p] ?? {};
          const share =
            ((lights[h]?.likely ?? NaN) * power * pops) / (heads[h]?.metered ?? NaN) / target ** 2;
          return `+ ${share} ${name(h, i)}`;
        }),
      )
      .join('\n ');
  const rows = points.flatMap(({ kind, tolerance, ambient, target }, p) => {
    const left = (stops: number): number => 2 ** stops - ambient.likely / target ** 2;
    return [
      ...(kind === 'at least' ? [] : [`o${p}: ${light(p)} <= ${left(tolerance + excess)}`]),
      ...(kind === 'at most' ? [] : [`u${p}: ${light(p)} >= ${left(-tolerance - excess)}`]),
    ];
  });
  const ones = lists.map((list, h) => `c${h}: ${list.map((_, i) => `+ ${name(h, i)}`).join('\n ')} = 1`);
  const all = lists.flatMap((list, h) => list.map((_, i) => name(h, i))).join('\n ');
  const solved = highs.solve(
    `Minimize\n obj: 0 x0_0\nSubject To\n ${[...rows, ...ones].join('\n ')}\nBinary\n ${all}\nEnd\n`,
  );
  if (solved.Status !== 'Optimal' && solved.Status !== 'Infeasible')
    throw new Error(`the library came to ${solved.Status}`);
  return solved.Status === 'Optimal';
}

test('no setting is nearer than the one found by a hundredth, of six heads with up to eight pops at eight points', async () => {
  const highs = await highsLibrary();
  let beyond = 0;
  for (const seed of caseNumbers(50)) {
    const drawn = drawLighting(seed, { heads: 6, points: 8, pops: 8, settings: 40 });
    const answer = finished(balanceHeads(drawn.points, drawn.heads));
    if (isFail(answer)) throw new Error(answer.message);
    const excess = worstExcess(drawn, answer.after.heads);
    expect(answer.after.excess, `case ${seed}`).toBeCloseTo(excess, 9);
    if (excess < 0.01) continue;
    beyond++;
    expect(isInReach(highs, drawn, excess + 1e-6), `case ${seed}`).toBe(true);
    expect(isInReach(highs, drawn, excess - 0.01), `case ${seed}`).toBe(false);
  }
  expect(beyond).toBeGreaterThan(10);
});
