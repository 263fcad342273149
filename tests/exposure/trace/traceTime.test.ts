import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { isFail } from '../../../src/exposure/core/result';
import { traceInside, traceTail } from '../../../src/exposure/trace/traceShares';
import { traceDoubts } from '../../../src/exposure/trace/traceDoubts';
import { traceShutter } from '../../../src/exposure/trace/traceShutter';
import { traceTable } from '../../../src/exposure/trace/traceTable';
import { HALF, traceTime } from '../../../src/exposure/trace/traceTime';
import { expectNear, itKeepsItsRanges, refusal, value } from '../support';
import { changed, gaussian, record, type Recording, twoTimes } from './shapes';

const TIMES = [0, 1, 2, 3, 4];
const VALUES = [0, 2, 8, 4, 0];

describe('duration at a level', () => {
  it('is that at half the height unless told otherwise', () => {
    expect(HALF).toBe(0.5);
    expect(traceTime(TIMES, VALUES)).toBe(traceTime(TIMES, VALUES, 0.5));
    expectNear(value(traceTime(TIMES, VALUES)), 3 - (1 + 2 / 6));
  });

  it('of a flash with corners is that of straight lines, though two corners bend as much to either side', () => {
    // 1 up, 1.001 flat and 1 down: 1.001 + 2 × 0.97 at 3 %
    expectNear(value(traceTime([0, 1, 2, 3.001, 4.001, 6.001], [0, 0, 1, 1, 0, 0], 0.03, 0)), 2.941);
  });

  it('is longer the lower the level, and holds more of the light', () => {
    const { times, values } = record(twoTimes(50e-6, 400e-6), { decays: 12, samples: 3000, lead: 0.2 });
    let [longer, more] = [Infinity, 1];
    for (let level = 0.05; level < 1; level += 0.05) {
      const width = value(traceTime(times, values, level));
      const inside = value(traceInside(times, values, level));
      expect(width).toBeLessThan(longer);
      expect(inside).toBeLessThan(more);
      [longer, more] = [width, inside];
    }
  });

  it('is that of a fine parabola up to its very top, worked by hand', () => {
    const values = Float64Array.from({ length: 401 }, (_, t) => Math.max(0, 1 - (t - 200) ** 2 / 4096));
    for (const level of [0.9, 0.9995, 0.9998, 0.9999])
      expectNear(value(traceTime([1], values, level, 0)), 2 * Math.sqrt(4096 * (1 - level)), 1e-6);
  });

  it('is refused above the highest sample, where the top lies between two', () => {
    const values = Float64Array.from({ length: 400 }, (_, t) => Math.max(0, 1 - (t - 199.5) ** 2 / 4096));
    expectNear(value(traceTime([1], values, 0.9999, 0)), 2 * Math.sqrt(4096 * 1e-4), 1e-5);
    const { fail, message } = refusal(traceTime([1], values, 0.99999, 0));
    expect(fail).toBe('no-answer');
    expect(message).toContain('lies above the highest sample');
  });

  const ranges = {
    times: [TIMES, 'any'],
    values: [VALUES, 'any'],
    level: [0.5, 'level'],
    base: [0, 'any'],
  } as const;
  itKeepsItsRanges('TRACETIME', ranges);
  itKeepsItsRanges('TRACEINSIDE', ranges);
  itKeepsItsRanges('TRACETAIL', ranges);
});

