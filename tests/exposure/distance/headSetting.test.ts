import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { headPower } from '../../../src/exposure/distance/headPower';
import { HEAD_SCALES } from '../../../src/exposure/distance/headScale';
import { headSetting } from '../../../src/exposure/distance/headSetting';
import { answerOf, expectNear, itKeepsItsRanges, refusal, value } from '../support';

describe('energy of what a head shows', () => {
  it('is what it shows where it shows Ws, and half of full power for each stop below', () => {
    expect(headPower(487, 600)).toBe(487);
    // 10 is full: 7 is three stops below, an eighth.
    expect(headPower(7, 800, 'stops', 10)).toBe(100);
    // Full shows 0.
    expect(headPower(-2, 800, 'stops', 0)).toBe(200);
    expect(headPower(0.25, 800, 'fraction')).toBe(200);
    expectNear(value(headPower(0.41, 600, 'percent')), 246);
  });

  it.each([
    ['487 Ws at a step of 0.1 are 0.3 stop down', 487, 'energy', undefined, 0.1, 600 * 2 ** -0.3],
    ['7.3 of 10 at a step of a third is 2 2/3 down', 7.3, 'stops', 10, 1 / 3, 600 * 2 ** (-8 / 3)],
    ['−0.3 at a step of a third is one third down', -0.3, 'stops', 0, 1 / 3, 600 * 2 ** (-1 / 3)],
    [
      '1/4 −0.3 at a step of a third is 2 1/3 down',
      0.25 * 2 ** -0.3,
      'fraction',
      undefined,
      1 / 3,
      600 * 2 ** (-7 / 3),
    ],
    ['41 % at a step of 0.1 is 1.3 down', 0.41, 'percent', undefined, 0.1, 600 * 2 ** -1.3],
    ['601 Ws is full power', 601, 'energy', undefined, 0.1, 600],
    ['601 Ws is full power whatever the step', 601, 'energy', undefined, undefined, 600],
  ] as const)('is that of the setting near to it: %s', (_, shown, scale, top, step, wanted) => {
    expectNear(value(headPower(shown, 600, scale, top, step)), wanted);
  });

  it('is taken as shown where no setting lies within 0.05 stop', () => {
    // Whole stops from 10 down: 7.05 is 7, 7.06 is no setting.
    expectNear(value(headPower(7.05, 800, 'stops', 10, 1)), 100);
    expectNear(value(headPower(6.95, 800, 'stops', 10, 1)), 100);
    expectNear(value(headPower(7.06, 800, 'stops', 10, 1)), 100 * 2 ** 0.06);
    expectNear(value(headPower(6.94, 800, 'stops', 10, 1)), 100 * 2 ** -0.06);
  });

  it('is taken as shown without a step, just below full power too', () => {
    // 590 of 600 Ws are 0.024 stop down
    expect(headPower(590, 600)).toBe(590);
    expect(refusal(headPower(1200, 600)).message).toContain('1 stop above full power');
  });

  it('is refused where no number holds it', () => {
    expect(refusal(headPower(2000, 800, 'stops', 0)).fail).toBe('domain');
  });

  it('is refused above full power, and says by how many stops', () => {
    for (const [shown, scale, top] of [
      [1200, 'energy', undefined],
      [11, 'stops', 10],
      [1, 'stops', 0],
      [2, 'fraction', undefined],
      [2, 'percent', undefined],
    ] as const) {
      const { fail, message } = refusal(headPower(shown, 600, scale, top, 0.1));
      expect(fail).toBe('no-answer');
      expect(message).toContain('1 stop above full power');
    }
    expect(refusal(headPower(10.06, 600, 'stops', 10, 0.1)).message).toContain('0.06 stop above');
  });

  it('needs what a head of stops shows at full power, and no other head does', () => {
    expect(answerOf('HEADPOWER', 7.3, 600, 'stops')).toMatchObject({
      error: '#VALUE!',
      message: expect.stringContaining('needs top'),
    });
    for (const blank of [0, null, ''])
      expect(answerOf('HEADPOWER', 7.3, 600, 'stops', blank)).toMatchObject({ error: '#VALUE!' });
    expect(answerOf('HEADPOWER', -1, 600, 'stops', 'none')).toBe(300);
    for (const scale of ['energy', 'fraction', 'percent'])
      expect(answerOf('HEADPOWER', 0.5, 600, scale, 10)).toMatchObject({
        error: '#VALUE!',
        message: expect.stringContaining('leave it blank'),
      });
    expect(refusal(headSetting(100, 600, 'stops')).message).toContain('needs top');
  });

  it('reads a fraction with the stops off it, or on top of it', () => {
    expectNear(answerOf('HEADPOWER', '1/4 −0.3', 600, 'fraction') as number, 150 * 2 ** -0.3);
    expectNear(answerOf('HEADPOWER', '1/8 +0.7', 600, 'fraction') as number, 75 * 2 ** 0.7);
    expectNear(answerOf('HEADPOWER', '1/4 -1/3', 600, 'fraction') as number, 150 * 2 ** (-1 / 3));
    for (const wrong of ['1/4 -3', '1/4 0.3', '1/4 -3.5', '1/4 -0.3 m', '1/4 - ']) {
      expect(answerOf('HEADPOWER', wrong, 600, 'fraction'), wrong).toMatchObject({ error: '#VALUE!' });
    }
  });

  itKeepsItsRanges('HEADPOWER', {
    setting: [300, 'above 0'],
    most: [600, 'above 0'],
    scale: ['energy'],
    top: [undefined],
    step: [0.1, 'above 0'],
  });
});

