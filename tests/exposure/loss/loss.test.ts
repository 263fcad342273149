import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { bellowsLoss, lossWithBellows, magnificationLoss } from '../../../src/exposure/loss/bellowsLoss';
import { filterLoss } from '../../../src/exposure/loss/filterLoss';
import { meterTarget } from '../../../src/exposure/loss/meterTarget';
import { answerOf, expectNear, itKeepsItsRanges, refusal, value } from '../support';

const positive = fc.double({ min: -2, max: 2, noNaN: true }).map((x) => 10 ** x);

describe('loss at a magnification', () => {
  it('is two stops at life size, and none for a far subject', () => {
    expect(magnificationLoss(1)).toBe(2);
    expect(magnificationLoss(0)).toBe(0);
  });

  it('is four stops at three times life size, as (1 + 3)² = 16, worked by hand', () => {
    expect(magnificationLoss(3)).toBe(4);
  });

  it('rises with the magnification, and falls with the pupil magnification', () => {
    fc.assert(
      fc.property(positive, positive, (m, p) => {
        const loss = value(magnificationLoss(m, p));
        expect(value(magnificationLoss(m * 1.1, p))).toBeGreaterThan(loss);
        expect(value(magnificationLoss(m, p * 1.1))).toBeLessThan(loss);
        expect(value(magnificationLoss(m * 3, p * 3))).toBeCloseTo(loss, 11);
      }),
      trials(51),
    );
  });

  it('keeps its digits for a subject that is nearly at infinity: worked by hand, 2·m/ln 2', () => {
    expect(value(magnificationLoss(1e-9))).toBeCloseTo(2e-9 / Math.LN2, 12);
  });

  itKeepsItsRanges('MAGNIFICATIONLOSS', { magnification: [1, 'from 0'], pupil: [1, 'above 0'] });
});

describe('loss at a bellows draw', () => {
  it('is that of the magnification the draw gives, draw / focal − 1', () => {
    fc.assert(
      fc.property(positive, positive, positive, (focal, m, p) => {
        const draw = focal * (1 + m);
        expect(value(bellowsLoss(focal, draw, p))).toBeCloseTo(value(magnificationLoss(m, p)), 10);
      }),
      trials(52),
    );
  });

  it('is none at the focal length itself, and where rounding error puts the draw below it', () => {
    expect(bellowsLoss(150, 150)).toBe(0);
    expect(bellowsLoss(150, 150 * (1 - 1e-12))).toBe(0);
  });

  it('is refused for a draw shorter than the focal length, in words that name both', () => {
    const { fail, message } = refusal(bellowsLoss(150, 140));
    expect(fail).toBe('domain');
    expect(message).toContain('150 mm');
    expect(message).toContain('140 mm');
  });

  itKeepsItsRanges('BELLOWSLOSS', {
    focal: [150, 'above 0'],
    draw: [300, 'above 0'],
    pupil: [1, 'above 0'],
  });
});

describe('loss with the bellows', () => {
  it('is the sum of both', () => {
    expect(lossWithBellows(1, 150, 300)).toBe(3);
    expect(lossWithBellows(1)).toBe(1);
  });

  it('is refused where one of focal length and draw is missing', () => {
    expect(refusal(lossWithBellows(1, 150)).fail).toBe('unreadable');
    expect(refusal(lossWithBellows(1, 150)).message).toContain('draw is missing');
    expect(refusal(lossWithBellows(1, undefined, 300)).message).toContain('focal is missing');
  });
});

