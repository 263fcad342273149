import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../../full';
import { headNote, planNote } from '../../../../src/catalogue/planRemarks';
import type { Answer } from '../../../../src/cells/call';
import { isFail } from '../../../../src/exposure/core/result';
import { readingForPower } from '../../../../src/exposure/distance/reading';
import { lightTargets } from '../../../../src/exposure/light/lightTargets';
import {
  type Plan,
  type PlannedHead,
  popsPlan,
  popsPlanTime,
} from '../../../../src/exposure/pops/plan/popsPlan';
import { popsBuild } from '../../../../src/exposure/pops/popsBuild';
import { popsForTarget } from '../../../../src/exposure/pops/pops';
import { popsTime } from '../../../../src/exposure/pops/popsTime';
import { answerOf, expectNear, itKeepsItsRanges, refusal, value } from '../../support';
import { ALL_COLUMNS, argumentsOf, COLUMNS, type Job, largeJob, planOf, smallJob } from './jobs';

/** A head of the invented hire list: Cedar 2400 has a dial of six stops. */
const CEDAR = { least: 37.5, most: 2400 };

interface Light {
  readonly reading: number | undefined;
  readonly target: number | undefined;
  readonly power?: number;
  readonly least?: number;
  readonly most?: number;
  readonly recycle?: number;
  readonly recycleLeast?: number;
  readonly step?: number;
  readonly allowed?: number;
  readonly switchable?: boolean;
}

/** A job of a few lights; what is left out is a head without a dial, of 400 Ws and 1 s. */
const jobOf = (lights: readonly Light[], rest: Partial<Job> = {}): Job => ({
  readings: lights.map((l) => l.reading),
  targets: lights.map((l) => l.target),
  powers: lights.map((l) => l.power ?? l.most ?? 400),
  least: lights.map((l) => l.least ?? 400),
  most: lights.map((l) => l.most ?? 400),
  recycleFull: lights.map((l) => l.recycle ?? 1),
  recycleLeast: lights.map((l) => l.recycleLeast),
  loss: 0,
  step: lights.map((l) => l.step ?? 0.1),
  mostPops: 99,
  pause: 0,
  tolerance: undefined,
  allowed: lights.map((l) => l.allowed),
  switchable: lights.map((l) => l.switchable ?? true),
  ...rest,
});
/** A light that is on its target. */
const ON: Light = { reading: 8, target: 8 };
const plan = (lights: readonly Light[], rest: Partial<Job> = {}): Plan => value(planOf(jobOf(lights, rest)));
const popsIn = (made: Plan): number[] => made.heads.map(({ pops }) => pops);
const missIn = (made: Plan, head = 0): number => made.heads[head]?.miss as number;
const remarkIn = (made: Plan, head = 0): string => headNote((made.heads[head] as PlannedHead).remarks);
const remarkOn = (made: Plan): string => planNote(made.remarks);
/** What a head reads for the stops that it lies from f/16. */
const stopsFrom16 = (stops: number): number => 16 * 2 ** (stops / 2);

