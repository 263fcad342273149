import { describe, expect, it } from 'vitest';
import { evenest } from '../../../src/exposure/balance/evenest';
import { changes, lightAtPoints, type Lighting, worstMiss } from '../../../src/exposure/balance/lighting';
import { value } from '../support';

/** What counts as good as the best, in stops, by the specification. */
const AS_GOOD = 0.005;

/** Heads at the same power now, that all go down to 1/64 and stay lit, but for what is said. */
const lighting = (
  reach: Lighting['reach'],
  now: Lighting['now'],
  more: Partial<Lighting> = {},
): Lighting => ({
  reach,
  now,
  least: now.map(() => 1 / 64),
  mayGoOff: now.map(() => false),
  ...more,
});
const found = (given: Lighting) => value(evenest(given));
/** Shares in stops below the most, to what the search leaves open; off is Infinity. */
function expectStops(shares: readonly number[], stops: readonly number[]): void {
  expect(shares).toHaveLength(stops.length);
  shares.forEach((share, h) => {
    if (stops[h] === Infinity) expect(share).toBe(0);
    else expect(-Math.log2(share), `head ${h + 1}`).toBeCloseTo(stops[h] as number, 6);
  });
}

describe('light in shares of what is wanted', () => {
  const reach = [
    [1, 2],
    [0.5, 0],
  ];
  it('adds, head by head', () => {
    expect(lightAtPoints(reach, [0.5, 0.25])).toEqual([1, 0.25]);
  });

  it('misses by the stops of the point that is farthest off, over or under', () => {
    expect(worstMiss(reach, [0.5, 0.25])).toBe(2);
    expect(worstMiss(reach, [2, 1])).toBe(2);
    expect(worstMiss([[1]], [1])).toBe(0);
  });

  it('changes by stops up and down alike, and heads that went off do not count', () => {
    expect(changes([0.5, 0.5, 0.5], [0.125, 1, 0])).toEqual({ largest: 2, sum: 3 });
    expect(changes([0.5, 0.25], [0.5, 1])).toEqual({ largest: 2, sum: 2 });
    expect(changes([0.5], [0])).toEqual({ largest: 0, sum: 0 });
  });
});

describe('the evenest powers of one head', () => {
  it('give the light wanted, but for 0.005 stop that is spared of the way there', () => {
    const down = found(lighting([[2]], [1]));
    expect(down.error).toBeCloseTo(0, 8);
    expectStops(down.shares, [1 - AS_GOOD]);
    const up = found(lighting([[2]], [0.125]));
    expect(up.error).toBeCloseTo(0, 8);
    expectStops(up.shares, [1 + AS_GOOD]);
  });

  it('lie half way between two points, however far it is from there to what is wanted', () => {
    for (const stops of [0.2, 1, 3, 12]) {
      const { error, shares } = found(lighting([[2 * 2 ** stops], [2]], [0.5], { least: [2 ** -20] }));
      expect(error).toBeCloseTo(stops / 2, 8);
      expectStops(shares, [1 + stops / 2 - AS_GOOD]);
    }
  });

  it('stay as near as can be where the light is out of reach, by the stops that are wanting', () => {
    const short = found(lighting([[0.25]], [0.5]));
    expect(short.error).toBeCloseTo(2, 8);
    expectStops(short.shares, [AS_GOOD]);
    const over = found(lighting([[8]], [1], { least: [0.25] }));
    expect(over.error).toBeCloseTo(1, 8);
    expectStops(over.shares, [2 - AS_GOOD]);
    const far = found(lighting([[2 ** -25]], [1]));
    expect(far.error).toBeCloseTo(25, 8);
    expect(far.shares).toEqual([1]);
  });

  it('do not move where the light is within 0.005 stop of the best', () => {
    expect(found(lighting([[2 ** 1.004]], [0.5]))).toEqual({ error: 0, shares: [0.5] });
    expect(found(lighting([[2 ** 0.996]], [0.5])).shares).toEqual([0.5]);
    expectStops(found(lighting([[2 ** 1.006]], [0.5])).shares, [1.001]);
  });
});

