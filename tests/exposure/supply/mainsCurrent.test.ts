import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { EFFICIENCY, mainsCurrent, POWER_FACTOR } from '../../../src/exposure/supply/mainsCurrent';
import { expectNear, itKeepsItsRanges, value } from '../support';

const positive = fc.double({ min: -1, max: 3, noNaN: true }).map((x) => 10 ** x);
const share = fc.double({ min: 0.1, max: 1, noNaN: true });

describe('mains current of a head', () => {
  it('that takes 1200 Ws in 2 s and lights 240 W at 120 V is 7 A where nothing is lost, worked by hand', () => {
    expectNear(value(mainsCurrent(1200, 2, 120, 240, 1, 1)), 7);
  });

  it('is higher by the charger and the power factor: (1200 / (2·0.75) + 240) / (120·0.65), worked by hand', () => {
    expectNear(value(mainsCurrent(1200, 2, 120, 240)), 1040 / 78);
    expect([EFFICIENCY, POWER_FACTOR]).toEqual([0.75, 0.65]);
  });

  it('counts the efficiency for the flash alone, and the power factor for both', () => {
    const [all, lamp] = [value(mainsCurrent(600, 1, 120, 240, 0.5, 0.8)), 240 / (120 * 0.8)];
    expectNear(all - lamp, 600 / 0.5 / (120 * 0.8));
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
    energy: [1200, 'above 0'],
    recycle: [1.5, 'above 0'],
    volts: [230, 'above 0'],
    modelling: [250, 'from 0'],
    efficiency: [0.75, 'share'],
    powerFactor: [0.65, 'share'],
  });
});
