import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { rowOf } from '../../../src/catalogue';
import {
  EFFICIENCY,
  LAMP_POWER_FACTOR,
  mainsCurrent,
  POWER_FACTOR,
} from '../../../src/exposure/supply/mainsCurrent';
import { answerOf, expectNear, itKeepsItsRanges, value } from '../support';

const positive = fc.double({ min: -1, max: 3, noNaN: true }).map((x) => 10 ** x);
const share = fc.double({ min: 0.1, max: 1, noNaN: true });

describe('mains current of a head', () => {
  it('that takes 1200 Ws in 2 s and lights 240 W at 120 V is 7 A where nothing is lost, worked by hand', () => {
    expectNear(value(mainsCurrent(1200, 2, 120, 240, 1, 1)), 7);
  });

  it('is higher by the charger and the power factor: 1200 / (2·0.75·120·0.65), and 2 A for a halogen lamp of 240 W', () => {
    expectNear(value(mainsCurrent(1200, 2, 120, 240)), 800 / 78 + 2);
    expect([EFFICIENCY, POWER_FACTOR, LAMP_POWER_FACTOR]).toEqual([0.75, 0.65, 1]);
  });

  it('counts efficiency and power factor for the flash alone, and for the lamp its own power factor', () => {
    // 600 Ws a second at a half are 1200 W, 10 A at 120 V and 12.5 A at 0.8; 240 W are 2 A, and 4 A at a half.
    expectNear(value(mainsCurrent(600, 1, 120, 240, 0.5, 0.8)), 12.5 + 2);
    expectNear(value(mainsCurrent(600, 1, 120, 240, 0.5, 0.8, 0.5)), 12.5 + 4);
  });

  it('of the lamp alone is asked with none as energy, whatever the recycle time', () => {
    expect(value(mainsCurrent(0, 0, 120, 240))).toBe(2);
    for (const recycle of [null, 0, '', 1.5, '2 s'])
      expect(answerOf('MAINSCURRENT', 'none', recycle, 120, 240)).toBe(2);
    expect(answerOf('MAINSCURRENT', 'none', null, 120)).toBe(0);
  });

  it('misses an energy that is blank, and a recycle time beside an energy', () => {
    for (const blank of [null, 0, '']) {
      expect(answerOf('MAINSCURRENT', blank, 1.5, 230)).toMatchObject({
        error: '#VALUE!',
        message: expect.stringMatching(/^energy is missing: .*none for the modelling lamp alone/),
      });
      expect(answerOf('MAINSCURRENT', 1200, blank, 230)).toMatchObject({
        error: '#VALUE!',
        message: expect.stringContaining('recycle is missing'),
      });
    }
  });

  it('names its assumptions in the help, and that the sum is an upper bound', () => {
    const notes = rowOf('MAINSCURRENT')?.notes ?? '';
    for (const word of ['0.75', '0.65', 'assumption', 'upper bound']) expect(notes).toContain(word);
  });

  it('doubles with energy and lamp, and halves with the voltage', () => {
    fc.assert(
      fc.property(positive, positive, positive, positive, share, share, (e, t, v, lamp, eta, pf) => {
        const amperes = value(mainsCurrent(e, t, v, lamp, eta, pf));
        expectNear(value(mainsCurrent(2 * e, t, v, 2 * lamp, eta, pf)), 2 * amperes);
        expectNear(value(mainsCurrent(e, t, 2 * v, lamp, eta, pf)), amperes / 2);
      }),
      trials(281),
    );
  });

  it('rises with everything drawn and falls with slower recycling', () => {
    fc.assert(
      fc.property(positive, positive, positive, share, share, (e, t, v, eta, pf) => {
        const amperes = value(mainsCurrent(e, t, v, 0, eta, pf));
        expect(value(mainsCurrent(e, t, v, 1, eta, pf))).toBeGreaterThan(amperes);
        expect(value(mainsCurrent(e, t * 1.01, v, 0, eta, pf))).toBeLessThan(amperes);
        expect(value(mainsCurrent(e, t, v, 0, eta * 0.99, pf))).toBeGreaterThan(amperes);
        expect(value(mainsCurrent(e, t, v, 0, eta, pf * 0.99))).toBeGreaterThan(amperes);
      }),
      trials(282),
    );
  });

  itKeepsItsRanges('MAINSCURRENT', {
    energy: [1200, 'from 0'],
    recycle: [1.5, 'from 0'],
    volts: [230, 'above 0'],
    modelling: [250, 'from 0'],
    efficiency: [0.75, 'share'],
    powerFactor: [0.65, 'share'],
    lampPowerFactor: [1, 'share'],
  });
});
