import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { popsForTarget, popsMiss, popsReading } from '../../../src/exposure/pops/pops';
import { marks } from '../../../src/exposure/stops/marks';
import type { Result } from '../../../src/exposure/core/result';
import { answerOf, expectNear, itKeepsItsRanges, refusal, value } from '../support';

const reading = fc.double({ min: 0, max: 2, noNaN: true }).map((x) => 10 ** x);
const loss = fc.double({ min: 0, max: 6, noNaN: true });
const fullStops = marks('aperture', 'full').map((m) => 2 ** (m.step / 2));

/** The pops without a bellows, within a tolerance. */
const within = (tolerance: number, from: number, to: number, lost: number): Result<number> =>
  popsForTarget(from, to, lost, undefined, undefined, undefined, tolerance);

describe('fewest pops', () => {
  it('from each full stop to the next are two, not three, in spite of rounding error in √2', () => {
    for (const [i, from] of fullStops.entries()) {
      const to = fullStops[i + 1];
      if (to !== undefined && from >= 1) expect(within(0, from, to, 0), `f/${from}`).toBe(2);
    }
  });

  it('between any two full stops are 2 to the power of the stops, with no tolerance and with the usual one', () => {
    for (const [i, from] of fullStops.entries())
      for (const [k, to] of fullStops.slice(i).entries()) {
        if (from < 1) continue;
        expect(within(0, from, to, 0)).toBe(2 ** k);
        // A twentieth of a stop less: 2^(k − 0.05), rounded up; a whole pop can be spared from 32 on.
        expect(popsForTarget(from, to)).toBe(Math.ceil(2 ** (k - 0.05)));
      }
  });

  it('for the square root of n times the reading are n, in spite of rounding error in the root', () => {
    for (let n = 1; n <= 99; n++) expect(within(0, 8, 8 * Math.sqrt(n), 0), `${n}`).toBe(n);
  });

  it('are the fewest: one pop less misses by more than the tolerance, and as many do not', () => {
    const tolerance = fc.constantFrom(0, 0.05, 0.1, 1 / 3);
    fc.assert(
      fc.property(reading, fc.double({ min: 0, max: 8, noNaN: true }), loss, tolerance, (n, up, l, t) => {
        const target = n * 2 ** (up / 2);
        const pops = value(within(t, n, target, l));
        expect(value(popsMiss(n, target, pops, l))).toBeGreaterThanOrEqual(-t - 2e-9);
        if (pops > 1) expect(value(popsMiss(n, target, pops - 1, l))).toBeLessThan(-t);
      }),
      trials(81),
    );
  });

  it('are one where one pop is enough or too much', () => {
    expect(popsForTarget(16, 16)).toBe(1);
    expect(popsForTarget(32, 16)).toBe(1);
    expect(popsForTarget(32, 16, -5)).toBe(1);
  });

  it('count the bellows: life size costs two stops, four times the pops', () => {
    expect(popsForTarget(16, 32, 0, 150, 300, 1, 0)).toBe(16);
    expect(popsForTarget(16, 32, 1, 150, 300, 1, 0)).toBe(32);
  });

  it('are not more for more tolerance, and not fewer for more loss', () => {
    fc.assert(
      fc.property(reading, reading, loss, fc.double({ min: 0, max: 0.5, noNaN: true }), (n, t, l, tol) => {
        const pops = value(within(tol, n, t, l));
        expect(value(within(tol + 0.1, n, t, l))).toBeLessThanOrEqual(pops);
        expect(value(within(tol, n, t, l + 0.1))).toBeGreaterThanOrEqual(pops);
      }),
      trials(82),
    );
  });

  it('do not exist a hundred stops away, and the message says how far that is', () => {
    const { fail, message } = refusal(popsForTarget(1, 2 ** 50));
    expect(fail).toBe('no-answer');
    expect(message).toContain('100 stops');
    expectNear(value(within(0, 1, 2 ** 25, 0)), 2 ** 50, 1e-8);
    expect(refusal(within(0, 1, 2 ** 25, 0.1)).message).toContain('50 stops');
    expectNear(value(within(0.2, 1, 2 ** 25, 0.1)), 2 ** 49.9, 1e-8);
  });

  it('are refused for half a bellows statement', () => {
    expect(refusal(popsForTarget(16, 32, 0, 150)).message).toContain('draw is missing');
    expect(refusal(popsForTarget(16, 32, 0, undefined, 300)).message).toContain('focal is missing');
  });

  itKeepsItsRanges('POPSFORTARGET', {
    reading: [16, 'above 0'],
    target: [32, 'above 0'],
    loss: [1, 'any'],
    focal: [150, 'above 0'],
    draw: [300, 'above 0'],
    pupil: [1, 'pupil'],
    tolerance: [0.05, 'from 0'],
  });

  it('say what stands in the place of the focal length, where it is a tolerance', () => {
    const misplaced = 'A tolerance in the place of the focal length?';
    expect(answerOf('POPSFORTARGET', 16, 45, 1, null, null, 0.05)).toMatchObject({
      error: '#NUM!',
      message: expect.stringContaining(misplaced),
    });
    for (const tolerance of [0.05, 0.1, 4.9])
      expect(answerOf('POPSFORTARGET', 16, 45, 1, tolerance)).toMatchObject({
        error: '#VALUE!',
        message: expect.stringMatching(/^focal: .*a tolerance in the place of the focal length\?/),
      });
    // with its unit it is believed, and then lacks its draw
    expect(answerOf('POPSFORTARGET', 16, 45, 1, '4 mm')).toMatchObject({ message: expect.stringContaining('draw is missing') }); // prettier-ignore
    expect(answerOf('POPSFORTARGET', 16, 45, 1, null, null, null, 150)).toMatchObject({
      error: '#VALUE!',
      message: expect.stringMatching(/^tolerance: .*a focal length in the place of the tolerance\?/),
    });
    expect(answerOf('POPSFORTARGET', 16, 45, 1, null, null, null, 0.1)).toBe(15);
  });
});