describe('one head', () => {
  it('without a dial fires twice for each stop, until half a step spares a pop', () => {
    expect(plan([{ reading: 4, target: 4 * 2 ** 2.5 }]).pops).toBe(31); // log2 31 is 4.954
    for (let stops = 0; stops <= 4; stops++) {
      const made = plan([{ reading: 4, target: 4 * 2 ** (stops / 2) }]);
      expect(made.pops).toBe(2 ** stops);
      expect(made.heads).toEqual([
        { power: 400, pops: 2 ** stops, reading: made.reading, miss: 0, remarks: [] },
      ]);
      expectNear(made.reading, 4 * 2 ** (stops / 2));
    }
  });

  it('is turned down where one pop is too much: 1.3 stops are 13 steps of a tenth', () => {
    const made = plan([{ ...CEDAR, reading: stopsFrom16(1.3), target: 16 }]);
    expect(made.pops).toBe(1);
    expectNear(made.heads[0]?.power as number, 2400 * 2 ** -1.3);
    expectNear(made.reading, 16);
    expect(missIn(made)).toBe(0);
  });

  it('is turned up before it fires twice: read at 300 Ws, three stops are in its dial', () => {
    const made = plan([{ ...CEDAR, power: 300, reading: 16, target: stopsFrom16(3) }]);
    expect(made.pops).toBe(1);
    expectNear(made.heads[0]?.power as number, 2400);
  });

  it('fires twice for 0.2 stop over full power, turned down by 0.8: worked by hand, log2 2 − 0.2', () => {
    const made = plan([{ ...CEDAR, reading: 16, target: stopsFrom16(0.2) }]);
    expect(made.pops).toBe(2);
    expectNear(made.heads[0]?.power as number, 2400 * 2 ** -0.8);
    expect(missIn(made)).toBe(0);
  });

  it('may miss by half a step and no more: 0.05 stop short is one pop, 0.051 are two', () => {
    expect(plan([{ ...CEDAR, reading: 16, target: stopsFrom16(0.05) }]).pops).toBe(1);
    expect(plan([{ ...CEDAR, reading: 16, target: stopsFrom16(0.051) }]).pops).toBe(2);
    expect(missIn(plan([{ ...CEDAR, reading: 16, target: stopsFrom16(0.05) }]))).toBe(-0.05);
  });

  it('is given a billionth of a stop more than half a step, against rounding errors', () => {
    expect(plan([{ ...CEDAR, reading: 16, target: stopsFrom16(0.05 + 5e-10) }]).pops).toBe(1);
    expect(plan([{ ...CEDAR, reading: 16, target: stopsFrom16(0.05 + 2e-9) }]).pops).toBe(2);
  });

  it('at the very end of that has the fewest pops that fit, whichever way the last digit is rounded', () => {
    for (let n = 2; n <= 99; n++)
      for (let digit = -4; digit <= 4; digit++) {
        const light = { ...CEDAR, reading: 16, target: 16 };
        const loss = (Math.log2(n) + 0.05 + 1e-9) * (1 + digit * Number.EPSILON);
        const made = plan([light], { loss, mostPops: 120 });
        expect(remarkIn(made), `${n} pops`).toBe('');
        const fewer = plan([light], { loss, mostPops: made.pops - 1 });
        expect(fewer.pops).toBe(made.pops - 1);
        expect(remarkIn(fewer), `${n} pops`).toMatch(/too weak/);
      }
  });

  it('midway between two marks takes the lower, which recycles faster', () => {
    for (let k = 0; k < 60; k++) {
      const made = plan([{ ...CEDAR, reading: stopsFrom16((k + 0.5) / 10), target: 16 }]);
      expectNear(made.heads[0]?.power as number, 2400 * 2 ** (-(k + 1) / 10));
      expect(missIn(made)).toBeCloseTo(-0.05, 10);
    }
  });

  it('has its lowest mark at the nearest whole step to its least power, a tie to the lower', () => {
    const lowest = (least: number): number =>
      plan([{ least, most: 400, reading: 512, target: 16 }]).heads[0]?.power as number;
    expectNear(lowest(400 * 2 ** -0.54), 400 * 2 ** -0.5);
    for (let k = 0; k < 60; k++) expectNear(lowest(400 * 2 ** (-(k + 0.5) / 10)), 400 * 2 ** (-(k + 1) / 10));
    expectNear(lowest(400 * 2 ** -0.04), 400);
  });

  it('with a full dial needs as many pops as the same head left at full power', () => {
    const stops = fc.double({ min: 0, max: 6.5, noNaN: true });
    fc.assert(
      fc.property(stops, fc.double({ min: -1, max: 1, noNaN: true }), (up, loss) => {
        const target = stopsFrom16(up - loss);
        expect(plan([{ ...CEDAR, reading: 16, target }], { loss }).pops).toBe(
          value(popsForTarget(16, target, loss)),
        );
      }),
      trials(71),
    );
  });
});

describe('several heads', () => {
  it('that cannot be turned down are switched off after their own pops', () => {
    const made = plan([
      { reading: 8, target: 16 },
      { reading: 8, target: 8 * Math.SQRT2 },
      { reading: 8, target: 8 },
    ]);
    expect(made.pops).toBe(4);
    expect(popsIn(made)).toEqual([4, 2, 1]);
    expectNear(made.reading, Math.sqrt(256 + 128 + 64));
  });

  it('that can be turned down fire on every pop: two stops down for four pops', () => {
    const made = plan([
      { reading: 8, target: 16 },
      { ...CEDAR, reading: 8, target: 8 },
    ]);
    expect(popsIn(made)).toEqual([4, 4]);
    expectNear(made.heads[1]?.power as number, 600);
  });

  it('that can be turned down, but not enough, are switched off, and fire the fewest pops that fit', () => {
    // a dial of one stop: 8 pops are three stops too much, and one pop at full power fits as two at half power would
    const made = plan([
      { reading: 8, target: 8 * 2 ** 1.5 },
      { least: 200, reading: 8, target: 8 },
    ]);
    expect(popsIn(made)).toEqual([8, 1]);
    expectNear(made.heads[1]?.power as number, 400);
  });

  it('read what their targets from the total and their stops say, within half a step', () => {
    const fromKey = [0, -1, -2, -1.5, 0.5, -3, -0.7, -2.2, -1.1, -0.3, -2.6, -1.9];
    const targets = value(lightTargets(22.6, fromKey)).map((target) => target as number);
    const made = plan(targets.map((target, i) => ({ ...CEDAR, reading: 5 + (i % 4), target })));
    for (const [i, target] of targets.entries()) {
      expect(Math.abs(missIn(made, i))).toBeLessThanOrEqual(0.05 + 1e-9);
      expect(Math.abs(2 * Math.log2((made.heads[i]?.reading as number) / target))).toBeLessThan(0.0501);
    }
    expect(Math.abs(2 * Math.log2(made.reading / 22.6))).toBeLessThan(0.0501);
    expect(new Set(popsIn(made))).toEqual(new Set([made.pops]));
  });

  it('read each alone what their power and pops give, and together what the build gives', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0 }), (seed) => {
        const job = smallJob(seed);
        const made = value(planOf(job));
        const lit = made.heads.flatMap(({ power, pops, reading }, i) => {
          if (power === undefined) return [];
          const [read, at] = [job.readings[i] as number, job.powers[i] as number];
          expectNear(
            reading as number,
            value(readingForPower(read, at, power, undefined, undefined, job.loss, pops)),
            1e-10,
          );
          return { one: value(readingForPower(read, at, power)), pops };
        });
        if (lit.length === 0) return;
        const together = popsBuild(
          lit.map(({ one }) => one),
          lit.map(({ pops }) => pops),
          undefined,
          undefined,
          undefined,
          job.loss,
        );
        expectNear(made.reading, value(together), 1e-10);
      }),
      trials(72),
    );
  });
});