describe('the evenest powers of several heads', () => {
  it('move all alike where that is the smallest largest change', () => {
    const { error, shares } = found(lighting([[3, 1]], [0.125, 0.125]));
    expect(error).toBeCloseTo(0, 8);
    expectStops(shares, [2 + AS_GOOD, 2 + AS_GOOD]);
    // half a stop is too much for the first, which ends at a quarter: the second makes good for it
    const bound = found(lighting([[1, 1]], [2 ** -0.5, 2 ** -0.5], { least: [2 ** -0.75, 2 ** -6] }));
    expectStops(bound.shares, [0.75, -Math.log2(2 ** AS_GOOD - 2 ** -0.75)]);
  });

  it('bring two points to what is wanted by a head each', () => {
    const given = lighting([[4, 1], [1, 4]], [1, 0.125]); // prettier-ignore
    const { error, shares } = found(given);
    expect(error).toBeCloseTo(0, 8);
    // 4x + y = 1 = x + 4y at a fifth each; the first, with the farther way, is spared as much as both points allow:
    // 4x + y = 2^0.005 at the most, x + 4y = 2^−0.005 at the least
    expectStops(shares, [-Math.log2((4 * 2 ** AS_GOOD - 2 ** -AS_GOOD) / 15), -Math.log2((4 * 2 ** -AS_GOOD - 2 ** AS_GOOD) / 15)]); // prettier-ignore
  });

  it('move none that is not wanted, and of two that go up the one that gives more light for its stops', () => {
    // The first head must rise two stops. Of the others, half of what is wanted now, the second gives three times as much.
    const { shares } = found(lighting([[1, 0, 0], [0, 1.5, 0.5]], [0.25, 0.25, 0.25])); // prettier-ignore
    expectStops(shares, [AS_GOOD, -Math.log2((2 ** -AS_GOOD - 0.125) / 1.5), 2]);
    expect(shares[2]).toBe(0.25);
    const other = found(lighting([[1, 0, 0], [0, 0.5, 1.5]], [0.25, 0.25, 0.25])); // prettier-ignore
    expectStops(other.shares, [AS_GOOD, 2, -Math.log2((2 ** -AS_GOOD - 0.125) / 1.5)]);
  });
});

describe('the evenest powers at the ends of what is reckoned with', () => {
  it('are found for heads that bring less than a thousand-millionth of the light wanted', () => {
    const { error, shares } = found(lighting([[2 ** -30, 2 ** -30]], [0.5, 0.5]));
    expect(error).toBeCloseTo(29, 8);
    expectStops(shares, [AS_GOOD, AS_GOOD]);
  });

  it('move alike the whole way up, and the whole way down', () => {
    // four times the light, and two stops for each at the most
    const up = found(lighting([[0.5, 0.5]], [0.25, 0.25], { least: [0.25, 0.25] }));
    expectStops(up.shares, [AS_GOOD, AS_GOOD]);
    const less = found(lighting([[0.75, 0.25]], [0.25, 0.25], { least: [0.25, 0.25] }));
    expectStops(less.shares, [AS_GOOD, AS_GOOD]);
    const part = found(lighting([[1, 1]], [0.25, 0.25], { least: [0.25, 0.25] }));
    expectStops(part.shares, [1 + AS_GOOD, 1 + AS_GOOD]);
    const down = found(lighting([[1, 1]], [1, 1]));
    expectStops(down.shares, [1 - AS_GOOD, 1 - AS_GOOD]);
  });
});

