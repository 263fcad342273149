import { describe, expect, it } from 'vitest';
import { isFail, type Result } from '../../../src/exposure/core/result';
import type { Pulse } from '../../../src/exposure/trace/pulse';
import { sharesWithin, spanAt } from '../../../src/exposure/trace/spanAtLevel';
import { lightAfter, tailOf, wholeLight, wholeWithShares } from '../../../src/exposure/trace/tail';
import { expectNear, refusal, value } from '../support';
import { pulseOf, signalFrom, signalOf } from './signals';

/** A pulse whose samples are two seconds apart from 10 s on, all of them its light, with what is told otherwise. */
const pulseFrom = (values: readonly number[], told: Partial<Pulse> = {}): Pulse =>
  pulseOf(signalOf(values, { times: values.map((_, i) => 10 + 2 * i) }), told);

/** Up in 8 s, down in 16 s. */
const TRIANGLE = [0, 0.25, 0.5, 0.75, 1, 0.875, 0.75, 0.625, 0.5, 0.375, 0.25, 0.125, 0];
const endsAt = (light: number): readonly number[] => TRIANGLE.slice(0, TRIANGLE.lastIndexOf(light) + 1);

/** Where noise is said to be, a parabola over eight times as much tells the crossing of a level: it errs by so little. */
const BY_FITS = 0.05;

/** Falls to 1/e in 2 s from 5 s on, where it rises at once. */
const decaying = (noise: number): Pulse =>
  pulseOf(
    signalFrom((t) => (t < 5 ? 0 : Math.exp((5 - t) / 2)), { from: 0, to: 45, count: 45_001 }),
    { noise, from: 5000, instant: true },
  );

describe('the tail that noise hides', () => {
  it('of an exponential goes on with its own decay time, from three times the noise', () => {
    for (const noise of [0.001, 0.01, 0.05]) {
      const tail = tailOf(decaying(noise));
      expectNear(tail?.level as number, 3 * noise);
      expectNear(tail?.decay as number, 2, BY_FITS);
      expectNear(tail?.end.time as number, 5 - 2 * Math.log(3 * noise), BY_FITS);
    }
  });

  it('goes on with the slope before it, of a straight fall as well, worked by hand', () => {
    // 16 s from 1 to 0. From 0.3 to 0.03, and where the noise is 0.06 from 0.18·e to 0.18: the light between two levels is
    // 8·(a² − b²), so that the decay time is 8·(a + b).
    for (const [noise, from, to] of [
      [0.01, 0.3, 0.03],
      [0.06, 0.18 * Math.E, 0.18],
    ] as const) {
      const fall = pulseOf(
        signalFrom((t) => 1 - t / 16, { to: 16, count: 1601 }),
        { noise },
      );
      expectNear(tailOf(fall)?.decay as number, 8 * (from + to), 1e-9);
    }
  });

  it('is none without noise, where the recording ends above it, or noise leaves no fall to tell it', () => {
    expect(tailOf(decaying(0))).toBeUndefined();
    expect(tailOf(pulseFrom(endsAt(0.25), { noise: 0.05 }))).toBeUndefined();
    // e times three times the noise are more than the height
    expect(tailOf(decaying(0.124))).toBeUndefined();
    expect(tailOf(decaying(0.12))).toBeDefined();
  });
});

/** All light of a pulse. */
function total(pulse: Pulse): Result<number> {
  const whole = wholeLight(pulse);
  return isFail(whole) ? whole : whole.total;
}