describe('what a plan is given beside the heads', () => {
  /** A head without a dial, five stops from its target. */
  const five = { reading: 4, target: 4 * 2 ** 2.5 };

  it('is a tolerance: log2 30 is 4.907 and log2 31 4.954, so that a tenth spares two pops and none spares none', () => {
    expect(plan([five], { tolerance: 0.1 }).pops).toBe(30);
    expect(plan([five]).pops).toBe(31);
    expect(plan([five], { tolerance: 0.05 }).pops).toBe(31);
    expect(plan([five], { tolerance: 0 }).pops).toBe(32);
  });

  it('is a tolerance below half a step: what no setting meets is out of reach, at its nearest setting', () => {
    // between two marks: 0.04 stop over the one, 0.06 under the other
    const between = plan([{ ...CEDAR, reading: stopsFrom16(1.04), target: 16 }], {
      tolerance: 0.03,
      mostPops: 1,
    });
    expect(missIn(between)).toBeCloseTo(0.04, 10);
    expect(remarkIn(between)).toBe('0.04 stop too strong at its nearest setting, one pop');
    const under = plan([{ ...CEDAR, reading: stopsFrom16(0.96), target: 16 }], {
      tolerance: 0.03,
      mostPops: 1,
    });
    expect(remarkIn(under)).toBe('0.04 stop too weak at its nearest setting, one pop');
    // log2 3 = 1.585 brings it 0.025 over a mark, and two pops bring no more than before
    const three = plan([{ ...CEDAR, reading: stopsFrom16(1.04), target: 16 }], { tolerance: 0.03 });
    expect(three.pops).toBe(3);
    expect(missIn(three)).toBeCloseTo(Math.log2(3) + 1.04 - 2.6, 10);
  });

  it('is a step a head: in whole stops 1.3 stops over are 0.3 too much', () => {
    const over = { ...CEDAR, reading: stopsFrom16(1.3), target: 16 };
    const made = plan([{ ...over, step: 1 }, over]);
    expectNear(made.heads[0]?.power as number, 1200);
    expect([missIn(made, 0), missIn(made, 1)]).toEqual([0.3, 0]);
    expect(made.worst).toBe(0.3);
    expect(plan([over, { ...over, step: 1 }]).worst).toBe(0.3);
    expect([remarkIn(made, 0), remarkOn(made)]).toEqual(['', '']);
  });

  it('is the flashes in a row that are allowed: a plan beyond them is kept, and says so', () => {
    const made = plan([
      { ...five, allowed: 12 },
      { ...ON, allowed: 1 },
    ]);
    expect(popsIn(made)).toEqual([31, 1]);
    expect(remarkIn(made)).toBe('31 pops in a row, where 12 are allowed');
    expect(remarkIn(made, 1)).toBe('switch off after one pop');
    expect(remarkOn(made)).toBe('switch off head 2 after one pop; more pops in a row than allowed: head 1');
    expect(remarkIn(plan([{ ...five, allowed: 31 }]))).toBe('');
    expect(remarkIn(plan([{ ...five, allowed: 1 }]))).toBe('31 pops in a row, where 1 is allowed');
  });

  it('is which heads must stay on: two fixed heads two stops apart then miss by a stop each at two pops', () => {
    const two = [
      { reading: 8, target: 16 },
      { reading: 8, target: 8, switchable: false },
    ];
    const made = plan(two);
    expect(popsIn(made)).toEqual([2, 2]);
    expect([missIn(made), missIn(made, 1)]).toEqual([-1, 1]);
    expect(remarkIn(made)).toBe('1 stop too weak at 2 pops');
    expect(remarkIn(made, 1)).toBe(
      '1 stop too strong at least power, 2 pops, and it stays on for all of them',
    );
    expect(remarkOn(made)).toBe('out of reach: heads 1 and 2; of all plans this one misses least');
    // a head with a dial stays on without a miss
    expect(popsIn(plan([two[0] as Light, { ...CEDAR, ...ON, switchable: false }]))).toEqual([4, 4]);
  });

  it('is the order in which heads go off, as the fewest pops first', () => {
    const made = plan([{ reading: 8, target: 8 * 2 ** 1.5 }, ON, { reading: 8, target: 16 }, ON]);
    expect(remarkOn(made)).toBe('switch off heads 2 and 4 after one pop, head 3 after 4 pops');
    const turned = plan([{ reading: 8, target: 8 * 2 ** 1.5 }, { reading: 8, target: 16 }, ON, ON, ON]);
    expect(remarkOn(turned)).toBe('switch off heads 3, 4 and 5 after one pop, head 2 after 4 pops');
  });

  it('is how often a head may fire: of one that is too weak at the most pops no more is said', () => {
    // half a stop under with one pop, half a stop over with two
    const half = { reading: stopsFrom16(-0.5), target: 16 };
    expect(remarkIn(plan([half], { mostPops: 1 }))).toBe('0.5 stop too weak at one pop');
    expect(remarkIn(plan([half], { mostPops: 2 }))).toBe(
      '0.5 stop too weak at one pop, and 0.5 stop too strong at least power, 2 pops',
    );
  });

  it('that must stay on, of one pop, is no more than too strong', () => {
    const made = plan([{ reading: 16, target: 8, switchable: false }]);
    expect(remarkIn(made)).toBe('2 stops too strong at least power, one pop');
  });

  it('is a tolerance at whose end a head fires on all pops: half a stop under at one, half a stop over at two', () => {
    const made = plan(
      [
        { reading: stopsFrom16(-1), target: 16 },
        { reading: stopsFrom16(-0.5), target: 16 },
      ],
      {
        tolerance: 0.5,
      },
    );
    expect(popsIn(made)).toEqual([2, 2]);
  });

  it('is a tolerance within which a head that is switched off fires as seldom as it may', () => {
    // 0.55 stop under with one pop, nearer at 0.45 over with two; the other needs six, as log2 6 is 2.585
    const made = plan(
      [
        { reading: stopsFrom16(-3), target: 16 },
        { reading: stopsFrom16(-0.55), target: 16 },
      ],
      {
        tolerance: 0.6,
      },
    );
    expect(popsIn(made)).toEqual([6, 1]);
  });

  it('is a recycle time at least power, linear in between: worked by hand, 0.5 + 1162.5 / 2362.5 · 3.5', () => {
    const half = { ...CEDAR, reading: stopsFrom16(1), target: 16, recycle: 4, recycleLeast: 0.5 };
    expectNear(plan([half]).seconds.ready, 0.5 + (1162.5 / 2362.5) * 3.5);
    const full = { ...half, reading: 16 };
    expect(plan([full]).seconds.ready).toBe(4);
    const lowest = { ...half, reading: stopsFrom16(6) };
    expectNear(plan([lowest]).seconds.ready, 0.5);
    expectNear(plan([{ ...full, least: 2400 }]).seconds.ready, 4);
    // the lowest mark may lie below the least energy, and is as fast as that
    expect(plan([{ ...half, least: 1234 }]).seconds.ready).toBeCloseTo(0.5, 10);
  });

  it('takes the higher of two settings as near where that is ready sooner', () => {
    const midway = { ...CEDAR, reading: stopsFrom16(1.05), target: 16, recycle: 1 };
    expectNear(plan([{ ...midway, recycleLeast: 3 }]).heads[0]?.power as number, 1200);
    // and else the lower, as fast or faster
    for (const recycleLeast of [1, 0.5])
      expectNear(plan([{ ...midway, recycleLeast }]).heads[0]?.power as number, 2400 * 2 ** -1.1);
  });
});