describe('a small sum of changes', () => {
  // In each, the first head lights a point of its own that it alone can bring to what is wanted, and so says how far the
  // others may go.
  const alone = (reach: number, others: readonly number[]): readonly (readonly number[])[] => [
    [reach, 0, 0],
    [0, ...others],
  ];

  it('leaves out a head that gives more light at first, and then no more, where the other can do it all', () => {
    // The second gives 0.2 of the light and doubles at the most, the third 0.19: 0.61 more is 2.07 stops of the third
    // alone, but one and 1.66 stops with both.
    const { shares } = found(lighting(alone(1, [0.4, 1.52]), [0.125, 0.5, 0.125]));
    expectStops(shares, [AS_GOOD, 1, -Math.log2((2 ** -AS_GOOD - 0.2) / 1.52)]);
  });

  it('goes by stops, not by shares', () => {
    // 0.6 and 0.1 of the light: 0.3 more is 0.58 stop of the second, and two stops of the third
    const { shares } = found(lighting(alone(1, [1.2, 1.6]), [0.125, 0.5, 0.0625]));
    expectStops(shares, [AS_GOOD, -Math.log2((2 ** -AS_GOOD - 0.1) / 1.2), 4]);
  });

  it('leaves a head at full power that gives too little even so', () => {
    // the second gives four fifths of what its point wants: as much may the first stay away
    const { shares } = found(lighting([[1, 0], [0, 0.8]], [0.125, 1])); // prettier-ignore
    expectStops(shares, [AS_GOOD - Math.log2(0.8), 0]);
  });

  it('turns one head down the little that is left to it, where that spares another more', () => {
    // The second gives four fifths at the most, and may give 0.005 stop less. Both together give 1.5 of what the last point
    // wants, and may give 1.25 and 0.005 stop: what the second gives less, the third, which stands lower, gives more.
    const { shares } = found(lighting([[1, 0, 0], [0, 0.8, 0], [0, 0, 1.6], [0, 0.75, 0.75]], [0.125, 1, 1])); // prettier-ignore
    expectStops(shares, [
      AS_GOOD - Math.log2(0.8),
      AS_GOOD,
      -Math.log2((1.25 * 2 ** AS_GOOD) / 0.75 - 2 ** -AS_GOOD),
    ]);
  });

  it('uses both ends of what counts as good: one point a little under, the other a little over', () => {
    // 2.3988 stops for both, where 2.4014 would leave both points a little under
    const { shares } = found(lighting([[1, 0, 0], [0, 8 / 15, 16 / 15], [0, 1, 0.75]], [0.125, 0.25, 0.25])); // prettier-ignore
    const third = (2 ** AS_GOOD - (8 / 15) * 2 ** -AS_GOOD) / (2 / 3);
    expectStops(shares, [AS_GOOD, -Math.log2(2 ** -AS_GOOD - 0.75 * third), -Math.log2(third)]);
  });

  it('turns up the one head that has the more light, and not the other down', () => {
    // the two points are 14/15 to 3/4 apart, whatever the powers
    const error = Math.log2(14 / 15 / 0.75) / 2;
    const { shares } = found(lighting([[1, 0, 0], [0, 14 / 15, 14 / 15], [0, 0.75, 0.75]], [0.125, 0.5, 0.25])); // prettier-ignore
    expectStops(shares, [error + AS_GOOD, -Math.log2(2 ** -(error + AS_GOOD) / 0.75 - 0.25), 2]);
  });

  it('turns the one head alone that can do it all with the least stops, of three', () => {
    const light = 2 ** -AS_GOOD;
    const of = (reach: readonly number[], now: readonly number[]) =>
      found(lighting([[1, 0, 0, 0], [0, ...reach]], [0.125, ...now])).shares; // prettier-ignore
    // 0.1, 0.2 and 0.1875 of the light: 1.89 stops of the last, where the second can only double
    expectStops(of([0.8, 0.4, 0.75], [0.125, 0.5, 0.25]), [AS_GOOD, 3, 1, -Math.log2((light - 0.3) / 0.75)]);
    // 0.1875, 0.2 and 0.175 of the light: 1.73 stops of the first
    expectStops(of([0.75, 0.4, 0.35], [0.25, 0.5, 0.5]), [AS_GOOD, -Math.log2((light - 0.375) / 0.75), 1, 1]);
    // 0.8 and 0.85 of the light, and no more than 1 wanted: 2.06 stops less of the last, or 2.38 of the other
    expectStops(of([0, 0.8, 0.85], [0.5, 1, 1]), [AS_GOOD, 1, 0, -Math.log2((2 ** AS_GOOD - 0.8) / 0.85)]);
  });

  it('leaves one of three heads where two can do for two points, one under and the other over by what is allowed', () => {
    // 0.7·1/4 + 7/6·b + 7/15·c = 2^−0.005 and 0.75·1/4 + b/4 + 0.75·c = 2^0.005: 1.2896 stops, where both under would
    // be 1.2935
    const { shares } = found(lighting([[1, 0, 0, 0], [0, 0.7, 7 / 6, 7 / 15], [0, 0.75, 0.25, 0.75]], [0.125, 0.25, 0.25, 0.5])); // prettier-ignore
    const [under, over] = [2 ** -AS_GOOD - 0.175, 2 ** AS_GOOD - 0.1875];
    const part = (7 / 6) * 0.75 - (7 / 15) / 4; // prettier-ignore
    const third = (0.75 * under - (7 / 15) * over) / part;
    expectStops(shares, [AS_GOOD, 2, -Math.log2(third), -Math.log2(((7 / 6) * over - under / 4) / part)]);
  });

  it('takes none farther down than the largest change, nor to nothing', () => {
    // the others give two and one of the light wanted: with no more than a quarter of the second, half of the third is right
    const given = lighting(alone(4, [2, 1]), [1, 1, 1]);
    const { shares } = found(given);
    expectStops(shares, [2 - AS_GOOD, 2 - AS_GOOD, -Math.log2(2 ** AS_GOOD - 2 ** (AS_GOOD - 1))]);
  });
});

