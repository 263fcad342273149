import { describe, expect, it } from 'vitest';
import { type EvenLight, evenLight, type EvenLightOptions } from '../../../src/exposure/balance/evenLight';
import { isFail } from '../../../src/exposure/core/result';
import { expectNear, refusal, value } from '../support';
import { type Case } from './cases';

const good: Case = {
  readings: [
    [8, 5.6],
    [5.6, 8],
  ],
  powers: [300, 600],
  targets: [11, 11],
  least: [25, 25],
  most: [800, 1200],
};
const asked = (change: Partial<Case>, options?: EvenLightOptions): unknown => {
  const { readings, powers, targets, least, most } = { ...good, ...change };
  return evenLight(readings, powers, targets, least, most, options);
};
const answered = (change: Partial<Case>, options?: EvenLightOptions): EvenLight =>
  value(asked(change, options) as EvenLight);
const refused = (change: Partial<Case>, options?: EvenLightOptions): string => {
  const { fail, message } = refusal(asked(change, options));
  return `${fail}: ${message}`;
};
const list = (count: number, x: number): number[] => Array.from({ length: count }, () => x);
const grid = (points: number, heads: number): number[][] =>
  Array.from({ length: points }, () => list(heads, 8));
const sized = (points: number, heads: number): Case => ({
  readings: grid(points, heads),
  powers: list(heads, 300),
  targets: list(points, 11),
  least: list(heads, 25),
  most: list(heads, 800),
});