describe('a plan of the columns alone', () => {
  it('switches heads off, in steps of a tenth, and is asked when the next frame can start', () => {
    const columns = [[8, 8], [400, 400], [16, 8], [400, 400], [400, 400], [[1, undefined], [1, undefined]]] as const; // prettier-ignore
    expect(popsIn(value(popsPlan(...columns)))).toEqual([4, 1]);
    expect([popsPlanTime(...columns)]).toEqual([4]);
  });

  it('is refused where what a head misses is no number, beside one that misses nothing', () => {
    const fine = { ...CEDAR, reading: 512, target: 16, step: 5e-324 };
    expect(refusal(planOf(jobOf([fine, ON]))).fail).toBe('domain');
  });
});

describe('plans are kept', () => {
  it('by their arguments, the last eight of them', () => {
    const jobs = Array.from({ length: 9 }, (_, i) => jobOf([{ reading: 8, target: 16 + i }]));
    const made = jobs.map(planOf);
    for (const [i, job] of jobs.entries()) if (i > 0) expect(planOf(structuredClone(job))).toBe(made[i]);
    expect(planOf(jobs[0] as Job)).not.toBe(made[0]);
    expect(planOf(jobs[0] as Job)).toEqual(made[0]);
  });

  it('and asked for their seconds', () => {
    const job = jobOf([{ reading: 8, target: 16, recycle: 2 }]);
    expect(value(popsPlanTime(...argumentsOf(job), 'ready'))).toBe(8);
    expect(value(popsPlanTime(...argumentsOf(job), 'open'))).toBe(6);
    // four pops wait for the slower of two heads, whichever stands first
    for (const [one, other] of [
      [1, 3],
      [3, 1],
    ] as const) {
      const two = argumentsOf(
        jobOf([
          { reading: 8, target: 16, recycle: one },
          { reading: 8, target: 16, recycle: other },
        ]),
      );
      expect([popsPlanTime(...two, 'ready'), popsPlanTime(...two, 'open')]).toEqual([12, 9]);
    }
    expect(refusal(popsPlanTime(...argumentsOf(jobOf([])), 'open')).message).toContain('readings is blank');
  });
});

