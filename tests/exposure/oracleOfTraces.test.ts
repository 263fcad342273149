import { Decimal } from 'decimal.js';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../full';
import { traceNote } from '../../src/catalogue/traceNote';
import { traceInside, traceTail } from '../../src/exposure/trace/traceShares';
import { traceClip, traceShutter } from '../../src/exposure/trace/traceShutter';
import { traceTable } from '../../src/exposure/trace/traceTable';
import { traceTime } from '../../src/exposure/trace/traceTime';
import { args, D, decades, log2, oracle, two } from './decimal';
import { value } from './support';

/**
 * Recorded trapezoids, whose durations and light are known in closed form, worked out in decimal arithmetic of 50 digits. The
 * corners are the samples, so that straight lines between them are the flash itself; `npm run accuracy -- trace` has the
 * shapes that are curved, and those that noise covers.
 */
interface Trapezoid {
  readonly up: number;
  readonly flat: number;
  readonly down: number;
  readonly height: number;
}
const part = decades(-1, 1);
const trapezoid: fc.Arbitrary<Trapezoid> = fc.record({
  up: part,
  flat: part,
  down: part,
  height: decades(-2, 4),
});
const level = fc.double({ min: 0.03, max: 0.999, noNaN: true });

/** Its corners; the dark before and after it is a sample each. */
const recorded = ({ up, flat, down, height }: Trapezoid): [number[], number[]] => [
  [0, 1, 1 + up, 1 + up + flat, 1 + up + flat + down, 3 + up + flat + down],
  [0, 0, height, height, 0, 0],
];
/** What the recorded times make of its parts: they are rounded sums. */
function parts(shape: Trapezoid): { up: Decimal; flat: Decimal; down: Decimal; total: Decimal } {
  const [, start, top, edge, end] = recorded(shape)[0].map((t) => D(t)) as [
    Decimal,
    Decimal,
    Decimal,
    Decimal,
    Decimal,
  ];
  const [up, flat, down] = [top.minus(start), edge.minus(top), end.minus(edge)];
  return { up, flat, down, total: up.plus(down).div(2).plus(flat) };
}
const base = 0;

describe('a recorded trapezoid', () => {
  /** Light below a level on one slope, as a share of all. */
  const below = (shape: Trapezoid, l: number, slope: 'up' | 'down'): Decimal =>
    D(l).pow(2).div(2).times(parts(shape)[slope]).div(parts(shape).total);
  const lasts = (shape: Trapezoid, l: number): Decimal => {
    const { up, flat, down } = parts(shape);
    return up.plus(down).times(D(1).minus(l)).plus(flat);
  };

  oracle(
    'lasts flat + (up + down)·(1 − level) at a level',
    args(trapezoid, level),
    (shape, l) => traceTime(...recorded(shape), l, base),
    lasts,
  );
  oracle(
    'has 1 − level²·(up + down) / (2·all) of its light inside that',
    args(trapezoid, level),
    (shape, l) => traceInside(...recorded(shape), l, base),
    (shape, l) =>
      D(1)
        .minus(below(shape, l, 'up'))
        .minus(below(shape, l, 'down')),
  );
  oracle(
    'has level²·down / (2·all) of its light after that',
    args(trapezoid, level),
    (shape, l) => traceTail(...recorded(shape), l, base),
    (shape, l) => ({ of: below(shape, l, 'down'), relative: 1e-10 }),
  );
  const cells = ['duration', 'before', 'inside', 'after'] as const;
  oracle(
    'has all of that in a table',
    args(trapezoid, fc.integer({ min: 1, max: 9 }), fc.integer({ min: 0, max: 3 })),
    (shape, tenths, cell) =>
      value((value(traceTable(...recorded(shape), base))[tenths - 1] as number[])[cell] as number),
    (shape, tenths, cell) => {
      const l = tenths / 10;
      const before = below(shape, l, 'up');
      const after = below(shape, l, 'down');
      const wanted = { duration: lasts(shape, l), before, inside: D(1).minus(before).minus(after), after };
      return { of: wanted[cells[cell] as (typeof cells)[number]], relative: 1e-10 };
    },
  );

  /** The first rise: through 2 % of the height. */
  const RISE = new Decimal('0.02');
  /** Openings that close on the way down, by the share of the fall that is over. */
  const closes = fc.double({ min: 0.01, max: 0.99, noNaN: true });
  const opening = (shape: Trapezoid, over: number): Decimal => {
    const { up, flat, down } = parts(shape);
    return up.times(D(1).minus(RISE)).plus(flat).plus(down.times(over));
  };
  /** Share of its light that is left when so much of the fall is over. */
  const left = (shape: Trapezoid, over: number): Decimal => {
    const { down, total } = parts(shape);
    return D(1).minus(over).pow(2).times(down).div(2).div(total);
  };
  oracle(
    'loses −log2(1 − what is left) to a shutter that closes on its way down',
    args(trapezoid, closes),
    (shape, over) => traceClip(...recorded(shape), opening(shape, over).toNumber(), 0, base),
    (shape, over) => {
      const rest = left(shape, over);
      // what the opening and its times are rounded by is a part of the time that is left of the fall
      return { of: log2(D(1).minus(rest)).neg(), relative: 1e-9 };
    },
  );
  oracle(
    'passes all but a loss in an opening that closes where 1 − 2^(−loss) of it is left',
    args(trapezoid, closes),
    (shape, over) =>
      traceShutter(
        ...recorded(shape),
        log2(D(1).minus(left(shape, over)))
          .neg()
          .toNumber(),
        0,
        base,
      ),
    (shape, over) => ({ of: opening(shape, over), relative: 1e-9 }),
  );
  oracle(
    'passes all but a loss of any size: √(2·rest·down) before its end',
    args(trapezoid, fc.double({ min: 1e-4, max: 0.1, noNaN: true })),
    (shape, loss) => traceShutter(...recorded({ ...shape, down: shape.down + 1 }), loss, 0, base),
    (shape, loss) => {
      const { up, flat, down, total } = parts({ ...shape, down: shape.down + 1 });
      const rest = D(1)
        .minus(two(D(loss).neg()))
        .times(total);
      // on the fall, or on the flat before it where more than the fall has is lost
      const back = rest.lessThan(down.div(2)) ? rest.times(2).times(down).sqrt() : rest.plus(down.div(2));
      return { of: up.times(D(1).minus(RISE)).plus(flat).plus(down).minus(back), relative: 1e-9 };
    },
  );

  it('is noted to be flat over flat / (flat + (up + down) / 2) of t0.5, to two digits, and to have few samples', () => {
    fc.assert(
      fc.property(trapezoid, (shape) => {
        const { flat, total } = parts(shape);
        const share = flat.div(total);
        // near a tenth, and near the middle between two texts, either may be said
        fc.pre(share.minus('0.1').abs().greaterThan(1e-6));
        const percent = share.times(100);
        const scale = new Decimal(10).pow(1 - percent.log().floor().toNumber());
        fc.pre(percent.times(scale).mod(1).minus('0.5').abs().greaterThan(1e-6));
        const flatTop = `The top is flat over ${percent.toSignificantDigits(2).toNumber()} % of the duration at 0.5`;
        const note = value(traceNote(...recorded(shape), base));
        expect(note).toContain('Only 2 samples lie inside the duration at 0.5');
        if (share.greaterThan('0.1')) expect(note).toContain(flatTop);
        else expect(note).not.toContain('flat');
      }),
      trials(2027, 120),
    );
  });
});