describe('a trace', () => {
  const everyFunction = (times: ArrayLike<number>, values: ArrayLike<number>): readonly unknown[] => [
    traceTime(times, values),
    traceInside(times, values),
    traceTail(times, values),
    traceTable(times, values),
    traceShutter(times, values),
  ];
  it.each([
    ['without times', [], VALUES, 'unreadable', 'times is blank'],
    ['without values', TIMES, [], 'unreadable', 'values is blank'],
    ['with a time too few', TIMES.slice(1), VALUES, 'unreadable', '4 times for 5 values'],
    ['of two samples', [0, 1], [0, 1], 'unreadable', 'too few samples: 2'],
    ['of zeros alone', [1], [0, 0, 0, 0], 'unreadable', 'too few samples: 0'],
    ['with an interval of 0', [0], VALUES, 'domain', 'must be above 0'],
    ['with an interval below 0', [-1e-6], VALUES, 'domain', 'must be above 0'],
    ['with an interval that is no number', [NaN], VALUES, 'domain', 'finite'],
    ['whose times fall', [0, 1, 3, 2, 4], VALUES, 'domain', 'row 4 is earlier than row 3'],
    ['with a blank cell among the times', [1, 2, 3, 0, 5], VALUES, 'domain', 'row 4 is earlier than row 3'],
    ['with a time that is no number', [0, 1, NaN, 3, 4], VALUES, 'domain', 'row 3 is not a finite number'],
    ['with a time without end', [0, 1, 2, 3, Infinity], VALUES, 'domain', 'row 5 is not a finite number'],
    ['with a value that is no number', TIMES, [0, 2, NaN, 4, 0], 'domain', 'row 3 is not a finite number'],
    ['with a value without end', TIMES, [0, 2, 8, -Infinity, 0], 'domain', 'row 4 is not a finite number'],
    ['at one instant', [2, 2, 2, 2, 2], VALUES, 'domain', 'times must rise'],
    ['of immense values', TIMES, [-1e308, 1e308, 0, 1, 0], 'domain', 'too large'],
    ['of an immense length', [-1e308, 0, 1, 2, 1e308], VALUES, 'domain', 'too large'],
    ['that is flat', TIMES, [3, 3, 3, 3, 3], 'no-answer', 'is the flash in the recording?'],
    ['that ends on the flash', TIMES, [0, 0, 2, 8, 6], 'no-answer', 'the recording ends too early'],
    ['that only rises', TIMES, [0, 1, 2, 3, 4], 'no-answer', 'the recording ends too early'],
  ] as const)('%s is refused, in words', (_, times, values, kind, words) => {
    for (const result of everyFunction(times, values)) {
      const refused = Array.isArray(result) ? (result as unknown[][])[4]?.[0] : result;
      expect(refusal(refused).fail).toBe(kind);
      expect(refusal(refused).message).toContain(words);
    }
  });

  it('of nothing but noise is refused', () => {
    const { values } = record(gaussian(1), { decays: 1e-9, samples: 5000, noise: 1, seed: 9 });
    expect(refusal(traceTime([1e-6], values)).message).toContain('never rises above its base');
  });

  it('has no level that is lost in its noise, and says from where on it has', () => {
    const { times, values } = record(twoTimes(50e-6, 400e-6), {
      decays: 40,
      samples: 20_000,
      lead: 0.1,
      noise: 0.02,
      seed: 10,
    });
    const { fail, message } = refusal(traceTime(times, values, 0.01));
    expect(fail).toBe('no-answer');
    expect(message).toContain('lost in the noise');
    expect(isFail(traceTime(times, values, Number(/ask for (\S+)/.exec(message)?.[1])))).toBe(false);
  });

  it('is not changed, and may be an ordinary list or one of fixed size', () => {
    const { times, values } = record(gaussian(1e-4), { decays: 12, samples: 2000, lead: 0.2, noise: 0.01 });
    const lists = [Object.freeze([...times]), Object.freeze([...values])] as const;
    for (const [i, result] of everyFunction(...lists).entries())
      expect(result).toEqual(everyFunction(times, values)[i]);
  });

  it('never gives a number that no cell can hold, whatever is in it', () => {
    const number = fc.double({ noNaN: false });
    fc.assert(
      fc.property(fc.array(fc.tuple(number, number), { maxLength: 30 }), fc.double(), (rows, step) => {
        const times = rows.map(([time]) => time).sort((a, b) => a - b);
        const values = rows.map(([, light]) => light);
        for (const given of [times, rows.map(([time]) => time), [step]])
          for (const result of everyFunction(given, values).flat(2))
            if (!isFail(result)) expect(result).toSatisfy(Number.isFinite);
      }),
      trials(301, 500),
    );
  });

  it('of small whole numbers has an answer or a reason at every level', () => {
    const light = fc.integer({ min: 0, max: 9 });
    fc.assert(
      fc.property(
        fc.array(light, { minLength: 3, maxLength: 80 }),
        fc.integer({ min: 0, max: 3 }),
        (list, step) => {
          const times = list.map((_, i) => (step === 0 ? i : Math.floor(i / step)));
          for (const result of everyFunction(times, list).flat(2)) {
            if (isFail(result)) expect(result.message).not.toBe('');
            else expect(result).toSatisfy(Number.isFinite);
          }
          expect(typeof traceDoubts(times, list)).toMatch(/string|object/);
        },
      ),
      trials(302, 500),
    );
  });
});