describe('a plan from cells', () => {
  const column = (...cells: unknown[]): unknown[][] => cells.map((cell) => [cell]);
  /** Two heads of 400 Ws without a dial, f/8 each, that must read f/16 and f/8. */
  const two = (...more: unknown[]): Answer =>
    answerOf('POPSPLAN', column(8, 8), 400, column(16, 8), 400, 400, 1, ...more);
  const rows = (answer: Answer): unknown[][] => answer as unknown[][];
  const pops = (...more: unknown[]): unknown[] => rows(two(...more)).map((cells) => cells[1]);

  it('reads yes and no, TRUE and FALSE, and an empty cell as yes, whatever the host sends for it', () => {
    for (const no of ['no', 'NO', false, 'FALSE', '0', 'none'])
      expect(pops(0, 0.1, 99, 0, null, null, column(true, no))).toEqual([2, 2, 2]);
    for (const yes of ['yes', true, '1', null, 0, ''])
      expect(pops(0, 0.1, 99, 0, null, null, column('no', yes))).toEqual([4, 1, 4]);
    expect(pops(0, 0.1, 99, 0, null, null, 'no')).toEqual([2, 2, 2]);
    expect(two(0, 0.1, 99, 0, null, null, column('no', 'perhaps'))).toMatchObject({
      error: '#VALUE!',
      message: 'switchable must be TRUE or FALSE.',
    });
    // beside a 1 a 0 is meant as no, and cannot be told from an empty cell
    expect(two(0, 0.1, 99, 0, null, null, column(1, 0))).toMatchObject({ error: '#VALUE!' });
  });

  it('reads a tolerance, none as 0, and a blank as half a step', () => {
    const five = (tolerance: unknown): unknown =>
      rows(answerOf('POPSPLAN', '4 exact', 400, `${4 * 2 ** 2.5} exact`, 400, 400, 1, 0, null, null, 0, tolerance))[0]?.[1]; // prettier-ignore
    expect(five('none')).toBe(32);
    for (const blank of [null, 0, '']) expect(five(blank)).toBe(31);
    expect(five(0.1)).toBe(30);
  });

  it('reads steps and allowed flashes of each head or for all, blanks as a tenth and as no limit', () => {
    const power = (...more: unknown[]): unknown[] =>
      rows(
        answerOf('POPSPLAN', column('f/16+1/3', 'f/16+1/3'), 400, column(16, 16), 50, 400, 1, 0, ...more),
      ).map(([watts]) => watts);
    const third = expect.closeTo(400 * 2 ** (-1 / 3), 9);
    const tenths = expect.closeTo(400 * 2 ** -0.3, 9);
    expect(power('1/3')).toEqual([third, third, '']);
    expect(power(column('1/3', null))).toEqual([third, tenths, '']);
    expect(power(null)).toEqual([tenths, tenths, '']);
    const remarks = (...more: unknown[]): unknown[] =>
      rows(two(0, 0.1, 99, 0, null, ...more)).map((row) => row[4]);
    expect(remarks(3)[0]).toBe('4 pops in a row, where 3 are allowed');
    expect(remarks(column(null, 3))[0]).toBe('');
    expect(remarks(null)[0]).toBe('');
  });

  it('reads a second column of recycle times beside heads in a column, and in no other shape', () => {
    const seconds = (recycle: unknown, ...more: unknown[]): Answer =>
      answerOf('POPSPLANTIME', column('f/22', 'f/16'), 400, column(16, 16), 100, 400, recycle, ...more);
    // a stop down: 200 of 100 to 400 Ws, a third of the way from 0.3 to 3 s
    expect(seconds([[3, 0.3], [1, null]])).toBeCloseTo(1.2, 10); // prettier-ignore
    expect(seconds([[3], [1]])).toBeCloseTo(1.5, 10);
    // a row beside a column pairs up by position
    expect(seconds([[3, 1]])).toBeCloseTo(1.5, 10);
    expect(seconds([[3, 0.3, 1], [1, 1, 1]])).toMatchObject({ error: '#VALUE!' }); // prettier-ignore
    expect(seconds([[3, -0.3], [1, 1]])).toMatchObject({ error: '#NUM!', message: expect.stringContaining('recycleFull') }); // prettier-ignore
    expect(seconds([[3, 'odd'], [1, 1]])).toMatchObject({ error: '#VALUE!', message: expect.stringContaining('"odd"') }); // prettier-ignore
  });

  it('takes as long as its pops, or one wait less while the shutter is open', () => {
    const seconds = (...more: unknown[]): Answer =>
      answerOf('POPSPLANTIME', column(8, 8), 400, column(16, 8), 400, 400, column(1, 3), ...more);
    // the first pop waits for the slow head, the other three for the fast one
    expect(seconds()).toBe(3 + 3);
    expect(seconds(0, null, null, null, null, null, null, 'open')).toBe(3 + 2);
    expect(seconds(0, null, null, 4, null, null, null, 'open')).toBe(3 * 4);
  });

  it('has the total that its own powers and pops build, a head that is off left out', () => {
    const readings = column(8, 11, 16);
    const powers = column(100, 200, 400);
    const made = rows(
      answerOf('POPSPLAN', readings, powers, column(22, null, 32), column(50, 50, 50), 400, 1, 1),
    );
    const planned = (k: number): unknown[][] => made.slice(0, 3).map((row) => [row[k]]);
    expect(planned(0)[1]).toEqual(['']);
    const reads = answerOf('READINGFORPOWER', readings, powers, planned(0));
    const total = answerOf('POPSBUILD', reads, planned(1), null, null, null, 1);
    expect(total).toBeCloseTo(made[3]?.[2] as number, 10);
  });
});

