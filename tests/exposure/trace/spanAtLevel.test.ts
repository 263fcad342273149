import { describe, expect, it } from 'vitest';
import type { Pulse } from '../../../src/exposure/trace/pulse';
import { durationOf, sharesWithin, type Span, spanAt } from '../../../src/exposure/trace/spanAtLevel';
import { expectNear, refusal, value } from '../support';
import { pulseOf, signalOf } from './signals';

/** A pulse whose samples are two seconds apart from 10 s on, all of them its light, with what is told otherwise. */
function pulseFrom(values: readonly number[], told: Partial<Pulse> = {}, steady = false): Pulse {
  const times = steady ? [2] : values.map((_, i) => 10 + 2 * i);
  return pulseOf(signalOf(values, { times }), told);
}

/** Up in 8 s, down in 16 s. */
const TRIANGLE = [0, 0.25, 0.5, 0.75, 1, 0.875, 0.75, 0.625, 0.5, 0.375, 0.25, 0.125, 0];
const endsAt = (light: number): readonly number[] => TRIANGLE.slice(0, TRIANGLE.lastIndexOf(light) + 1);
const NEVER = 'of its height: the recording ends too early';

describe('the span at a level', () => {
  it('runs from the rise to the fall through it, each with its cell', () => {
    // 10 s + 8 s · 5/16, and 18 s + 16 s · 11/16
    const span = value(spanAt(pulseFrom(TRIANGLE), 0.3125));
    expect(span).toEqual({ rise: { time: 12.5, cell: 1 }, fall: { time: 29, cell: 9 } });
    expect(durationOf(span)).toBe(16.5);
  });

  it('begins with the first sample of the light where that lies above it', () => {
    expect(spanAt(pulseFrom(TRIANGLE, { from: 2 }), 0.3125)).toEqual({
      rise: { time: 14, cell: 2 },
      fall: { time: 29, cell: 9 },
    });
    expect(spanAt(pulseFrom(TRIANGLE.slice(2)), 0.3125)).toEqual({
      rise: { time: 10, cell: 0 },
      fall: { time: 25, cell: 7 },
    });
  });

  it('is refused where the light ends above it, with a word about blank cells where they may be the reason', () => {
    expect(spanAt(pulseFrom(endsAt(0.25)), 0.2)).toEqual({
      fail: 'no-answer',
      message: `The trace never falls through 0.2 ${NEVER}.`,
    });
    expect(spanAt(pulseFrom(endsAt(0.25), {}, true), 0.125)).toEqual({
      fail: 'no-answer',
      message: `The trace never falls through 0.125 ${NEVER} (zeros at the end count as blank cells).`,
    });
    expect(durationOf(value(spanAt(pulseFrom(endsAt(0.25)), 0.3125)))).toBe(16.5);
  });

  it('is refused below two and a half standard deviations of the noise, with the hundredth from which it is told', () => {
    // 2.5 × 0.05 is 0.125
    expect(spanAt(pulseFrom(TRIANGLE, { noise: 0.05 }), 0.1)).toEqual({
      fail: 'no-answer',
      message:
        '0.1 of the height is lost in the noise of the trace: ask for 0.13 or more, or record a cleaner trace.',
    });
    refusal(spanAt(pulseFrom(TRIANGLE, { noise: 0.05 }), 0.124));
    // straight lines rise and fall through an eighth 1 s from the start and 2 s from the end of 24 s
    expectNear(durationOf(value(spanAt(pulseFrom(TRIANGLE, { noise: 0.05 }), 0.125))), 21);
    expectNear(durationOf(value(spanAt(pulseFrom(TRIANGLE, { noise: 0.04 }), 0.101))), 24 * 0.899);
  });

  it('is the same where the search goes on from a lower level', () => {
    const pulse = pulseFrom(TRIANGLE);
    const cursor = { rise: 0, fall: 12 };
    for (const level of [0.1, 0.3, 0.5, 0.7, 0.9])
      expectNear(durationOf(value(spanAt(pulse, level, cursor))), 24 * (1 - level));
    // the samples next to the top are 0.75 and 0.875
    expect(cursor).toEqual({ rise: 4, fall: 4 });
  });

  it('starts its search where it is told, and says up to where it has looked', () => {
    // flashes up to a half before and after the highest one
    const pulse = pulseFrom([0, 0.5, 0, 0, 1, 0, 0, 0.5, 0]);
    expect(spanAt(pulse, 0.25, { rise: 3, fall: 5 })).toEqual({
      rise: { time: 16.5, cell: 3 },
      fall: { time: 19.5, cell: 4 },
    });
    const cursor = { rise: 0, fall: 8 };
    expect(durationOf(value(spanAt(pulse, 0.25, cursor)))).toBe(14);
    expect(cursor).toEqual({ rise: 1, fall: 7 });
  });
});

describe('shares', () => {
  it('of a span within another one add what lies between the two', () => {
    const pulse = pulseFrom(TRIANGLE);
    const outer = {
      rise: { time: 12, cell: 1 },
      fall: { time: 30, cell: 10 },
      total: 12,
      before: 0.25,
      inside: 0.5,
      after: 0.25,
    };
    const inner: Span = { rise: { time: 14, cell: 2 }, fall: { time: 26, cell: 8 } };
    // 2 s at 0.375 and 4 s at 0.375 on the mean, in 12 of light: 1/16 and 1/8
    expect(sharesWithin(pulse, outer, inner)).toEqual({
      ...inner,
      total: 12,
      before: 0.3125,
      inside: 0.3125,
      after: 0.375,
    });
  });
});