describe('what to set on a head', () => {
  // tenth-stops, HEADSETTING: so many tenths down are a factor of 2^(−tenths / 10)
  it.each([
    [600 * 2 ** -0.3, 600, 'energy', undefined, 0.1, '487 Ws'],
    [600 * 2 ** -2.7, 600, 'stops', 10, 0.1, '7.3'],
    [600 * 2 ** (-8 / 3), 600, 'stops', 10, 1 / 3, '7.3'],
    [300, 600, 'stops', 10, 0.1, '9'],
    [600 * 2 ** -0.3, 600, 'stops', 0, 0.1, '−0.3'],
    [600, 600, 'fraction', undefined, 0.1, '1/1'],
    [600 * 2 ** -0.3, 600, 'fraction', undefined, 0.1, '1/1 −0.3'],
    [150, 600, 'fraction', undefined, 0.1, '1/4'],
    [150 * 2 ** -0.3, 600, 'fraction', undefined, 0.1, '1/4 −0.3'],
    [75 * 2 ** 0.7, 600, 'fraction', undefined, 0.1, '1/4 −0.3'],
    [600 * 2 ** -1.3, 600, 'percent', undefined, 0.1, '41 %'],
    [600, 600, 'percent', undefined, 0.1, '100 %'],
    // Rounded to the setting first: 480 Ws are 0.32 stop down.
    [480, 600, 'energy', undefined, 0.1, '487 Ws'],
    [480, 600, 'energy', undefined, undefined, '480 Ws'],
  ] as const)(
    'for %d Ws of %d on the scale %s (full %s, step %s) reads %s',
    (power, most, scale, top, step, text) => {
      expect(headSetting(power, most, scale, top, step)).toBe(text);
    },
  );

  it('carries ten tenths over to the next fraction', () => {
    // 0.97 stop down, without steps: a tenth is all a display shows.
    expect(headSetting(600 * 2 ** -0.97, 600, 'fraction')).toBe('1/2');
    expect(headSetting(600 * 2 ** -1.94, 600, 'fraction')).toBe('1/2 −0.9');
  });

  it('takes more digits where whole Ws would mean another setting, or stray more than 0.05 stop', () => {
    // 6 Ws, tenths down: 5.598 Ws and 5.223 Ws would be 6 and 5.
    expect(headSetting(6 * 2 ** -0.1, 6, 'energy', undefined, 0.1)).toBe('5.6 Ws');
    expect(headSetting(6 * 2 ** -0.2, 6, 'energy', undefined, 0.1)).toBe('5.2 Ws');
    expect(headSetting(3.4, 600)).toBe('3.4 Ws');
    expect(headSetting(600 * 2 ** -7, 600, 'percent', undefined, 0.1)).toBe('0.8 %');
    // A head set in hundredths: two of them would be the same tenth.
    expect(headSetting(600 * 2 ** -0.03, 600, 'stops', 10, 0.01)).toBe('9.97');
    // A point before three digits would be read two ways, so that a fourth follows.
    expect(headSetting(1.234, 1.234, 'energy', undefined, 0.0001)).toBe('1.2340 Ws');
    expect(headSetting(1.234_56, 2.469_12, 'energy', undefined, 1e-6)).toBe('1.23456 Ws');
    // fifteen decimals are the most
    expect(headSetting(3e-15, 600)).toBe('3e-15 Ws');
  });

  it('is refused beyond the head, and says by how much', () => {
    expect(refusal(headSetting(1200, 600, 'energy', undefined, 0.1))).toMatchObject({
      fail: 'no-answer',
      message: expect.stringContaining('1 stop more'),
    });
    expect(refusal(headSetting(5, 600, 'stops', 10, 0.1, 10))).toMatchObject({
      fail: 'no-answer',
      message: expect.stringContaining('1 stop less'),
    });
    expect(refusal(headSetting(1e-30, 600))).toEqual({
      fail: 'no-answer',
      message: 'There is no text for so small a part of full power.',
    });
  });

  const head = fc.record({
    most: fc.integer({ min: 25, max: 3200 }),
    scale: fc.constantFrom(...HEAD_SCALES),
    top: fc.constantFrom(0, 6, 7.3, 10),
    step: fc.constantFrom(0.01, 0.04, 0.1, 0.2, 0.25, 1 / 3, 0.5, 1),
    down: fc.double({ min: 0, max: 8, noNaN: true }),
  });

  it('is read back as the same setting, and that is shown alike again', () => {
    fc.assert(
      fc.property(head, ({ most, scale, top, step, down }) => {
        const full = scale === 'stops' ? top : undefined;
        const energy = most * 2 ** (-Math.round(down / step) * step);
        const text = value(headSetting(energy, most, scale, full, step));
        const cells = [text, most, scale, full === 0 ? 'none' : full, step];
        const back = answerOf('HEADPOWER', ...cells);
        expectNear(back as number, energy, 2e-9);
        expect(headSetting(back as number, most, scale, full, step)).toBe(text);
      }),
      trials(3311),
    );
  });

  it('without a step is read back within 0.05 stop', () => {
    fc.assert(
      fc.property(head, ({ most, scale, top, down }) => {
        const full = scale === 'stops' ? top : undefined;
        const text = value(headSetting(most * 2 ** -down, most, scale, full));
        const back = answerOf('HEADPOWER', text, most, scale, full === 0 ? 'none' : full) as number;
        expect(Math.abs(Math.log2(back / most) + down), text).toBeLessThanOrEqual(0.05 + 2e-9);
      }),
      trials(3312),
    );
  });

  it('has few digits where a display has them: whole Ws, tenths, whole per cent', () => {
    const digits = {
      energy: /^\d+ Ws$/,
      stops: /^−?\d+(\.\d)?$/,
      fraction: /^1\/\d+( −0\.\d)?$/,
      percent: /^\d+ %$/,
    };
    for (let tenths = 0; tenths <= 50; tenths++)
      for (const scale of HEAD_SCALES)
        if (scale !== 'percent' || tenths < 25)
          expect(
            headSetting(1200 * 2 ** (-tenths / 10), 1200, scale, scale === 'stops' ? 7 : undefined, 0.1),
          ).toMatch(digits[scale]);
  });

  itKeepsItsRanges('HEADSETTING', {
    power: [300, 'above 0'],
    most: [600, 'above 0'],
    scale: ['energy'],
    top: [undefined],
    step: [0.1, 'above 0'],
    least: [10, 'above 0'],
  });
});