describe('heads that are off', () => {
  const on = { ...CEDAR, reading: 16, target: 16 };
  const alone = plan([on]);

  it('have a blank reading or a blank target, no power, no pops and no miss, and change nothing', () => {
    for (const [off, said] of [
      [{ reading: undefined, target: 16 }, [{ remark: 'off', lacks: 'reading' }]],
      [{ reading: 16, target: undefined }, [{ remark: 'off', lacks: 'target' }]],
      [{ reading: undefined, target: undefined }, []],
    ] as const) {
      const made = plan([{ ...CEDAR, ...off, recycle: 9 }, on]);
      expect(made).toEqual({ ...alone, heads: [{ pops: 0, remarks: said }, ...alone.heads] });
    }
  });

  it('may be all: then there is nothing to fire, to read and to wait for', () => {
    const off = { reading: undefined, target: undefined };
    expect(plan([off, off], { pause: 3 })).toEqual({
      heads: [
        { pops: 0, remarks: [] },
        { pops: 0, remarks: [] },
      ],
      pops: 0,
      reading: 0,
      worst: undefined,
      remarks: [{ remark: 'all off' }],
      seconds: { ready: 0, open: 0 },
    });
  });

  it('need no other cells, and what stands there must be in order', () => {
    const blank = [undefined, 16];
    const made = popsPlan(
      blank,
      [undefined, 2400],
      blank,
      [undefined, 37.5],
      [undefined, 2400],
      [
        [undefined, undefined],
        [1, undefined],
      ],
    );
    expect(value(made).heads[0]).toEqual({ pops: 0, remarks: [] });
    const column = (...cells: unknown[]): unknown[][] => cells.map((cell) => [cell]);
    const off = (power: number | null, least: number | null): Answer =>
      answerOf('POPSPLAN', column(null, 16), column(power, 2400), column(null, 16), column(least, 37.5), column(null, 2400), column(null, 1)); // prettier-ignore
    expect(off(null, null)).toHaveLength(3);
    expect(off(-5, null)).toMatchObject({
      message: 'powers (number 1 of the list) must be above 0, not -5.',
    });
    expect(off(null, -5)).toMatchObject({ message: 'least (number 1 of the list) must be above 0, not -5.' });
  });
});

describe('heads out of reach', () => {
  it('are too weak at the most pops, and the others still fit', () => {
    // worked by hand: 99 pops are 6.629 stops, 0.4 less than wanted
    const made = plan([
      { reading: 4, target: 4 * 2 ** ((Math.log2(99) + 0.4) / 2) },
      { ...CEDAR, reading: 8, target: 8 },
    ]);
    expect(remarkIn(made)).toBe('0.4 stop too weak at 99 pops');
    expect(popsIn(made)).toEqual([99, 1]);
    expect(missIn(made, 1)).toBe(0);
    expectNear(made.heads[0]?.reading as number, 4 * Math.sqrt(99));
  });

  it('are too strong at least power with one pop, and the others still fit', () => {
    const made = plan([
      { ...CEDAR, reading: stopsFrom16(7.1), target: 16 },
      { reading: 8, target: 16 },
    ]);
    expect(remarkIn(made)).toBe('1.1 stops too strong at least power, one pop; switch off after one pop');
    expect(made.heads[0]?.power).toBe(37.5);
    expect(popsIn(made)).toEqual([1, 4]);
    expect(missIn(made, 1)).toBe(0);
  });

  it('lie between two numbers of pops, and take the nearer: worked by hand, log2 3 = 1.585', () => {
    const near3 = plan([{ reading: 8, target: 8 * 2 ** (1.485 / 2) }]);
    expect(popsIn(near3)).toEqual([3]);
    expect(remarkIn(near3)).toBe(
      '0.1 stop too strong at least power, 3 pops, and 0.48 stop too weak at 2 pops',
    );
    const near2 = plan([{ reading: 8, target: 8 * 2 ** (1.1 / 2) }]);
    expect(popsIn(near2)).toEqual([2]);
    expect(remarkIn(near2)).toBe(
      '0.1 stop too weak at 2 pops, and 0.48 stop too strong at least power, 3 pops',
    );
  });

  it('midway between two numbers of pops take the fewer', () => {
    for (let n = 1; n <= 9; n++) {
      const target = 8 * (n * (n + 1)) ** 0.25;
      expect(popsIn(plan([{ reading: 8, target }]))).toEqual([n]);
      expect(popsIn(plan([{ reading: 8, target: target * 1.0001 }]))).toEqual([n + 1]);
    }
  });

  it('do not hide each other: the one that is too strong does not keep the weak one from its pops', () => {
    const made = plan(
      [
        { reading: stopsFrom16(3), target: 16 },
        { reading: 16, target: stopsFrom16(4) },
      ],
      { mostPops: 12 },
    );
    expect(popsIn(made)).toEqual([1, 12]);
    expect(remarkIn(made, 0)).toBe('3 stops too strong at least power, one pop; switch off after one pop');
    expect(remarkIn(made, 1)).toBe('0.42 stop too weak at 12 pops');
  });

  it('fire a whole number of times, also where the most pops are whole but for a rounding error', () => {
    expect(plan([{ reading: 1, target: 64 }], { mostPops: 99 - 1e-8 }).pops).toBe(99);
  });

  it('are held to the most pops: one where no more are allowed', () => {
    const made = plan([{ reading: 16, target: stopsFrom16(1) }], { mostPops: 1 });
    expect(remarkIn(made)).toBe('1 stop too weak at one pop');
    const hair = plan([{ reading: 16, target: stopsFrom16(1.004) }], { mostPops: 1 });
    expect(remarkIn(hair)).toBe('1 stop too weak at one pop');
  });
});