describe('a lighting is refused', () => {
  it.each<[string, Partial<Case>, EvenLightOptions, string]>([
    [
      'without points',
      { readings: [] },
      {},
      'unreadable: readings is blank: give one row a point, one column a head.',
    ],
    [
      'without heads',
      { readings: [[], []] },
      {},
      'unreadable: readings is blank: give one row a point, one column a head.',
    ],
    [
      'with a head less at a point',
      { readings: [[8, 5.6], [8]] },
      {},
      'unreadable: readings must have as many columns at each point: 1 at point 2, 2 at point 1.',
    ],
    [
      'with a head more at a point',
      {
        readings: [
          [8, 5.6],
          [8, 4, 4],
        ],
      },
      {},
      'unreadable: readings must have as many columns at each point: 3 at point 2, 2 at point 1.',
    ],
    [
      'with a reading of 0',
      {
        readings: [
          [8, 5.6],
          [8, 0],
        ],
      },
      {},
      'domain: readings (point 2, head 2) must be above 0, not 0.',
    ],
    [
      'with more powers than heads',
      { powers: [300, 300, 300] },
      {},
      'unreadable: powers must be as many as the heads: 3 for 2 heads.',
    ],
    [
      'with targets of all but one point',
      { targets: [11] },
      {},
      'unreadable: targets must be as many as the points: 1 for 2 points.',
    ],
    [
      'with as many targets as heads where the points are fewer',
      { readings: [[8, 5.6]], targets: [11, 11] },
      {},
      'unreadable: targets must be as many as the points: 2 for 1 point.',
    ],
    [
      'with a least more than heads',
      { least: [25, 25, 25] },
      {},
      'unreadable: least must be as many as the heads: 3 for 2 heads.',
    ],
    [
      'with a most of 0',
      { most: [800, 0] },
      {},
      'domain: most (number 2 of the list) must be above 0, not 0.',
    ],
    ['with a step below 0', {}, { step: -0.1 }, 'domain: step must be above 0, not -0.1.'],
    [
      'with a flag for one head of two',
      {},
      { mayGoOff: [true] },
      'unreadable: mayGoOff must be as many as the heads: 1 for 2 heads.',
    ],
    [
      'with flags for three heads of two',
      {},
      { mayGoOff: [true, false, true] },
      'unreadable: mayGoOff must be as many as the heads: 3 for 2 heads.',
    ],
    [
      'with a point that no head reaches',
      {
        readings: [
          [undefined, 8],
          [undefined, undefined],
        ],
      },
      {},
      'no-answer: Point 2 is reached by no head: meter it again, or leave it out.',
    ],
    [
      'with a first point that no head reaches',
      {
        readings: [
          [undefined, undefined],
          [8, 8],
        ],
      },
      {},
      'no-answer: Point 1 is reached by no head: meter it again, or leave it out.',
    ],
    [
      'with a power above the most',
      { powers: [300, 1300] },
      {},
      'domain: powers (number 2 of the list) must not be more than most: 1300 is more than 1200.',
    ],
    [
      'with a least above the most',
      { least: [900, 25] },
      {},
      'domain: least (number 1 of the list) must not be more than most: 900 is more than 800.',
    ],
    [
      'with a power below the least',
      { powers: [24, 600] },
      {},
      'domain: powers (number 1 of the list) must not be less than least: 24 is less than 25.',
    ],
    [
      'with thirteen heads',
      sized(1, 13),
      {},
      'domain: readings may have up to 12 heads and 25 points, not 13 and 1.',
    ],
    [
      'with 26 points',
      sized(26, 1),
      {},
      'domain: readings may have up to 12 heads and 25 points, not 1 and 26.',
    ],
  ])('%s', (_, change, options, words) => {
    // prettier-ignore
    expect(refused(change, options)).toBe(words);
  });

  it('not for a power a little below the least, where that is the lowest setting of the head', () => {
    // 800/26 is 49.43 tenths: the last setting lies at the 49th, above; 800/25.5 is 49.71: at the 50th, 25
    const one = (power: number, least: number) => ({ readings: [[8]], powers: [power], targets: [8], least: [least], most: [800] }); // prettier-ignore
    expect(isFail(asked(one(25, 25.5)))).toBe(false);
    expect(isFail(asked(one(26, 26)))).toBe(false);
    expect(isFail(asked(one(26 * (1 - 0.9e-9), 26)))).toBe(false);
    expect(isFail(asked(one(26 * (1 - 1.1e-9), 26)))).toBe(true);
    expect(refused(one(25.9, 26))).toContain('powers (number 1 of the list) must not be less than least: 25.9 is less than 26.'); // prettier-ignore
    // in steps of a third the last lies at 16 thirds, 19.84: nearer than 15 thirds
    expect(isFail(asked(one(20, 22), { step: 1 / 3 }))).toBe(false);
    expect(isFail(asked(one(19.8, 22), { step: 1 / 3 }))).toBe(true);
  });

  it('where light and what is wanted lie more than 30 stops apart, either way', () => {
    const words = 'domain: readings and targets lie more than 30 stops apart, or the ends of a range: check the numbers that go in.'; // prettier-ignore
    // light at full power as a share of what is wanted
    const at = (share: number, range = 1): Partial<Case> => ({ readings: [[8 * Math.sqrt(share)]], powers: [800], targets: [8], least: [800 * range], most: [800] }); // prettier-ignore
    for (const share of [1.01e-9, 0.99e9]) expect(isFail(asked(at(share))), `${share}`).toBe(false);
    for (const share of [0.99e-9, 1.01e9]) expect(refused(at(share)), `${share}`).toBe(words);
    expect(isFail(asked(at(1, 1.01e-9)))).toBe(false);
    expect(refused(at(1, 0.99e-9))).toBe(words);
    // one point of two, one head of two
    const two = { readings: [[8, 8], [8 * 4e4, 8]], powers: [800, 800], targets: [8, 8], least: [25, 25], most: [800, 800] }; // prettier-ignore
    expect(refused(two)).toBe(words);
    expect(refused({ ...two, readings: grid(2, 2), least: [25, 7e-7] })).toBe(words);
    // light of two heads adds
    expect(isFail(asked({ ...two, readings: [list(2, 8 * Math.sqrt(0.6e-9))], targets: [8] }))).toBe(false);
  });

  it('not with up to 12 heads and 25 points', () => {
    for (const [points, heads] of [
      [1, 12],
      [25, 1],
    ] as const)
      // prettier-ignore
      expect(answered(sized(points, heads)).powers).toHaveLength(heads);
  });
});

