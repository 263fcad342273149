import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { flashLevel } from '../../../src/exposure/duration/flashLevel';
import { CLIP_LOSS, flashClip, flashShare, shutterForFlash } from '../../../src/exposure/duration/shutter';
import { expectNear, itKeepsItsRanges, refusal, value } from '../support';

const seconds = fc.double({ min: -5, max: 1, noNaN: true }).map((x) => 10 ** x);
const level = fc.double({ min: 0.02, max: 0.98, noNaN: true });
const PULSE = { duration: [0.001, 'above 0'], level: [0.5, 'level'] } as const;
const DELAY = { delay: [0.0001, 'from 0'] } as const;

describe('share of a flash in an opening', () => {
  it('of the duration at a level is all but that level, worked by hand', () => {
    expectNear(value(flashShare(0.001, 0.5, 0.001)), 0.5);
    expectNear(value(flashShare(0.001, 0.1, 0.001)), 0.9);
  });

  it('of n half-value durations is 1 − 2^(−n), worked by hand', () => {
    for (const n of [1, 2, 3, 10]) expectNear(value(flashShare(0.001, 0.5, n * 0.001)), 1 - 2 ** -n);
  });

  it('is none where the shutter closes with the flash, or before it', () => {
    expect(flashShare(0.001, 0.5, 0.004, 0.004)).toBe(0);
    expect(flashShare(0.001, 0.5, 0.004, 0.005)).toBe(0);
  });

  it('is all of it in an opening of a hundred durations', () => {
    expect(flashShare(0.001, 0.5, 0.1)).toBe(1);
  });

  it('keeps its digits in an opening of a billionth of the duration: open·ln 2 / duration, worked by hand', () => {
    expectNear(value(flashShare(1, 0.5, 1e-9)), 1e-9 * Math.LN2 * (1 - (1e-9 * Math.LN2) / 2));
  });

  it('grows with the opening, shrinks with the delay and with the duration', () => {
    fc.assert(
      fc.property(seconds, level, fc.double({ min: 0.1, max: 8, noNaN: true }), (t, l, times) => {
        const open = times * t;
        const share = value(flashShare(t, l, open));
        expect(value(flashShare(t, l, open * 1.01))).toBeGreaterThan(share);
        expect(value(flashShare(t, l, open, open / 10))).toBeLessThan(share);
        expect(value(flashShare(t * 1.01, l, open))).toBeLessThan(share);
      }),
      trials(201),
    );
  });

  it('does not change when all times are k times as long', () => {
    fc.assert(
      fc.property(seconds, level, seconds, seconds, (t, l, open, k) => {
        expectNear(
          value(flashShare(t * k, l, open * k, (open * k) / 4)),
          value(flashShare(t, l, open, open / 4)),
        );
      }),
      trials(202),
    );
  });

  it('does not change when the same pulse is stated at another level', () => {
    fc.assert(
      fc.property(seconds, level, level, seconds, (t, a, b, open) => {
        expectNear(value(flashShare(value(flashLevel(t, a, b)), b, open)), value(flashShare(t, a, open)));
      }),
      trials(203),
    );
  });

  itKeepsItsRanges('FLASHSHARE', { ...PULSE, open: [0.004, 'above 0'], ...DELAY });
});

