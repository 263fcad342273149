import { describe, expect, test } from 'vitest';
import { FULL, runs, seedOf } from '../full';
import { mean, normal, range, withinRange, withinRangeOf } from './chance';
import { templateOf } from './support';

/** What chance does by itself: how far apart even light seems at so many places, as a multiple of what pops vary by. */
const table = templateOf('copy-evenness').blocks.find(
  (block) => block.kind === 'table' && block.id === 'Chance',
);
const POINTS = new Map(
  (table?.kind === 'table' ? table.rows : []).map(([places, point, few]) => [
    Number(places),
    { point: Number(point), few: Number(few) },
  ]),
);
function pointOf(places: number) {
  const found = POINTS.get(places);
  if (!found) throw new Error(`The sheet has no point for ${places} places.`);
  return found;
}
/** As the sheet has it where the list itself tells the deviation. */
const pointFor = (places: number, freedom: number): number =>
  pointOf(places).point + pointOf(places).few / (freedom - 0.9);

test('the integral says what is known of the range', () => {
  // two values differ by √2 times a normal one: 1.959964 × √2 = 2.771808
  expect(withinRange(2, 2.771808)).toBeCloseTo(0.95, 5);
  // SciPy 1.17.1, studentized_range.ppf(0.95, k, ν); for 9 values tables print 4.39, and 5.60 with 9 degrees of freedom
  expect(withinRange(3, 3.3145)).toBeCloseTo(0.95, 4);
  expect(withinRange(9, 4.3865)).toBeCloseTo(0.95, 4);
  expect(withinRange(25, 5.173)).toBeCloseTo(0.95, 4);
  expect(withinRangeOf(9, 5.595, 9)).toBeCloseTo(0.95, 3);
  expect(withinRangeOf(25, 5.776, 25)).toBeCloseTo(0.95, 3);
  expect(withinRangeOf(2, 3.635, 5)).toBeCloseTo(0.95, 3);
});

describe('the points of the sheet', () => {
  test('are for two places and for every number of them that a grid with blank corners can have', () => {
    expect([...POINTS.keys()]).toEqual([2, 5, 6, 7, 8, 9, 21, 22, 23, 24, 25]);
  });
  test.each([...POINTS])('of %i places is the one of 95 %%, rounded up to a tenth', (places, { point }) => {
    expect(withinRange(places, point)).toBeGreaterThanOrEqual(0.95);
    expect(withinRange(places, point - 0.1)).toBeLessThan(0.95);
  });
  test('and with what few repeats add it is never less, and little more', () => {
    for (const places of FULL ? POINTS.keys() : [2, 9, 25])
      for (const freedom of FULL ? [2, 3, 5, 9, 16, 25, 50, 100] : [2, 9, 25]) {
        const kept = withinRangeOf(places, pointFor(places, freedom), freedom);
        expect(kept, `${places} places, ${freedom}`).toBeGreaterThanOrEqual(0.95);
        expect(kept, `${places} places, ${freedom}`).toBeLessThan(0.963);
      }
  });
});

/** How many of so many even fields of pure chance, of n pops each, are called uneven beyond a limit of nothing. */
function calledBeyond(places: number, pops: number, point: number | 'of the list', seed: number): number {
  const draw = normal(seed);
  const fields = runs(20_000);
  let beyond = 0;
  for (let i = 0; i < fields; i++) {
    const field = Array.from({ length: places }, () => Array.from({ length: pops }, draw));
    const means = field.map(mean);
    const squares = field.flatMap((pop, p) => pop.map((each) => (each - (means[p] as number)) ** 2));
    const freedom = places * (pops - 1);
    const scatter = Math.sqrt(squares.reduce((a, b) => a + b, 0) / freedom);
    const allowed = point === 'of the list' ? pointFor(places, freedom) * scatter : point;
    if (range(means) > allowed / Math.sqrt(pops)) beyond++;
  }
  return beyond / fields;
}

describe('even light of which nothing but chance is seen', () => {
  /** A twentieth, and four deviations of a share of so many draws. */
  const TWENTIETH = 0.05 + 4 * Math.sqrt((0.05 * 0.95) / runs(20_000));
  test.each([9, 25])('at %i places is beyond the limit once in twenty at most', (places) => {
    const { point } = pointOf(places);
    expect(calledBeyond(places, 1, point, seedOf(places))).toBeLessThan(TWENTIETH);
    expect(calledBeyond(places, 2, 'of the list', seedOf(places))).toBeLessThan(TWENTIETH);
    // with the 2.8 of two readings it would be most of the time
    expect(calledBeyond(places, 1, 2.8, seedOf(places))).toBeGreaterThan(0.5);
    // and with the point for a deviation that is known, where two pops a place are all that tells it, more than once in ten
    const known = pointOf(places).point;
    const scattered = pointFor(places, places);
    expect(withinRangeOf(places, known, places)).toBeLessThan(0.9);
    expect(withinRangeOf(places, scattered, places)).toBeGreaterThan(0.95);
  });
});

test('light at the limit, half of it bright and half dark, is called beyond more seldom still', () => {
  const draw = normal(seedOf(7));
  const fields = runs(20_000);
  const beyond = Array.from({ length: fields }, () => {
    const field = Array.from({ length: 25 }, (_, p) => draw() + (p < 12 ? 20 : 0));
    return range(field) - 20 > pointOf(25).point;
  }).filter(Boolean).length;
  expect(beyond / fields).toBeLessThan(0.05);
});

test('light just beyond the limit between two places is called within once in forty at most', () => {
  const draw = normal(seedOf(8));
  const fields = runs(20_000);
  // one place brighter and one darker than 23 that have no say: chance at these two alone can hide how far apart they are
  const within = Array.from({ length: fields }, () => {
    const field = Array.from({ length: 25 }, (_, p) => draw() + (p === 0 ? 10 : p === 1 ? -10 : 0));
    return 20 - range(field) > pointOf(2).point;
  }).filter(Boolean).length;
  expect(within / fields).toBeLessThan(0.025 + 4 * Math.sqrt((0.025 * 0.975) / fields));
  // ask for no more than that: it is not much less either
  expect(within / fields).toBeGreaterThan(0.01);
});
