import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { fallOff } from '../../../src/exposure/distance/fallOff';
import { powerForDistance, powerForReading } from '../../../src/exposure/distance/power';
import { distanceForReading, readingForPower } from '../../../src/exposure/distance/reading';
import { expectNear, itKeepsItsRanges, refusal, value } from '../support';

const positive = fc.double({ min: -1, max: 2, noNaN: true }).map((x) => 10 ** x);

describe('energy for another distance', () => {
  it('is four times as much at twice the distance, and twice as much a stop up', () => {
    expect(powerForDistance(100, 1, 2)).toBe(400);
    expect(powerForDistance(100, 1, 1, 1)).toBe(200);
    expectNear(value(powerForDistance(400, 1.5, 2.1)), 784);
  });

  it('gives the same reading there', () => {
    fc.assert(
      fc.property(positive, positive, positive, (p, d, e) => {
        const power = value(powerForDistance(p, d, e));
        expectNear(value(readingForPower(8, p, power, d, e)), 8);
      }),
      trials(71),
    );
  });

  it('makes up for the fall-off of a large front', () => {
    fc.assert(
      fc.property(positive, positive, positive, positive, (d, e, w, h) => {
        const round = value(powerForDistance(100, d, e, 0, undefined, undefined, undefined, w));
        expectNear(round, 100 * 2 ** value(fallOff(d, e, w)), 2e-12);
        const box = value(powerForDistance(100, d, e, 0, undefined, undefined, undefined, w, h));
        expectNear(box, 100 * 2 ** value(fallOff(d, e, w, h)), 2e-12);
      }),
      trials(72),
    );
  });

  it('is rounded to a setting counted down from the most: 784 Ws of an 800 Ws head is full power', () => {
    expect(powerForDistance(400, 1.5, 2.1, 0, 0.1, 25, 800)).toBe(800);
  });

  it('is refused beyond the head, by so many stops: 1600 Ws of 800 is one', () => {
    expect(refusal(powerForDistance(400, 1, 2, 0, 0.1, 25, 800)).message).toContain('1 stop more');
    expect(refusal(powerForDistance(50, 2, 1, 0, undefined, 25, 800)).message).toContain('1 stop less');
  });

  it('is refused for a height without a width', () => {
    const come = powerForDistance(100, 1, 2, 0, undefined, undefined, undefined, undefined, 1);
    expect(refusal(come).message).toContain('width is missing');
  });

  itKeepsItsRanges('POWERFORDISTANCE', {
    power: [400, 'above 0'],
    distance: [1.5, 'above 0'],
    newDistance: [1.6, 'above 0'],
    stops: [0, 'any'],
    step: [0.1, 'above 0'],
    least: [1, 'above 0'],
    most: [2000, 'above 0'],
    width: [1, 'above 0'],
    height: [1.4, 'above 0'],
  });
});

describe('energy for another reading', () => {
  it('doubles for a stop, and brings the target', () => {
    expectNear(value(powerForReading(100, 8, 8 * Math.SQRT2)), 200);
    fc.assert(
      fc.property(positive, positive, positive, (p, n, t) => {
        expectNear(value(readingForPower(n, p, value(powerForReading(p, n, t)))), t);
      }),
      trials(73),
    );
  });

  it('makes up for light lost after the meter', () => {
    expectNear(value(powerForReading(100, 8, 8, undefined, undefined, undefined, 2)), 400);
  });

  it('is shared among the pops: a quarter for four of them, worked by hand', () => {
    expect(powerForReading(100, 8, 16, undefined, undefined, undefined, 0, 4)).toBe(100);
    // 100 Ws · 4 · 2 for a stop lost, over 16 pops
    expect(powerForReading(100, 8, 16, undefined, undefined, undefined, 1, 16)).toBe(50);
    expect(powerForReading(800, 8, 16, 0.1, 25, 800, 0, 4)).toBe(800);
  });

  it('is refused beyond the head, by so many stops', () => {
    expect(refusal(powerForReading(400, 8, 16, undefined, 25, 800)).message).toContain('1 stop more');
  });

  itKeepsItsRanges('POWERFORREADING', {
    power: [100, 'above 0'],
    reading: [8, 'above 0'],
    target: [9, 'above 0'],
    step: [0.1, 'above 0'],
    least: [1, 'above 0'],
    most: [2000, 'above 0'],
    loss: [0, 'any'],
    pops: [4, 'whole'],
  });
});

describe('reading after a change', () => {
  it('is a stop up for twice the power and for twice the pops, and halves at twice the distance', () => {
    expectNear(value(readingForPower(8, 100, 200)), 8 * Math.SQRT2);
    expectNear(value(readingForPower(8, 100, 100, undefined, undefined, 0, 2)), 8 * Math.SQRT2);
    expectNear(value(readingForPower(8, 100, 100, 1, 2)), 4);
    expectNear(value(readingForPower(8, 100, 100, undefined, undefined, 2)), 4);
  });

  it('is refused for one distance without the other, naming the one that is missing', () => {
    expect(refusal(readingForPower(8, 100, 200, 1)).message).toContain('newDistance is missing');
    expect(refusal(readingForPower(8, 100, 200, undefined, 1)).message).toContain('distance is missing');
    expect(refusal(readingForPower(8, 100, 200, 1)).fail).toBe('unreadable');
  });

  itKeepsItsRanges('READINGFORPOWER', {
    reading: [8, 'above 0'],
    power: [100, 'above 0'],
    newPower: [200, 'above 0'],
    distance: [1, 'above 0'],
    newDistance: [2, 'above 0'],
    loss: [0, 'any'],
    pops: [4, 'whole'],
  });
});

describe('distance for another reading', () => {
  it('of a point is half for twice the reading', () => {
    expect(distanceForReading(2, 8, 16)).toBe(1);
  });

  it('of a round front gains as many stops as the reading must', () => {
    fc.assert(
      fc.property(positive, positive, fc.double({ min: 0.2, max: 1, noNaN: true }), (d, w, less) => {
        const there = value(distanceForReading(d, 8, 8 * less, w));
        const wanted = -2 * Math.log2(less);
        expect(value(fallOff(d, there, w))).toBeCloseTo(wanted, 9);
      }),
      trials(74),
    );
  });

  it('of a round front is 4 where the light at 3 with a radius of 3 must fall from 25 to 18, worked by hand', () => {
    expectNear(value(distanceForReading(3, 5, Math.sqrt(18), 6)), 4);
    expectNear(value(distanceForReading(4, Math.sqrt(18), 5, 6)), 3);
  });

  it('does not exist where contact is too little, and the message says what contact would read', () => {
    // Worked by hand: at one radius the light at contact is twice as much, a stop: f/11.3 from f/8.
    const { fail, message } = refusal(distanceForReading(0.5, 8, 16, 1));
    expect(fail).toBe('no-answer');
    expect(message).toContain('f/11.3');
    expect(refusal(distanceForReading(0.5, 8, 8 * Math.SQRT2 * 1.0001, 1)).fail).toBe('no-answer');
    expect(value(distanceForReading(0.5, 8, 8 * Math.SQRT2 * 0.9999, 1))).toBeGreaterThan(0);
  });

  it('is refused, and not worked out, where contact would read more than any number', () => {
    expect(refusal(distanceForReading(1e100, 1e120, 1e300, 2e-100)).message).toContain('too large');
  });

  itKeepsItsRanges('DISTANCEFORREADING', {
    distance: [1, 'above 0'],
    reading: [8, 'above 0'],
    target: [4, 'above 0'],
    width: [1, 'above 0'],
  });
});