describe('the evenest powers with heads that may go off', () => {
  it('leave a head off that is too strong at its least, where it may, and light it where it may not', () => {
    const given = { least: [0.5, 1 / 64] };
    const stay = found(lighting([[4, 1]], [1, 0.5], given));
    expect(stay.error).toBeCloseTo(Math.log2(2 + 1 / 64), 8);
    const off = found(lighting([[4, 1]], [1, 0.5], { ...given, mayGoOff: [true, false] }));
    expect(off.error).toBeCloseTo(0, 8);
    expectStops(off.shares, [Infinity, AS_GOOD]);
    expect(found(lighting([[4, 1]], [1, 0.5], { ...given, mayGoOff: [false, true] })).error).toBeCloseTo(
      1,
      8,
    );
  });

  it('leave as few off as it takes, and of those the one that spares the others the way', () => {
    const may = { mayGoOff: [true, true, true] };
    // all may stay on
    const none = found(lighting([[1, 1, 1]], [0.25, 0.25, 0.25], may));
    expect(none.shares.every((share) => share > 0)).toBe(true);
    // Each gives half at its least: one must go off, and the two others stand at their least. Lit, the
    // second would have a stop to go.
    const least = [0.5, 0.5, 0.5];
    const one = found(lighting([[1, 1, 1]], [0.5, 1, 0.5], { ...may, least }));
    expect(one.error).toBeCloseTo(0, 8);
    expectStops(one.shares, [1, Infinity, 1]);
    // three quarters each: two must go off
    const two = found(lighting([[1.5, 1.5, 1.5]], [1, 0.5, 1], { ...may, least }));
    expect(two.error).toBeCloseTo(0, 8);
    expect(two.shares.filter((share) => share === 0)).toHaveLength(2);
    expectStops(two.shares, [Infinity, -Math.log2(2 ** -AS_GOOD / 1.5), Infinity]);
  });

  it('light a head within its range, not below it', () => {
    // one head alone cannot go off, and gives twice what is wanted at its least
    const one = found(lighting([[4]], [1], { least: [0.5], mayGoOff: [true] }));
    expect(one.error).toBeCloseTo(1, 8);
    expectStops(one.shares, [1 - AS_GOOD]);
    // With the first head off, half is wanting; with it at its least, 2 and a little are there, or 1.6 and a little.
    const given = { mayGoOff: [true, false] };
    const off = found(lighting([[4, 0.5]], [1, 1], { ...given, least: [0.5, 1 / 64] }));
    expect(off.error).toBeCloseTo(1, 8);
    expectStops(off.shares, [Infinity, 0]);
    const lit = found(lighting([[4, 0.5]], [1, 1], { ...given, least: [0.4, 1 / 64] }));
    expect(lit.error).toBeCloseTo(Math.log2(1.6 + 0.5 / 64), 8);
    expect(lit.shares[0]).toBeGreaterThan(0);
  });

  it('try each way where several heads would have to stand below their least', () => {
    // Each way is on or off: the errors of all eight are worked out one by one.
    const reach = [[3, 1.7, 0.9], [0.4, 2.6, 1.9], [1.1, 0.3, 2.2]]; // prettier-ignore
    for (const least of [
      [0.5, 0.5, 0.5],
      [0.9, 0.3, 0.6],
      [0.3, 0.8, 0.35],
      [0.6, 0.25, 0.9],
      [1, 1, 1],
    ])
      for (const points of [
        reach,
        reach.slice(0, 2),
        reach.slice(1),
        reach.map((row) => row.map((a) => a / 2)),
      ]) {
        const now = [1, 1, 1];
        // with every head on at a single power, or off
        const ways = [1, 2, 3, 4, 5, 6, 7].map((way) =>
          now.map((_, h) => (way & (1 << h) ? (least[h] as number) : 0)),
        );
        // each head's most is its least
        const fixed = points.map((row) => row.map((a, h) => a * (least[h] as number)));
        const best = Math.min(...ways.map((way) => worstMiss(points, way)));
        const came = found(lighting(fixed, now, { least: now, mayGoOff: [true, true, true] }));
        expect(came.error).toBeCloseTo(best, 8);
        expect(came.shares.every((share) => share === 0 || share === 1)).toBe(true);
      }
  });

  it('of two ways to leave one off, take that with the smaller change, whichever comes first', () => {
    // one of them must go up a stop, or the other down by 0.003 stop more than that
    const strong = 4 * 2 ** 0.003;
    const more = { least: [0.24, 0.24], mayGoOff: [true, true] };
    expectStops(found(lighting([[strong, 1]], [0.5, 0.5], more)).shares, [Infinity, AS_GOOD]);
    expectStops(found(lighting([[1, strong]], [0.5, 0.5], more)).shares, [AS_GOOD, Infinity]);
    // or by 0.003 stop less
    const weak = 4 * 2 ** -0.003;
    expectStops(found(lighting([[weak, 1]], [0.5, 0.5], more)).shares, [2 - AS_GOOD - 0.003, Infinity]);
    expectStops(found(lighting([[1, weak]], [0.5, 0.5], more)).shares, [Infinity, 2 - AS_GOOD - 0.003]);
    // two that are alike: one of them
    const alike = found(lighting([[2, 2]], [0.5, 0.5], { least: [0.5, 0.5], mayGoOff: [true, true] }));
    expect([...alike.shares].sort()).toEqual([0, 0.5]);
  });

  it('leave none off for less than 0.005 stop, and one for more', () => {
    // the other head alone gives just what is wanted; the first is too much by some stops
    const off = (stops: number) => {
      const least = [2 ** stops - 1, 1];
      return found(lighting([[1, 1]], least, { least, mayGoOff: [true, false] }));
    };
    expect(off(0.0049).shares[0]).toBeGreaterThan(0);
    expect(off(0.0051).shares).toEqual([0, 1]);
  });
});
