import { describe, expect, test } from 'vitest';
import { alikeHeads } from '../../../../src/exposure/balance/heads/alike';
import { type Balanced, balanceHeads, MOST_HEADS } from '../../../../src/exposure/balance/heads/balanceHeads';
import {
  type Band,
  bandOf,
  belowReading,
  type MeteredPoint,
  NO_LIGHT,
} from '../../../../src/exposure/balance/heads/bands';
import { finished } from '../../../../src/exposure/balance/heads/search';
import type { Head } from '../../../../src/exposure/balance/heads/settings';
import { isFail } from '../../../../src/exposure/core/result';

const HEAD: Head = {
  metered: 100, power: 100, pops: 1, least: 12.5, most: 400, step: 0.1, mostPops: 1, isLocked: false, mayGoOff: false,
}; // prettier-ignore
const head = (other: Partial<Head> = {}): Head => ({ ...HEAD, ...other });
const point = (
  target: number,
  lights: readonly number[],
  other: Partial<MeteredPoint> = {},
): MeteredPoint => ({
  target,
  tolerance: 0,
  kind: 'equal',
  heads: lights.map((reading) => bandOf(reading, 0.05)),
  ambient: NO_LIGHT,
  ...other,
});
function balanced(points: readonly MeteredPoint[], heads: readonly Head[]): Balanced {
  const answer = finished(balanceHeads(points, heads));
  if (isFail(answer)) throw new Error(answer.message);
  return answer;
}
const powers = ({ after }: Balanced): number[] => after.heads.map(({ power }) => power);

describe('sums worked by hand', () => {
  test('one head a stop under gives twice the power', () => {
    // f/8 at 100 Ws; f/11.31 is a stop more: 200 Ws
    const answer = balanced([point(8 * Math.SQRT2, [8])], [head()]);
    expect(powers(answer)[0]).toBeCloseTo(200, 9);
    expect(answer.after.points[0]?.reading).toBeCloseTo(8 * Math.SQRT2, 9);
    expect(answer.after.worst).toBeCloseTo(0, 9);
    // each reading is rounded by up to half a tenth
    expect(answer.after.utmost).toBeCloseTo(0.05, 9);
  });

  test('a limit says how much light it takes, in pops too, and what is gained', () => {
    // f/8 at 100 Ws, wanted f/22.63: three stops, 800 Ws. At most 400 Ws, a stop short: twice the light, or 2 pops
    const answer = balanced([point(8 * 2 ** 1.5, [8])], [head()]);
    expect(powers(answer)[0]).toBe(400);
    expect(answer.after.worst).toBeCloseTo(1, 9);
    const [limit] = answer.limits;
    expect(limit).toMatchObject({ head: 0, at: 'most', pops: 2 });
    // half a tenth of the stop is what the readings leave open, and a hundredth is spared
    expect(limit?.stops).toBeGreaterThan(0.93);
    expect(limit?.stops).toBeLessThan(1);
    expect(limit?.gains).toBeCloseTo(0.95, 2);
    expect(answer.isShown).toBe(true);
  });

  test('pops are taken where the power does not reach, and no more than are needed', () => {
    const answer = balanced([point(8 * 2 ** 1.5, [8])], [head({ mostPops: 8 })]);
    expect(answer.after.heads[0]).toMatchObject({ pops: 2 });
    expect(answer.after.heads[0]?.power).toBeCloseTo(400, 9);
    // 100 to 200 Ws is in reach: one pop
    expect(balanced([point(8 * Math.SQRT2, [8])], [head({ mostPops: 8 })]).after.heads[0]?.pops).toBe(1);
  });

  test('at its least, and locked, are told apart', () => {
    // three stops down are 12.5 Ws; wanted four
    const least = balanced([point(2, [8])], [head()]);
    expect(least.limits[0]).toMatchObject({ at: 'least', pops: undefined });
    expect(least.limits[0]?.stops).toBeLessThan(-0.9);
    const locked = balanced([point(16, [8])], [head({ isLocked: true })]);
    expect(locked.isLeft).toBe(true);
    expect(locked.limits[0]).toMatchObject({ at: 'locked' });
  });

  test('at least, at most and ignore', () => {
    // f/8 now; at least f/5.6 and at most f/11 are met as they are
    const [kept, ignored] = [
      [point(5.6, [8], { kind: 'at least' }), point(11, [8], { kind: 'at most' })],
      [point(8, [8]), point(64, [8], { kind: 'ignore' })],
    ] as const;
    for (const points of [kept, ignored]) {
      const answer = balanced(points, [head()]);
      expect(answer.isLeft).toBe(true);
      expect(answer.after.worst).toBe(0);
    }
    // at least f/11.31, a stop more
    expect(powers(balanced([point(8 * Math.SQRT2, [8], { kind: 'at least' })], [head()]))[0]).toBeGreaterThan(
      180,
    );
  });

  test('ambient light counts, and what is open of a reading is no reason to turn', () => {
    // f/8 and f/8 of ambient are f/11.31 together
    const ambient = bandOf(8, 0.05);
    expect(balanced([point(8 * Math.SQRT2, [8], { ambient })], [head()]).isLeft).toBe(true);
    // a twentieth of a stop is half the meter's step; a tenth is more
    expect(balanced([point(8 * 2 ** 0.024, [8])], [head()]).isLeft).toBe(true);
    expect(balanced([point(8 * 2 ** 0.1, [8])], [head()]).isLeft).toBe(false);
  });

  test('below what the meter reads is anything from nothing on', () => {
    const answer = balanced(
      [point(8, [8], { heads: [bandOf(8, 0), belowReading(4)] }), point(5.6, [4, 4])],
      [head({ isLocked: true }), head({ isLocked: true })],
    );
    // 64 and from 0 to 16: likely 72, and up to 80
    expect(answer.before.points[0]?.reading).toBeCloseTo(Math.sqrt(72), 9);
    expect(answer.before.points[0]?.mayBeOver).toBeCloseTo(Math.log2(80 / 72), 9);
    expect(answer.before.points[0]?.mayBeUnder).toBeCloseTo(Math.log2(72 / 64), 9);
  });

  test('from a reading of all light, only what is changed is unsure', () => {
    // f/8 with 0.2 stop open, and all together metered as f/8 to half a tenth
    const checked = { heads: [bandOf(8, 0.2)], check: bandOf(8, 0.05) };
    const answer = balanced([point(8 * Math.SQRT2, [8], checked)], [head()]);
    expect(powers(answer)[0]).toBeCloseTo(200, 9);
    // 64·2^0.05 + 64·2^0.2 of 128
    expect(answer.after.points[0]?.mayBeOver).toBeCloseTo(Math.log2((2 ** 0.05 + 2 ** 0.2) / 2), 9);
  });

  test('a head that may go off does so only where that brings the points nearer', () => {
    // two heads, each f/8 at one point alone; the second is too much at its least: f/2.83 against f/1
    const points = [point(8, [8, 0.01]), point(1, [0.01, 8])];
    expect(powers(balanced(points, [head(), head()]))[1]).toBeCloseTo(12.5, 9);
    const dark = [point(8, [8, 0.01]), point(0.2, [0.01, 8], { kind: 'at most' })];
    expect(powers(balanced(dark, [head(), head({ mayGoOff: true })]))[1]).toBe(0);
  });
});

