import { describe, expect, it } from 'vitest';
import { lightBetween, type TracePoint, tracePointAt } from '../../../src/exposure/trace/lightAtTime';
import type { Signal } from '../../../src/exposure/trace/signal';
import { expectNear } from '../support';
import { noiseFrom } from './shapes';
import { signalOf } from './signals';

const TIMES = [1, 2, 4, 4.5, 7];
/** At 1, 2, 4, 4.5 and 7 s, straight lines in between: 1 + 10 + 2.25 + 7.5 = 20.75 in all. */
const signal = signalOf([0, 2, 8, 1, 5], { times: TIMES });
const at = (time: number, cell: number): TracePoint => ({ time, cell });

describe('the place of a sample', () => {
  it('is its time, and the sample itself', () => {
    expect(tracePointAt(signal, 2)).toEqual({ time: 4, cell: 2 });
    expect(tracePointAt(signalOf([1, 2, 3], { times: [0.25] }), 2)).toEqual({ time: 0.5, cell: 2 });
  });
});

describe('the light between two instants', () => {
  it('is the area under straight lines from sample to sample, worked by hand', () => {
    expect(lightBetween(signal, tracePointAt(signal, 0), tracePointAt(signal, 4))).toBe(20.75);
    expect(lightBetween(signal, tracePointAt(signal, 1), tracePointAt(signal, 3))).toBe(12.25);
    expect(lightBetween(signal, tracePointAt(signal, 3), tracePointAt(signal, 4))).toBe(7.5);
  });

  it('takes in parts of cells, worked by hand', () => {
    // 2 to 8 in two seconds: at 2.5 s 3.5, at 3.5 s 6.5
    expect(lightBetween(signal, at(2.5, 1), at(3.5, 1))).toBe(5);
    // 2.5 s to the sample at 4 s, 1.5 s of 5.75 on the mean; then a half second to 1; then a second of 1 to 2.6
    expectNear(lightBetween(signal, at(2.5, 1), at(5.5, 3)), 1.5 * 5.75 + 2.25 + 1.8);
    // the first half second, 0 to 1
    expect(lightBetween(signal, at(1, 0), at(1.5, 0))).toBe(0.25);
  });

  it('is nothing from an instant to itself, be it the last sample', () => {
    for (let i = 0; i < 5; i++)
      expect(lightBetween(signal, tracePointAt(signal, i), tracePointAt(signal, i))).toBe(0);
    expect(lightBetween(signal, at(3, 1), at(3, 1))).toBe(0);
  });

  it('is negative where the second comes first', () => {
    expect(lightBetween(signal, tracePointAt(signal, 4), tracePointAt(signal, 0))).toBe(-20.75);
    expect(lightBetween(signal, at(3.5, 1), at(2.5, 1))).toBe(-5);
    expectNear(lightBetween(signal, at(5.5, 3), at(2.5, 1)), -(1.5 * 5.75 + 2.25 + 1.8));
  });

  it('is that above the base, in the units of the signal, either way up', () => {
    // each value twice as much above a base of 3
    const other = signalOf(
      [0, 2, 8, 1, 5].map((x) => 3 + 2 * x),
      { times: TIMES, base: 3, scale: 0.5 },
    );
    expect(lightBetween(other, tracePointAt(other, 0), tracePointAt(other, 4))).toBe(20.75);
    const turned = signalOf(
      [0, 2, 8, 1, 5].map((x) => 3 - 2 * x),
      {
        times: TIMES,
        sign: -1,
        base: -3,
        scale: 0.5,
      },
    );
    expect(lightBetween(turned, tracePointAt(turned, 0), tracePointAt(turned, 4))).toBe(20.75);
  });

  it('is the same where samples come at a steady interval', () => {
    const steady = signalOf([0, 2, 8, 1, 5], { times: [0.5] });
    expect(lightBetween(steady, tracePointAt(steady, 0), tracePointAt(steady, 4))).toBe(6.75);
    expect(lightBetween(steady, at(0.75, 1), at(1.75, 3))).toBe(0.25 * 6.5 + 0.5 * 4.5 + 0.25 * 2);
  });

  it('leaves out a base that drifts, at steady times or not', () => {
    // 1.5 at 2 s and 0.25 more in each second
    const drift = (t: number): number => 1.5 + 0.25 * (t - 2);
    const rest: Partial<Signal> = { base: 1.5, slope: 0.25, origin: 2, scale: 0.5 };
    const uneven = signalOf(
      [0, 2, 8, 1, 5].map((x, i) => 2 * x + drift(TIMES[i] as number)),
      {
        times: TIMES,
        ...rest,
      },
    );
    expectNear(lightBetween(uneven, tracePointAt(uneven, 0), tracePointAt(uneven, 4)), 20.75);
    const steady = signalOf(
      [0, 2, 8, 1, 5].map((x, i) => 2 * x + drift(0.5 * i)),
      { times: [0.5], ...rest },
    );
    expectNear(lightBetween(steady, tracePointAt(steady, 0), tracePointAt(steady, 4)), 6.75);
  });

  it('adds up: any instant between two parts the light of the whole', () => {
    const next = noiseFrom(3);
    const values = Array.from({ length: 50 }, () => 2 + next());
    const long = signalOf(values, { times: values.map((_, i) => i + (i % 3) / 4) });
    const [start, end] = [tracePointAt(long, 0), tracePointAt(long, 49)];
    const whole = lightBetween(long, start, end);
    for (let i = 0; i < 49; i++) {
      const middle = at((tracePointAt(long, i).time + tracePointAt(long, i + 1).time) / 2, i);
      expectNear(lightBetween(long, start, middle) + lightBetween(long, middle, end), whole);
    }
  });
});