describe('loss', () => {
  it('costs twice the pops for each stop, and a gain halves them', () => {
    for (let loss = -2; loss <= 2; loss++) {
      const made = plan([{ reading: 8, target: 16 }], { loss });
      expect(made.pops).toBe(2 ** (2 + loss));
      expectNear(made.reading, 16);
    }
  });

  it('counts as targets higher by as many stops, and readings after it lower by them', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0 }), (seed) => {
        const job = largeJob(seed);
        const up = 2 ** (job.loss / 2);
        const made = value(planOf(job));
        const lossless = value(planOf({ ...job, loss: 0, targets: job.targets.map((t) => t && t * up) }));
        expect(powersIn(lossless)).toEqual(powersIn(made));
        expect(popsIn(lossless)).toEqual(popsIn(made));
        expectNear(lossless.reading / up, made.reading, 1e-10);
      }),
      trials(73),
    );
  });
});

describe('time', () => {
  it('is the slowest of the heads that fire, pop by pop: worked by hand, 2·3 + 2·2', () => {
    const lights = [
      { reading: 8, target: 16, recycle: 2 },
      { reading: 8, target: 8 * Math.SQRT2, recycle: 3 },
    ];
    expect(plan(lights).seconds).toEqual({ ready: 10, open: 2 * 3 + 2 });
    expect(plan(lights, { pause: 2.5 }).seconds.ready).toBe(2 * 3 + 2 * 2.5);
    expect(plan(lights, { pause: 4 }).seconds).toEqual({ ready: 16, open: 12 });
  });

  it('goes with the power: a head turned down by a stop is ready in half the time', () => {
    const lights = [{ ...CEDAR, reading: stopsFrom16(1), target: 16, recycle: 3 }];
    expectNear(plan(lights).seconds.ready, 1.5);
  });

  it('of one head is that of its pops without a pause', () => {
    for (let stops = 0; stops < 6; stops++) {
      const made = plan([{ reading: 4, target: 4 * 2 ** (stops / 2), recycle: 1.7 }]);
      expectNear(made.seconds.ready, value(popsTime(made.pops, 1.7)));
      expectNear(made.seconds.open, value(popsTime(made.pops, 1.7, 0, 'open')));
    }
  });
});

const powersIn = (made: Plan): (number | undefined)[] => made.heads.map(({ power }) => power);
const changed = (job: Job, names: readonly (keyof Job)[], factor: number): Job => ({
  ...job,
  ...Object.fromEntries(
    names.map((name) => [name, (job[name] as Job['readings']).map((x) => x && x * factor)]),
  ),
});

describe('a plan', () => {
  const anyJob = fc
    .tuple(fc.integer({ min: 0 }), fc.boolean())
    .map(([seed, large]) => (large ? largeJob(seed, { strays: 0.1 }) : smallJob(seed)));
  const factor = fc.double({ min: -3, max: 3, noNaN: true }).map((x) => 2 ** x);

  it('is the same in whatever order the heads are listed', () => {
    fc.assert(
      fc.property(anyJob, fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true })), (job, random) => {
        const order = job.readings
          .map((_, i) => ({ i, at: random.next().value as number }))
          .sort((a, b) => a.at - b.at)
          .map(({ i }) => i);
        const mixed = Object.fromEntries(ALL_COLUMNS.map((name) => [name, order.map((i) => job[name][i])]));
        const [made, again] = [value(planOf(job)), value(planOf({ ...job, ...mixed } as Job))];
        expect(again.heads).toEqual(order.map((i) => made.heads[i]));
        expect(again.pops).toBe(made.pops);
        expect(Math.abs(again.seconds.ready - made.seconds.ready)).toBeLessThan(1e-9);
        expect(Math.abs(again.reading - made.reading)).toBeLessThan(1e-9 * (1 + made.reading));
      }),
      trials(74),
    );
  });

  it('keeps its powers and pops where all readings and targets change by the same factor', () => {
    fc.assert(
      fc.property(anyJob, factor, (job, times) => {
        const [made, again] = [
          value(planOf(job)),
          value(planOf(changed(job, ['readings', 'targets'], times))),
        ];
        expect(powersIn(again)).toEqual(powersIn(made));
        expect(popsIn(again)).toEqual(popsIn(made));
        expectNear(again.seconds.ready, made.seconds.ready);
        expectNear(again.reading, times * made.reading, 1e-10);
      }),
      trials(75),
    );
  });

  it('changes its powers by the factor by which all energies change', () => {
    fc.assert(
      fc.property(anyJob, factor, (job, times) => {
        const [made, again] = [
          value(planOf(job)),
          value(planOf(changed(job, ['powers', 'least', 'most'], times))),
        ];
        for (const [i, power] of powersIn(again).entries())
          if (power !== undefined) expectNear(power, times * (made.heads[i]?.power as number));
        expect(popsIn(again)).toEqual(popsIn(made));
      }),
      trials(76),
    );
  });

  it('is made again from its own powers and what the heads read at them', () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const made = value(planOf(job));
        const powers = job.powers.map((power, i) => made.heads[i]?.power ?? power);
        const readings = job.readings.map(
          (reading, i) => reading && reading * Math.sqrt((powers[i] ?? 1) / (job.powers[i] ?? 1)),
        );
        const again = value(planOf({ ...job, powers, readings }));
        expect(powersIn(again)).toEqual(powersIn(made));
        expect(popsIn(again)).toEqual(popsIn(made));
      }),
      trials(77),
    );
  });

  it('leaves its columns as they are', () => {
    const job = largeJob(1);
    for (const name of ALL_COLUMNS) Object.freeze(job[name]);
    expect(isFail(planOf(job))).toBe(false);
  });

  it('holds finite numbers, or is refused, at the edge of what a computer holds', () => {
    const extreme = fc.constantFrom(1e-300, 1e-160, 1e-9, 1, 1e9, 1e160, 1e300);
    fc.assert(
      fc.property(extreme, extreme, extreme, extreme, fc.constantFrom(-2000, 0, 2000), (r, t, p, s, loss) => {
        const made = planOf({ ...jobOf([ON, ON]), readings: [r, 8], targets: [t, 8], powers: [p, p], least: [p, p], most: [p, p], loss, step: [s, s] }); // prettier-ignore
        if (isFail(made)) return;
        const numbers = made.heads.flatMap(({ power, reading, miss }) => [power, reading, miss]);
        for (const x of [made.reading, made.seconds.ready, made.seconds.open, ...numbers])
          expect(Number.isFinite(x)).toBe(true);
      }),
      trials(78, 400),
    );
  });
});