describe('stops lost to an early shutter', () => {
  it('are one at t0.5, and log2 of 4/3 at twice that, worked by hand', () => {
    expectNear(value(flashClip(0.001, 0.5, 0.001)), 1);
    expectNear(value(flashClip(0.001, 0.5, 0.002)), Math.log2(4 / 3));
  });

  it('are the share in stops', () => {
    fc.assert(
      fc.property(seconds, level, fc.double({ min: 0.01, max: 5, noNaN: true }), (t, l, times) => {
        const share = value(flashShare(t, l, times * t));
        expect(value(flashClip(t, l, times * t))).toBeCloseTo(-Math.log2(share), 11);
      }),
      trials(204),
    );
  });

  it('keep their digits where hardly any is lost: 2^(−50) / ln 2 after fifty half-value durations', () => {
    expectNear(value(flashClip(0.001, 0.5, 0.05)), 2 ** -50 / Math.LN2, 1e-12);
  });

  it('fall with the opening down to none, and are never below', () => {
    let before = Infinity;
    for (const n of [0.01, 0.1, 1, 3, 10, 100, 1000, 1e6]) {
      const lost = value(flashClip(0.001, 0.5, n * 0.001));
      expect(lost).toBeLessThanOrEqual(before);
      expect(lost).toBeGreaterThanOrEqual(0);
      before = lost;
    }
    expect(before).toBe(0);
  });

  it.each([
    [0.004, 0.004],
    [0.004, 0.005],
  ])('have no answer where the shutter is open for %d s and the flash comes after %d s', (open, delay) => {
    const { fail, message } = refusal(flashClip(0.001, 0.5, open, delay));
    expect(fail).toBe('no-answer');
    expect(message).toContain('closes before the flash');
  });

  it('have no answer either where rounding error alone puts the flash before the closing', () => {
    // 0.1 + 0.2 lies 6e-17 above 0.3: the same instant.
    expect(refusal(flashClip(0.001, 0.5, 0.1 + 0.2, 0.3)).fail).toBe('no-answer');
  });

  itKeepsItsRanges('FLASHCLIP', { ...PULSE, open: [0.004, 'above 0'], ...DELAY });
});

describe('shortest opening for a flash', () => {
  it('that may lose one stop is t0.5, and two stops log(4/3) half-value durations, worked by hand', () => {
    expectNear(value(shutterForFlash(0.001, 0.5, 1)), 0.001);
    expectNear(value(shutterForFlash(0.001, 0.5, 2)), 0.001 * Math.log2(4 / 3));
  });

  it('is t0.1 where a tenth of the light may be lost, worked by hand', () => {
    expectNear(value(shutterForFlash(0.001, 0.1, -Math.log2(0.9))), 0.001);
  });

  it('loses just that much, and undoes the loss of an opening', () => {
    const stops = fc.double({ min: 0.001, max: 6, noNaN: true });
    fc.assert(
      fc.property(seconds, level, stops, (t, l, loss) => {
        expectNear(value(flashClip(t, l, value(shutterForFlash(t, l, loss)))), loss, 1e-11);
      }),
      trials(205),
    );
    fc.assert(
      fc.property(seconds, level, fc.double({ min: 0.05, max: 5, noNaN: true }), (t, l, times) => {
        expectNear(value(shutterForFlash(t, l, value(flashClip(t, l, t * times)))), t * times, 1e-11);
      }),
      trials(206),
    );
  });

  it('loses just that much also where nearly all may be lost', () => {
    for (const loss of [20, 40, 60])
      expectNear(value(flashClip(1, 0.5, value(shutterForFlash(1, 0.5, loss)))), loss);
  });

  it('is longer by the delay, longer for less loss, and never shorter than the delay', () => {
    fc.assert(
      fc.property(
        seconds,
        level,
        seconds,
        fc.double({ min: 0.01, max: 6, noNaN: true }),
        (t, l, delay, loss) => {
          const open = value(shutterForFlash(t, l, loss));
          expectNear(value(shutterForFlash(t, l, loss, delay)), open + delay);
          expect(value(shutterForFlash(t, l, loss * 0.99))).toBeGreaterThan(open);
          expect(open).toBeGreaterThan(0);
        },
      ),
      trials(207),
    );
  });

  it('may lose a tenth of a stop unless told otherwise', () => {
    expect(CLIP_LOSS).toBe(0.1);
    expect(shutterForFlash(0.001, 0.5)).toBe(shutterForFlash(0.001, 0.5, 0.1));
  });

  itKeepsItsRanges('SHUTTERFORFLASH', { ...PULSE, loss: [0.1, 'above 0'], ...DELAY });
});