describe('all light of a pulse', () => {
  it('of an exponential is its height times its decay time, whatever noise hides of it', () => {
    for (const noise of [0, 0.001, 0.01, 0.05]) expectNear(value(total(decaying(noise))), 2, BY_FITS);
  });

  it('is what lies between its first and last sample', () => {
    expect(total(pulseFrom(TRIANGLE))).toBe(12);
    const pulse = pulseFrom([0.5, ...TRIANGLE, 0.5], { from: 1, to: 13 });
    expect(total(pulse)).toBe(12);
    expect(wholeLight(pulse)).toEqual({
      rise: { time: 12, cell: 1 },
      end: { time: 36, cell: 13 },
      carried: 0,
      decay: 0,
      total: 12,
    });
  });

  it('is told though the end is missing below a tenth, or below the noise', () => {
    // ends at a sixteenth, which half of the last 2 s is brighter by
    expect(total(pulseFrom([...TRIANGLE.slice(0, -1), 0.0625]))).toBe(12.0625);
    expect(refusal(total(pulseFrom(endsAt(0.125)))).message).toBe(
      `The trace never falls through 0.1 of its height: the recording ends too early.`,
    );
    // 2.5 × 0.06 is 0.15, through which it falls before it ends at an eighth. The straight fall from 0.18·e to 0.18 goes on
    // from there as 0.18 times 8·(0.18·e + 0.18), where 8·0.18² would follow.
    const carried = 8 * 0.18 ** 2 * (1 + Math.E);
    expectNear(value(total(pulseFrom(endsAt(0.125), { noise: 0.06 }))), 12 - 8 * 0.18 ** 2 + carried, 1e-9);
  });

  it('is refused where there is none on the whole', () => {
    const none = { fail: 'no-answer', message: 'The trace shows no light above its base on the whole.' };
    expect(total(pulseFrom([0, 1, -1, 0]))).toEqual(none);
    expect(total(pulseFrom([0, 1, -2, 0]))).toEqual(none);
    expect(total(pulseFrom([0, 1, -0.5, 0]))).toBe(1);
  });
});

describe('shares', () => {
  it('are all inside to begin with', () => {
    expect(wholeWithShares(value(wholeLight(pulseFrom(TRIANGLE))))).toEqual({
      rise: { time: 10, cell: 0 },
      fall: { time: 34, cell: 12 },
      total: 12,
      before: 0,
      inside: 1,
      after: 0,
    });
  });

  it('have what is carried on after them, and add up to 1', () => {
    // e^(−t/τ) is also what is left of the light
    const whole = wholeWithShares(value(wholeLight(decaying(0.01))));
    expectNear(whole.after, 0.03, BY_FITS);
    expectNear(whole.inside, 0.97, BY_FITS);
    expect(whole.before + whole.inside + whole.after).toBe(1);
  });

  it('are the same worked out from the whole pulse or from a lower level', () => {
    const pulse = pulseFrom(TRIANGLE);
    const whole = wholeWithShares(value(wholeLight(pulse)));
    let outer = whole;
    for (const level of [0.2, 0.4, 0.6, 0.8]) {
      const span = value(spanAt(pulse, level));
      outer = sharesWithin(pulse, outer, span);
      const once = sharesWithin(pulse, whole, span);
      // level² of the light of a triangle lies outside, a third of it before where it rises in a third of the time
      for (const shares of [outer, once]) {
        expectNear(shares.before, level ** 2 / 3);
        expectNear(shares.after, (2 * level ** 2) / 3);
        expectNear(shares.inside, 1 - level ** 2);
      }
    }
  });
});

describe('the light still to come', () => {
  it('of an exponential is its light there times its decay time, in the recording and where it is carried on', () => {
    const pulse = decaying(0.01);
    const whole = value(wholeLight(pulse));
    for (const after of [0.0005, 1, 3.3335, 7, 7.1, 9])
      expectNear(lightAfter(pulse, whole, 5 + after), 2 * Math.exp(-after / 2), BY_FITS);
    expectNear(lightAfter(pulse, whole, 4), 2, BY_FITS);
  });

  it('is none after a recording in which nothing is carried on, and all before it', () => {
    const pulse = pulseFrom(TRIANGLE);
    const whole = value(wholeLight(pulse));
    expect([5, 10, 34, 50].map((time) => lightAfter(pulse, whole, time))).toEqual([12, 12, 0, 0]);
    // 8 s of the fall are left at a half: 8·0.5/2
    expect(lightAfter(pulse, whole, 26)).toBe(2);
  });
});