describe('duration and shares do not change', () => {
  const recording = fc
    .record({
      fast: fc.double({ min: 20, max: 200, noNaN: true }),
      ratio: fc.double({ min: 1.2, max: 20, noNaN: true }),
      samples: fc.integer({ min: 300, max: 6000 }),
      lead: fc.constantFrom(0, 0.1, 0.3),
      noise: fc.constantFrom(0, 0.01),
      seed: fc.integer({ min: 1, max: 1e6 }),
    })
    .map(({ fast, ratio, ...setting }) =>
      record(twoTimes(fast * 1e-6, fast * ratio * 1e-6), { ...setting, decays: 14 }),
    );
  const level = fc.double({ min: 0.1, max: 0.95, noNaN: true });

  function expectSame(one: Recording, other: Recording, at: number, stretched = 1): void {
    const width = traceTime(one.times, one.values, at);
    if (isFail(width)) {
      expect(refusal(traceTime(other.times, other.values, at)).fail).toBe(width.fail);
      return;
    }
    expectNear(value(traceTime(other.times, other.values, at)), width * stretched, 1e-6);
    for (const share of [traceInside, traceTail])
      expect(value(share(other.times, other.values, at))).toBeCloseTo(
        value(share(one.times, one.values, at)),
        6,
      );
  }

  it('when the values are k times as large', () => {
    const k = fc.double({ min: -6, max: 6, noNaN: true }).map((x) => 10 ** x);
    fc.assert(
      fc.property(recording, level, k, (given, at, by) => {
        expectSame(
          given,
          changed(given, (light) => light * by),
          at,
        );
      }),
      trials(303, 60),
    );
  });

  it('when the trace is turned upside down', () => {
    fc.assert(
      fc.property(recording, level, (given, at) => {
        expectSame(
          given,
          changed(given, (light) => -light),
          at,
        );
      }),
      trials(304, 60),
    );
  });

  it('when all values lie higher or lower', () => {
    fc.assert(
      fc.property(recording, level, fc.double({ min: -100, max: 100, noNaN: true }), (given, at, offset) => {
        expectSame(
          given,
          changed(given, (light) => light + offset),
          at,
        );
      }),
      trials(305, 60),
    );
  });

  it('when the clock started at another time', () => {
    fc.assert(
      fc.property(recording, level, fc.double({ min: -1, max: 1, noNaN: true }), (given, at, shift) => {
        expectSame(given, { ...given, times: given.times.map((t) => t + shift) }, at);
      }),
      trials(306, 60),
    );
  });

  it('but that the duration is k times as long when all times are', () => {
    const k = fc.double({ min: -3, max: 3, noNaN: true }).map((x) => 10 ** x);
    fc.assert(
      fc.property(recording, level, k, (given, at, by) => {
        expectSame(given, { ...given, times: given.times.map((t) => t * by) }, at, by);
      }),
      trials(307, 60),
    );
  });
});