describe('reading of several pops', () => {
  it('is a stop up for each doubling, and half for each two stops lost', () => {
    for (let n = 0; n < 7; n++) expectNear(value(popsReading(8, 2 ** n)), 8 * 2 ** (n / 2));
    expectNear(value(popsReading(8, 1, 2)), 4);
    expectNear(value(popsReading(8, 4, 0, 150, 300)), 8);
  });

  it('rises with every pop', () => {
    for (let n = 1; n < 99; n++)
      expect(value(popsReading(8, n + 1))).toBeGreaterThan(value(popsReading(8, n)));
  });

  it('is refused for half a bellows statement', () => {
    expect(refusal(popsReading(8, 1, 0, 150)).fail).toBe('unreadable');
  });

  itKeepsItsRanges('POPSREADING', {
    reading: [16, 'above 0'],
    pops: [4, 'whole'],
    loss: [1, 'any'],
    focal: [150, 'above 0'],
    draw: [300, 'above 0'],
    pupil: [1, 'pupil'],
  });
});

describe('miss', () => {
  it('is what the reading of the pops lies above or below the target', () => {
    fc.assert(
      fc.property(reading, reading, fc.integer({ min: 1, max: 99 }), loss, (n, t, pops, l) => {
        const come = value(popsReading(n, pops, l));
        expect(value(popsMiss(n, t, pops, l))).toBeCloseTo(2 * Math.log2(come / t), 10);
      }),
      trials(83),
    );
  });

  it('is none for 8 pops over three stops, + for 9 and − for 7', () => {
    expect(popsMiss(8, 8 * 2 ** 1.5, 8)).toBe(0);
    expect(value(popsMiss(8, 8 * 2 ** 1.5, 9))).toBeGreaterThan(0);
    expect(value(popsMiss(8, 8 * 2 ** 1.5, 7))).toBeLessThan(0);
  });

  itKeepsItsRanges('POPSMISS', {
    reading: [16, 'above 0'],
    target: [32, 'above 0'],
    pops: [4, 'whole'],
    loss: [1, 'any'],
    focal: [150, 'above 0'],
    draw: [300, 'above 0'],
    pupil: [1, 'pupil'],
  });
});