test('heads whose light falls alike are named, at two points or more', () => {
  const two = [point(8, [8, 4]), point(8, [11, 5.5])];
  expect(alikeHeads(two)).toEqual([[0, 1]]);
  // a tenth of a stop apart at two points: rounding may do that; a half is more
  expect(alikeHeads([point(8, [8, 4]), point(8, [8 * 2 ** 0.1, 4])])).toEqual([[0, 1]]);
  expect(alikeHeads([point(8, [8, 4]), point(8, [8 * 2 ** 0.25, 4])])).toEqual([]);
  expect(alikeHeads(two.slice(0, 1))).toEqual([]);
  // a point that neither lights tells nothing of them; one that the first alone lights tells them apart
  const at = (...heads: readonly Band[]): MeteredPoint => point(8, [], { heads });
  const lit = bandOf(8, 0.05);
  expect(alikeHeads([at(lit, lit), at(lit, lit), at(NO_LIGHT, NO_LIGHT)])).toEqual([[0, 1]]);
  expect(alikeHeads([at(lit, lit), at(lit, lit), at(lit, NO_LIGHT)])).toEqual([]);
});

test('too much at once, and nothing wanted, are refused in words', () => {
  const many = (count: number) => Array.from({ length: count }, () => head());
  const said = (points: readonly MeteredPoint[], heads: readonly Head[]): string => {
    const answer = finished(balanceHeads(points, heads));
    return isFail(answer) ? answer.message : '';
  };
  expect(
    said(
      Array.from({ length: 40 }, () => point(8, [8])),
      many(1),
    ),
  ).toContain('not 1 and 40');
  expect(
    said(
      [
        point(
          8,
          Array.from({ length: 13 }, () => 8),
        ),
      ],
      many(MOST_HEADS + 1),
    ),
  ).toContain('not 13 and 1');
  expect(said([point(8, [8], { kind: 'ignore' })], many(1))).toContain('Every point is ignored');
});
