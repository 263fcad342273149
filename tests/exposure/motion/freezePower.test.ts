import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { freezeDuration } from '../../../src/exposure/motion/freezeDuration';
import { freezePower } from '../../../src/exposure/motion/freezePower';
import { isFail } from '../../../src/exposure/core/result';
import { expectNear, itKeepsItsRanges, refusal, value } from '../support';

/** An invented head that gets shorter as it is turned down, and one that gets longer. */
const POWERS = [100, 200, 400, 800];
const SHORTER = [1 / 8000, 1 / 4000, 1 / 2000, 1 / 1000];
const LONGER = [1 / 1000, 1 / 2000, 1 / 4000, 1 / 8000];

describe('most energy that is short enough', () => {
  it('of a head that gets shorter when turned down lies between two rows: 400·√2 for the √2-fold time', () => {
    expectNear(value(freezePower(POWERS, SHORTER, (1 / 2000) * Math.SQRT2)), 400 * Math.SQRT2);
  });

  it('of a row that keeps the limit exactly is its own', () => {
    expectNear(value(freezePower(POWERS, SHORTER, 1 / 4000)), 200);
    expectNear(value(freezePower(POWERS, SHORTER, 1 / 8000)), 100);
  });

  it('is full power where that is short enough, also on a head that gets longer when turned down', () => {
    expect(freezePower(POWERS, SHORTER, 1 / 500)).toBe(800);
    expect(freezePower(POWERS, LONGER, 1 / 8000)).toBe(800);
  });

  it('of a head that is short in the middle only lies above the middle', () => {
    // Worked by hand: from 200 Ws, 1/8000 s to 400 Ws, 1/2000 s the time goes with the square of the energy.
    expectNear(
      value(freezePower([100, 200, 400], [1 / 2000, 1 / 8000, 1 / 2000], 1 / 4000)),
      200 * Math.SQRT2,
    );
  });

  it('is the highest of several ranges that keep the limit', () => {
    // Short at 100 and again at 400 Ws: the higher counts.
    const power = freezePower([100, 200, 400, 800], [1 / 8000, 1 / 1000, 1 / 4000, 1 / 1000], 1 / 4000);
    expectNear(value(power), 400);
  });

  it('keeps the limit there, and not a little above, on any head that gets longer with the energy', () => {
    const rises = fc.array(fc.double({ min: 1.05, max: 4, noNaN: true }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(rises, fc.double({ min: 0, max: 1, noNaN: true }), (factors, where) => {
        const powers = [25];
        const times = [1e-4];
        for (const f of factors) {
          powers.push((powers[powers.length - 1] as number) * 2);
          times.push((times[times.length - 1] as number) * f);
        }
        const last = times[times.length - 1] as number;
        const limit = 1e-4 * (last / 1e-4) ** where;
        const power = value(freezePower(powers, times, limit));
        // The table itself, by the same law: time as a power of the energy between two rows.
        const i = Math.max(
          1,
          powers.findIndex((p) => p >= power * (1 - 1e-12)),
        );
        const [p0, p1, t0, t1] = [powers[i - 1], powers[i], times[i - 1], times[i]] as [
          number,
          number,
          number,
          number,
        ];
        const time = t0 * (t1 / t0) ** (Math.log(power / p0) / Math.log(p1 / p0));
        expectNear(time, limit, 2e-9);
      }),
      trials(96),
    );
  });

  it('does not depend on the order of the rows', () => {
    expect(freezePower([400, 100, 800, 200], [1 / 2000, 1 / 8000, 1 / 1000, 1 / 4000], 1 / 3000)).toBe(
      freezePower(POWERS, SHORTER, 1 / 3000),
    );
  });

  it('leaves the table as it is', () => {
    const powers = Object.freeze([100, 400, 200]);
    freezePower(powers, [1 / 8000, 1 / 2000, 1 / 4000], 1 / 3000);
    expect(powers).toEqual([100, 400, 200]);
  });

  it('of a table of one row is that row or nothing', () => {
    expect(freezePower([400], [1 / 2000], 1 / 2000)).toBe(400);
    expect(refusal(freezePower([400], [1 / 2000], 1 / 4000)).fail).toBe('no-answer');
  });

  it('takes rows of equal duration for what they are: the higher energy', () => {
    expect(freezePower([100, 200, 400], [1 / 4000, 1 / 2000, 1 / 2000], 1 / 2000)).toBe(400);
    expectNear(value(freezePower([100, 200, 400], [1 / 2000, 1 / 2000, 1 / 1000], 1 / 2000)), 200);
  });

  it('is never guessed beyond the table: the shortest flash is named by how many times the limit it lasts', () => {
    const { fail, message } = refusal(freezePower(POWERS, SHORTER, 1 / 16000));
    expect(fail).toBe('no-answer');
    expect(message).toContain('2 times the limit');
  });

  it('is refused where the shortest flash lasts more than any number of times the limit', () => {
    expect(refusal(freezePower(POWERS, SHORTER, 1e-320)).message).toContain('too large');
  });

  it('is refused where a table has fewer durations than powers', () => {
    const { fail, message } = refusal(freezePower([100, 200], [1 / 1000], 1 / 2000));
    expect(fail).toBe('unreadable');
    expect(message).toContain('1 for 2 powers');
  });

  it('is refused for a table that lists one energy twice, wherever that stands', () => {
    expect(refusal(freezePower([100, 400, 400], [1e-4, 1e-3, 2e-3], 5e-4)).fail).toBe('unreadable');
    expect(refusal(freezePower([100, 100, 400], [1e-4, 2e-4, 1e-3], 1e-3)).fail).toBe('unreadable');
  });

  it('turns the limit into the level of the table, by ln 10 / ln 2 for an exponential decay', () => {
    // A table in t0.5: 1/2000 s there is 3.3219/2000 s at t0.1.
    const longer = Math.LN10 / Math.LN2;
    expectNear(value(freezePower(POWERS, SHORTER, longer / 2000, 0.5)), 400);
    // A limit in t0.5 against a table in t0.1.
    expectNear(value(freezePower(POWERS, SHORTER, 1 / 2000 / longer, 0.1, 0.5)), 400);
    // Both alike: nothing is turned.
    for (const level of [0.1, 0.5])
      expectNear(value(freezePower(POWERS, SHORTER, 1 / 2000, level, level)), 400);
    const { message } = refusal(freezePower(POWERS, SHORTER, longer / 16000, 0.5));
    expect(message).toContain('2 times the limit');
  });

  it('with a step is the highest setting that keeps the limit, and no answer rounded by hand', () => {
    // From 800 Ws in whole stops: 565.7 Ws would be short enough, 400 is the setting below.
    expectNear(value(freezePower(POWERS, SHORTER, Math.SQRT2 / 2000, 0.1, 0.1, 1)), 400);
    // A head that gets longer: short enough from 282.8 Ws up, so that 800 is, and with 1/8000 s 800 alone.
    expect(freezePower(POWERS, LONGER, 1 / 8000, 0.1, 0.1, 1)).toBe(800);
    // Short in the middle, 1/8000 s at 200 Ws: 141.4 to 282.8 Ws keep 1/4000 s; settings of 1.5 stops are 400 and 141.4.
    const middle = [
      [100, 200, 400],
      [1 / 2000, 1 / 8000, 1 / 2000],
    ] as const;
    expectNear(value(freezePower(...middle, 1 / 4000, 0.1, 0.1, 1.5)), 400 * 2 ** -1.5);
    expectNear(value(freezePower(...middle, 1 / 3999, 0.1, 0.1, 1.5)), 400 * 2 ** -1.5);
    expectNear(value(freezePower(...middle, 1 / 4000, 0.1, 0.1, 1)), 200);
  });

  it('counts settings down from the most, and no setting beyond the table', () => {
    // 600, 300, 150 Ws; the table ends at 100 and 800 Ws.
    expectNear(value(freezePower(POWERS, SHORTER, 1 / 3000, 0.1, 0.1, 1, 600)), 150);
    // 1600 Ws is beyond it: the next one down is 800.
    expect(freezePower(POWERS, SHORTER, 1, 0.1, 0.1, 1, 1600)).toBe(800);
    // And 1000, 500, 250 …: 500 is the first that the table covers.
    expect(freezePower(POWERS, SHORTER, 1, 0.1, 0.1, 1, 1000)).toBe(500);
    // Without a step the most is a bound.
    expect(freezePower(POWERS, SHORTER, 1, 0.1, 0.1, undefined, 600)).toBe(600);
    expect(refusal(freezePower(POWERS, SHORTER, 1, 0.1, 0.1, undefined, 50))).toEqual({
      fail: 'no-answer',
      message: 'The head is short enough from 100 to 800 Ws, which is more than its 50 Ws.',
    });
  });

  it('is refused where no setting is short enough, though energies between are, and says which', () => {
    // 141.4 to 282.8 Ws keep the limit; settings of 3 stops from 400 are 400 and 50.
    const { fail, message } = refusal(
      freezePower([100, 200, 400], [1 / 2000, 1 / 8000, 1 / 2000], 1 / 4000, 0.1, 0.1, 3),
    );
    expect(fail).toBe('no-answer');
    expect(message).toContain('from 141.4 to 282.8 Ws');
    expect(message).toContain('3 stops down from 400 Ws');
    // A table of one row.
    expect(refusal(freezePower([400], [1 / 2000], 1 / 2000, 0.1, 0.1, 1, 600)).message).toContain(
      'at 400 Ws',
    );
  });

  it('with a step is what trying every setting against the table gives', () => {
    const table = fc.array(fc.double({ min: -5, max: -2, noNaN: true }), { minLength: 2, maxLength: 6 });
    const step = fc.constantFrom(0.1, 1 / 3, 0.5, 1);
    fc.assert(
      fc.property(
        table,
        fc.double({ min: -5, max: -2, noNaN: true }),
        step,
        fc.double({ min: 300, max: 3000 }),
        (logs, limit, each, most) => {
          const powers = logs.map((_, i) => 50 * 2 ** (1.3 * i));
          const times = logs.map((log) => 10 ** log);
          const settings = Array.from({ length: 120 }, (_, k) => most * 2 ** (-k * each));
          // a time that equals the limit but for rounding may be taken or left
          const wanted = [10 ** limit, 10 ** limit * (1 + 1e-9)].map((longest) =>
            settings.find((power) => {
              const time = freezeDuration(powers, times, power);
              return typeof time === 'number' && time <= longest;
            }),
          );
          const came = freezePower(powers, times, 10 ** limit, 0.1, 0.1, each, most);
          if (isFail(came)) {
            expect(came.fail).toBe('no-answer');
            expect(wanted).toContain(undefined);
          } else
            expectNear(came, wanted.find((power) => power && Math.abs(came / power - 1) < 1e-9) ?? NaN, 1e-9);
        },
      ),
      trials(97),
    );
  });

  itKeepsItsRanges('FREEZEPOWER', {
    powers: [[100, 400], 'above 0'],
    durations: [[1 / 4000, 1 / 1000], 'above 0'],
    limit: [1 / 2000, 'above 0'],
    level: [0.1, 'level'],
    limitLevel: [0.1, 'level'],
    step: [0.1, 'above 0'],
    most: [400, 'above 0'],
  });
});
