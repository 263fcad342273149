import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { freezeDuration } from '../../../src/exposure/motion/freezeDuration';
import { freezePower } from '../../../src/exposure/motion/freezePower';
import { expectNear, itKeepsItsRanges, refusal, value } from '../support';

/** An invented head that gets shorter as it is turned down. */
const POWERS = [100, 200, 400, 800];
const TIMES = [1 / 8000, 1 / 4000, 1 / 2000, 1 / 1000];

describe('duration at an energy', () => {
  it('of a row is its own, in whatever order the rows stand', () => {
    expect(freezeDuration(POWERS, TIMES, 400)).toBe(1 / 2000);
    expect(freezeDuration([400, 100, 200], [1 / 2000, 1 / 8000, 1 / 4000], 100)).toBe(1 / 8000);
  });
  it('between two rows goes with a power of the energy', () => {
    // worked by hand: half way between 200 and 400 Ws in stops, the time too is half way in stops
    expectNear(value(freezeDuration(POWERS, TIMES, 200 * Math.SQRT2)), (1 / 4000) * Math.SQRT2);
    // a time that goes with the square of the energy: 1.5² of 1/8000 s
    expectNear(value(freezeDuration([200, 400], [1 / 8000, 1 / 2000], 300)), 2.25 / 8000);
  });
  it('is never guessed beyond the table', () => {
    expect(refusal(freezeDuration(POWERS, TIMES, 50))).toMatchObject({
      fail: 'no-answer',
      message: 'The table goes from 100 to 800 Ws: it says nothing of 50 Ws.',
    });
    expect(refusal(freezeDuration([100], [0.001], 101))).toMatchObject({ fail: 'no-answer' });
  });
  it('refuses a table that is none', () => {
    expect(refusal(freezeDuration([100, 100], [1, 2], 100)).message).toContain('100 Ws twice');
    expect(refusal(freezeDuration([100, 200], [1], 100)).message).toContain('1 for 2 powers');
  });
  it('is what freezePower turns round, on any head that gets longer with the energy', () => {
    const factors = fc.array(fc.double({ min: 1.05, max: 4, noNaN: true }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(factors, fc.double({ min: 0, max: 1, noNaN: true }), (rises, where) => {
        const powers = [25];
        const times = [1e-4];
        for (const rise of rises) {
          powers.push((powers.at(-1) as number) * 2);
          times.push((times.at(-1) as number) * rise);
        }
        const power = 25 * ((powers.at(-1) as number) / 25) ** where;
        const time = value(freezeDuration(powers, times, power));
        expectNear(value(freezePower(powers, times, time)), power, 1e-8);
      }),
      trials(97),
    );
  });
});

describe('its arguments', () =>
  itKeepsItsRanges('FREEZEDURATION', {
    powers: [[100, 400], 'above 0'],
    durations: [[1 / 4000, 1 / 1000], 'above 0'],
    power: [200, 'above 0'],
  }));