describe('an answer, worked by hand,', () => {
  it('tells what was, what is, and what each point misses by', () => {
    // The head stands at 400 Ws and gives f/8 and f/5.66; f/8 is wanted. Half a stop more is half a stop too much for the
    // first, and half a stop too little for the second.
    const { error, powers, before, after, misses, worst } = answered({
      readings: [[8], [8 / Math.SQRT2]],
      powers: [400],
      targets: [8, 8],
      least: [25],
      most: [800],
    });
    expect(error).toBeCloseTo(0.5, 8);
    expectNear(powers[0] as number, 400 * Math.SQRT2);
    expect(before).toHaveLength(2);
    expectNear(before[0] as number, 8);
    expectNear(before[1] as number, 8 / Math.SQRT2);
    expectNear(after[0] as number, 8 * 2 ** 0.25);
    expectNear(after[1] as number, 8 * 2 ** -0.25);
    expect(misses).toEqual([0.5, -0.5]);
    expect(worst).toBe(0.5);
  });

  it('adds the light of heads by their squares, of those that reach the point', () => {
    const { before, after, misses, powers } = answered({
      readings: [
        [6, 8],
        [undefined, 8],
        [6, undefined],
      ],
      powers: [400, 800],
      targets: [10, 8, 6],
      least: [25, 25],
      most: [400, 800],
    });
    expect(before).toEqual([10, 8, 6]);
    expect(after).toEqual([10, 8, 6]);
    expect(misses).toEqual([0, 0, 0]);
    expect(powers).toEqual([400, 800]);
  });

  it('is settled in tenths of a stop from the most, or in the step given', () => {
    const one = { readings: [[8]], powers: [400], targets: [8 * 2 ** -0.23], least: [25], most: [800] };
    // 0.46 stop less than one stop down
    expectNear(answered(one).powers[0] as number, 800 * 2 ** -1.5);
    expectNear(answered(one, { step: 0.5 }).powers[0] as number, 800 * 2 ** -1.5);
    expectNear(answered(one, { step: 1 }).powers[0] as number, 400);
    expectNear(answered(one, { step: 0.3 }).powers[0] as number, 800 * 2 ** -1.5);
    expectNear(answered(one, { step: 0.02 }).powers[0] as number, 800 * 2 ** -1.46);
  });

  it('starts from the present power where that lies a little below the least', () => {
    // the power and the least wanted lie below the least given, at the last setting
    const { powers, error } = answered({
      readings: [[8]],
      powers: [25],
      targets: [8],
      least: [25.5],
      most: [800],
    });
    expectNear(powers[0] as number, 25);
    expect(error).toBe(0);
  });

  it('lets off the heads that may go off, and no others', () => {
    // each gives four times what is wanted, and a half of it at its least
    const two = {
      readings: [[8, 8]],
      powers: [300, 300],
      targets: [4],
      least: [150, 75],
      most: [1200, 1200],
    };
    expect(answered(two).powers).toEqual([150, 75]);
    expect(answered(two, { mayGoOff: false }).powers).toEqual([150, 75]);
    expect(answered(two, { mayGoOff: [] }).powers).toEqual([150, 75]);
    expect(answered(two, { mayGoOff: [true, false] }).powers).toEqual([0, 75]);
    expect(answered(two, { mayGoOff: [false, true] }).powers).toEqual([150, 0]);
    // f/4 of 75 Ws from the second alone
    const { after, misses } = answered(two, { mayGoOff: [true, false] });
    expectNear(after[0] as number, 4);
    expect(misses).toEqual([0]);
  });
});
