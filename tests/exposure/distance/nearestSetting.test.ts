import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { settle } from '../../../src/exposure/distance/nearestSetting';
import { expectNear, refusal, value } from '../support';

/** Stops from one energy down to another. */
const down = (from: number, to: number): number => Math.log2(from / to);

describe('the energy that can be set', () => {
  it('is the energy wanted where the head has no step', () => {
    expect(settle(123.4, 400, {})).toBe(123.4);
    expect(settle(123.4, 400, { least: 25, most: 800 })).toBe(123.4);
  });

  it('lies a whole number of steps below full power, and within half a step of what is wanted', () => {
    const step = fc.constantFrom(0.1, 0.2, 1 / 3, 0.5, 1);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5.9, noNaN: true }), step, (stops, s) => {
        const wanted = 1200 * 2 ** -stops;
        const set = value(settle(wanted, 300, { step: s, least: 12, most: 1200 }));
        const steps = down(1200, set) / s;
        expect(steps).toBeCloseTo(Math.round(steps), 8);
        expect(Math.abs(down(wanted, set))).toBeLessThanOrEqual(s / 2 + 1e-9);
        expect(set).toBeLessThanOrEqual(1200);
      }),
      trials(65),
    );
  });

  it('counts its steps from the energy now where no most is given', () => {
    expectNear(value(settle(110, 100, { step: 0.1 })), 100 * 2 ** 0.1);
    expectNear(value(settle(190, 100, { step: 1 })), 200);
  });

  it('is the higher of two as near: half a stop below 400 is set to 400, worked by hand', () => {
    expect(settle(400 / Math.SQRT2, 400, { step: 1, most: 400 })).toBe(400);
    expect(settle((400 / Math.SQRT2) * 0.999, 400, { step: 1, most: 400 })).toBe(200);
  });

  it('is full power for what lies above it by less than half a step, and is refused from there on', () => {
    expect(settle(800 * 2 ** 0.049, 400, { step: 0.1, most: 800 })).toBe(800);
    expect(refusal(settle(800 * 2 ** 0.051, 400, { step: 0.1, most: 800 })).fail).toBe('no-answer');
  });

  it('is the least power for what lies below it by less than half a step, and is refused from there on', () => {
    const head = { step: 0.1, least: 25, most: 800 };
    expectNear(value(settle(25 * 2 ** -0.049, 400, head)), 25);
    expect(refusal(settle(25 * 2 ** -0.051, 400, head)).fail).toBe('no-answer');
  });

  it('goes as far down as the marks of the head do, the last of them being nearest to its least energy', () => {
    // Worked by hand: 800 / 26 is 4.943 stops, 49.43 steps of a tenth; the 49th mark is 800·2^(−4.9) = 26.79 Ws.
    const head = { step: 0.1, least: 26, most: 800 };
    expectNear(value(settle(26, 400, head)), 800 * 2 ** -4.9);
    // 800 / 25.5 is 4.971 stops, 49.71 steps: the 50th mark is 25 Ws.
    expectNear(value(settle(25.5, 400, { ...head, least: 25.5 })), 25);
  });

  it.each([
    [1600, '1 stop more', 'full power'],
    [3200, '2 stop', 'full power'],
    [12.5, '1 stop less', 'least power'],
    [800 * 2 ** 0.3, '0.3 stop more', 'full power'],
  ])('of %d Ws is out of reach of a head from 25 to 800 Ws: %s than it gives at %s', (wanted, by, end) => {
    for (const step of [undefined, 0.1]) {
      const { fail, message } = refusal(settle(wanted, 400, { step, least: 25, most: 800 }));
      expect(fail).toBe('no-answer');
      expect(message).toContain(by);
      expect(message).toContain(end);
    }
  });

  it('forgives a thousand-millionth beyond either end', () => {
    expect(settle(800 * (1 + 1e-10), 400, { most: 800 })).toBeCloseTo(800, 6);
    expect(settle(25 * (1 - 1e-10), 400, { least: 25 })).toBeCloseTo(25, 6);
    expect(refusal(settle(800 * 1.000001, 400, { most: 800 })).fail).toBe('no-answer');
  });

  it('with a least energy and no most ends at the last mark above it, and is refused below that energy', () => {
    // Worked by hand: half stops down from 400 Ws are 35.36 Ws (the seventh) and 25 Ws (the eighth), which is below 26.
    const head = { step: 0.5, least: 26 };
    for (const wanted of [26, 30, 36]) expectNear(value(settle(wanted, 400, head)), 400 * 2 ** -3.5);
    expect(refusal(settle(25.9, 400, head)).message).toContain('least power');
  });

  it('is refused where no energy is left to set', () => {
    const { fail, message } = refusal(settle(0, 400, { most: 800 }));
    expect(fail).toBe('domain');
    expect(message).toContain('too small');
  });

  it('with a least energy and no most is never said to be out of reach by less than nothing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 25, max: 400, noNaN: true }),
        fc.constantFrom(0.1, 1 / 3, 1),
        (least, step) => {
          for (const wanted of [least * 1.01, least * 1.2, least, least * 0.99, least / 3]) {
            const came = settle(wanted, 400, { step, least });
            if (typeof came !== 'number') expect(came.message).not.toMatch(/takes -|takes 0 /);
            else expect(came).toBeGreaterThanOrEqual(least * (1 - 1e-8));
          }
        },
      ),
      trials(66),
    );
  });

  it('is refused where the least energy is more than the most', () => {
    const { fail, message } = refusal(settle(100, 100, { least: 800, most: 25 }));
    expect(fail).toBe('domain');
    expect(message).toContain('least must not be more than most: 800 is more than 25');
  });
});