describe('loss in a filter', () => {
  it('of a factor, a density and a transmission that say the same is the same', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 6, noNaN: true }), (density) => {
        const stops = value(filterLoss(density, 'density'));
        expect(value(filterLoss(10 ** density, 'factor'))).toBeCloseTo(stops, 10);
        expect(value(filterLoss(10 ** -density, 'transmission'))).toBeCloseTo(stops, 10);
      }),
      trials(53),
    );
  });

  it('of two filters together is the sum: factors multiply, densities add', () => {
    const factor = fc.double({ min: 1, max: 64, noNaN: true });
    fc.assert(
      fc.property(factor, factor, (a, b) => {
        const both = value(filterLoss(a)) + value(filterLoss(b));
        expect(value(filterLoss(a * b))).toBeCloseTo(both, 11);
      }),
      trials(54),
    );
  });

  it('of clear glass is none', () => {
    expect(filterLoss(1)).toBe(0);
    expect(filterLoss(0, 'stops')).toBe(0);
    expect(filterLoss(0, 'density')).toBe(0);
    expect(filterLoss(1, 'transmission')).toBe(0);
  });

  it('of 3 in density is log2(1000), worked by hand', () => {
    expect(filterLoss(3, 'density')).toBeCloseTo(9.965784284662087, 12);
  });

  it.each([
    ['factor', [0.9, 0, -1, NaN, Infinity]],
    ['density', [-0.1, NaN, Infinity]],
    ['transmission', [0, -0.1, 1.1, NaN, Infinity]],
  ] as const)('is refused for a %s of %j', (kind, wrong) => {
    for (const x of wrong) {
      const { fail, message } = refusal(filterLoss(x, kind));
      expect(fail).toBe('domain');
      expect(message).toMatch(/^value must be /);
    }
  });

  it('asks whether a factor below 1 is a density', () => {
    expect(refusal(filterLoss(0.9)).message).toContain('density?');
  });

  it('stated in stops is itself, and never less than none', () => {
    expect(filterLoss(2 / 3, 'stops')).toBe(2 / 3);
    expect(refusal(filterLoss(-1, 'stops'))).toMatchObject({ fail: 'domain' });
    expect(answerOf('FILTERLOSS', '1 1/3', 'stops')).toBeCloseTo(4 / 3, 12);
    expect(answerOf('FILTERLOSS', '2 stops', 'stops')).toBe(2);
    // the name of a filter says what it is, whatever the kind
    expect(answerOf('FILTERLOSS', 'ND8', 'stops')).toBe(3);
    expect(answerOf('FILTERLOSS', '2 stops')).toBe(2);
  });

  it('named by a whole number that is not sold is refused, with what to write', () => {
    // ND3 may be ND 0.3, 3x or three stops, which are ND 0.9 or 8x
    for (const [text, written] of [
      ['ND3', 'ND 0.9 or 8x'],
      ['ND6', 'ND 1.8 or 64x'],
    ] as const)
      expect(answerOf('FILTERLOSS', text)).toMatchObject({
        error: '#VALUE!',
        message: expect.stringContaining(written),
      });
    for (const [text, stops] of [
      ['ND1000', Math.log2(1000)],
      ['ND 64', 6],
      ['ND 3.0', 3 / Math.log10(2)],
    ] as const)
      expect(answerOf('FILTERLOSS', text)).toBeCloseTo(stops, 11);
  });
});

describe('what the meter must read', () => {
  it('is a stop more for each stop lost, and the lens setting where none is lost', () => {
    expect(meterTarget(22)).toBe(22);
    expectNear(value(meterTarget(22, 1)), 22 * Math.SQRT2);
    expectNear(value(meterTarget(22, -1)), 22 / Math.SQRT2);
  });

  it('counts the bellows with the filter: twice the focal length and one stop make three, worked by hand', () => {
    expectNear(value(meterTarget(8, 1, 150, 300)), 8 * 2 ** 1.5);
  });

  it('is refused for half a bellows statement, and for a draw shorter than the focal length', () => {
    expect(refusal(meterTarget(22, 0, 150)).fail).toBe('unreadable');
    expect(refusal(meterTarget(22, 0, undefined, 300)).fail).toBe('unreadable');
    expect(refusal(meterTarget(22, 0, 150, 100)).fail).toBe('domain');
  });

  it('of one pop is the reading of all of them over the root of their number, worked by hand', () => {
    // four pops, each a quarter of the light: half the f-number
    expect(meterTarget(32, 0, undefined, undefined, undefined, 4)).toBe(16);
    expectNear(value(meterTarget(8, 1, 150, 300, 1, 8)), 8);
  });

  itKeepsItsRanges('METERTARGET', {
    aperture: [22, 'above 0'],
    loss: [1, 'any'],
    focal: [150, 'above 0'],
    draw: [300, 'above 0'],
    pupil: [1, 'pupil'],
    pops: [4, 'whole'],
  });
});