describe('refusals', () => {
  const two: Light = { ...CEDAR, reading: 16, target: 16 };
  const refused = (light: Partial<Record<keyof Light, number | undefined>>, rest: Partial<Job> = {}) =>
    refusal(planOf(jobOf([two, { ...two, ...light } as Light], rest)));
  const columns = jobOf([two, two]);

  it('name the column that is shorter or longer than the readings', () => {
    for (const name of [...COLUMNS.slice(1, -1), 'step', 'allowed', 'switchable'] as const) {
      const { fail, message } = refusal(planOf({ ...columns, [name]: [16] }));
      expect(fail).toBe('unreadable');
      expect(message).toBe(`${name} must be as many as the readings: 1 for 2 readings.`);
    }
    expect(refusal(planOf({ ...columns, readings: [16] })).message).toContain('2 for 1 reading.');
  });

  it('name the cell that a head with a reading and a target lacks', () => {
    for (const name of ['powers', 'least', 'most', 'recycleFull'] as const) {
      const { fail, message } = refusal(planOf({ ...columns, [name]: [columns[name][0], undefined] }));
      expect(fail).toBe('unreadable');
      const needs = name === 'powers' ? 'the power at which it was read' : 'it';
      expect(message).toBe(
        `${name} (number 2 of the list) is missing: a head with a reading and a target needs ${needs}.`,
      );
    }
  });

  it('say which head has a least above its most; equal is in order', () => {
    expect(refused({ least: 2401 })).toEqual({
      fail: 'domain',
      message: 'least (number 2 of the list) must not be more than most: 2401 is more than 2400.',
    });
    expect(plan([{ ...two, least: 2400 }]).heads[0]?.power).toBe(2400);
    expect(plan([{ ...two, least: 2400 * (1 + 1e-12) }]).heads[0]?.power).toBe(2400);
  });

  it('say which power its head cannot be set to; half a step outside is taken', () => {
    expect(refused({ power: 2500 })).toEqual({
      fail: 'domain',
      message:
        'No head is set to 2500 Ws that goes from 37.5 up to 2400 Ws: see powers (number 2 of the list).',
    });
    expect(refused({ power: 36 }).message).toContain('set to 36 Ws');
    for (const power of [2400 * 2 ** 0.05, 37.5 * 2 ** -0.05]) expect(plan([{ ...two, power }]).pops).toBe(1);
    for (const power of [2400 * 2 ** 0.0501, 37.5 * 2 ** -0.0501])
      expect(refused({ power }).fail).toBe('domain');
  });

  it('leave the number away where the list holds one head', () => {
    expect(refusal(planOf(jobOf([])))).toEqual({
      fail: 'unreadable',
      message: 'readings is blank: give at least one.',
    });
    expect(refusal(planOf(jobOf([{ ...two, least: 2401 }]))).message).toMatch(
      /^least must not be more than most/,
    );
  });

  itKeepsItsRanges('POPSPLAN', {
    readings: [[16, 16], 'above 0'],
    powers: [[400, 400], 'above 0'],
    targets: [[16, 16], 'above 0'],
    least: [[100, 100], 'above 0'],
    most: [[400, 400], 'above 0'],
    recycleFull: [[1, 1], 'above 0'],
    loss: [0, 'any'],
    step: [[0.1, 0.1], 'above 0'],
    mostPops: [99, 'pops of a plan'],
    pause: [0, 'from 0'],
    tolerance: [0.05, 'from 0'],
    allowed: [[4, 4], 'whole'],
  });
});
