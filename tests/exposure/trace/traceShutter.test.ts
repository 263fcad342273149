import { describe, expect, it } from 'vitest';
import { flashClip, shutterForFlash } from '../../../src/exposure/duration/shutter';
import { traceClip, traceShutter } from '../../../src/exposure/trace/traceShutter';
import { traceTable } from '../../../src/exposure/trace/traceTable';
import { traceTime } from '../../../src/exposure/trace/traceTime';
import { expectNear, itKeepsItsRanges, refusal, value } from '../support';
import { exponential, gaussian, record, twoTimes } from './shapes';
import { countWithin, openingFor, shuttered } from './shuttered';

const RECORDED = { decays: 40, samples: 100_000 };

describe('shortest opening for a recorded flash', () => {
  it('is that of the formula for an exponential decay', () => {
    const tau = 1e-3;
    for (const lead of [0, 0.1]) {
      const { times, values } = record(exponential(tau), { ...RECORDED, lead });
      for (const loss of [0.01, 0.1, 1, 3])
        expectNear(
          value(traceShutter(times, values, loss, 2e-3)),
          value(shutterForFlash(tau * Math.LN2, 0.5, loss, 2e-3)),
          1e-6,
        );
    }
  });

  it('counts from the rise through 2 % of the height, worked by hand on a triangle', () => {
    // 1 s up and 1 s down: a quarter is lost (log2 of 4/3) when it has come down to √½, 1 − √½ before its peak's mirror
    const loss = Math.log2(4 / 3);
    expectNear(value(traceShutter([0, 1, 2], [0, 6, 0], loss)), 2 - Math.sqrt(0.5) - 0.02);
    // a stop: at the peak
    expectNear(value(traceShutter([0, 1, 2], [0, 6, 0], 1)), 1 - 0.02);
    // two stops, three quarters: on the way up
    expectNear(value(traceShutter([0, 1, 2], [0, 6, 0], 2)), Math.sqrt(0.5) - 0.02);
  });

  it('is so many times as long where all times are, worked by hand on wider triangles', () => {
    for (const width of [0.25, 4])
      for (const [loss, close] of [
        [Math.log2(4 / 3), 2 - Math.sqrt(0.5)],
        [2, Math.sqrt(0.5)],
      ] as const)
        expectNear(value(traceShutter([0, width, 2 * width], [0, 6, 0], loss)), width * (close - 0.02));
  });

  it('ends in the dark between two alike halves of a flash where half of it is lost', () => {
    expectNear(value(traceShutter([0, 1, 2, 3, 4], [0, 6, 0, 6, 0], 1)), 2 - 0.02);
  });

  it('passes what it says of any shape: the light up to its end', () => {
    for (const shape of [twoTimes(50e-6, 400e-6), gaussian(1e-4)]) {
      const { times, values } = record(shape, { ...RECORDED, lead: 0.1 });
      for (const loss of [0.05, 0.1, 0.5, 2]) {
        const close = shape.rise(0.02) + value(traceShutter(times, values, loss));
        expectNear(-Math.log2(shape.sum(close) / shape.total), loss, 1e-5);
      }
    }
  });

  it('is longer by the delay, and may lose a tenth of a stop unless told otherwise', () => {
    const { times, values } = record(twoTimes(50e-6, 400e-6), { ...RECORDED, lead: 0.1 });
    const open = value(traceShutter(times, values));
    expect(traceShutter(times, values, 0.1, 0)).toBe(open);
    expectNear(value(traceShutter(times, values, 0.1, 0.004)), open + 0.004);
    expect(open).toBeLessThan(value(traceShutter(times, values, 0.05)));
  });

  it('takes the base that is given, where the recording ends before it comes down to one', () => {
    const tau = 1e-3;
    const { times, values } = record(exponential(tau), { decays: 3, samples: 30_000 });
    // above a base of −0.05 the light up to t is 1 − e^(−t) + t/20: half of it has passed, by bisection
    const light = (t: number): number => 1 - Math.exp(-t) + t / 20;
    let [early, late] = [0, 3];
    for (let i = 0; i < 60; i++) {
      const middle = (early + late) / 2;
      if (light(middle) < light(3) / 2) early = middle;
      else late = middle;
    }
    expectNear(value(traceShutter(times, values, 1, 0, -0.05)), tau * late, 1e-5);
    expect(value(traceShutter(times, values, 1)) / (tau * late)).toBeLessThan(0.97);
  });

  it('is hardly longer under noise', () => {
    const shape = twoTimes(50e-6, 400e-6);
    const clean = record(shape, { ...RECORDED, lead: 0.1 });
    const noisy = record(shape, { ...RECORDED, lead: 0.1, noise: 0.01, seed: 41 });
    expectNear(
      value(traceShutter(noisy.times, noisy.values)),
      value(traceShutter(clean.times, clean.values)),
      0.02,
    );
  });

  it('is the delay alone where nearly all may be lost', () => {
    const { times, values } = record(exponential(1e-3), RECORDED);
    expectNear(value(traceShutter(times, values, 60, 0.01)), 0.01);
    expectNear(value(traceShutter([0, 1, 2], [0, 6, 0], 60, 0.01)), 0.01);
  });

  it('is refused where the recording ends before enough of the light', () => {
    const { times, values } = record(exponential(1e-3), { decays: 2, samples: 1000, lead: 0.1 });
    expect(value(traceTime(times, values, 0.5))).toBeGreaterThan(0);
    expect(refusal(traceShutter(times, values)).message).toContain('never falls through 0.1');
  });

  it('is longer than what noise hides: the tail is carried on', () => {
    // e^(−t/τ) is what is left: a hundredth is lost at 4.6 decay times, where the light lies a tenth of the noise high.
    const tau = 1e-3;
    const { times, values } = record(exponential(tau), { ...RECORDED, lead: 0.1, noise: 0.05, seed: 3 });
    const loss = -Math.log2(0.99);
    expectNear(value(traceShutter(times, values, loss)), tau * Math.log(100), 0.05);
  });

  itKeepsItsRanges('TRACESHUTTER', {
    times: [[0, 1, 2, 3, 4], 'any'],
    values: [[0, 2, 8, 4, 0], 'any'],
    loss: [0.1, 'above 0'],
    delay: [0.001, 'from 0'],
  });
});

describe('stops lost to a shutter that closes before a recorded flash is over', () => {
  it('are those of the formula for an exponential decay', () => {
    // exponential-decay, TRACECLIP: e^(−t/τ) of the light is left
    const tau = 1e-3;
    const { times, values } = record(exponential(tau), { ...RECORDED, lead: 0.1 });
    for (const open of [0.2e-3, 1e-3, 3e-3, 8e-3])
      expectNear(
        value(traceClip(times, values, open + 2e-3, 2e-3)),
        value(flashClip(tau * Math.LN2, 0.5, open)),
        1e-4,
      );
  });

  it('are worked by hand on a triangle, from its rise through 2 % of the height', () => {
    // pulse-shapes, TRACECLIP: 1 s up and 1 s down: half of the light at the peak, and all but an eighth half a second later
    expectNear(value(traceClip([0, 1, 2], [0, 6, 0], 1 - 0.02)), 1);
    expectNear(value(traceClip([0, 1, 2], [0, 6, 0], 1.5 - 0.02)), Math.log2(8 / 7));
    // an eighth of the light
    expectNear(value(traceClip([0, 1, 2], [0, 6, 0], 0.5 - 0.02)), 3);
    for (const open of [2, 3]) expect(traceClip([0, 1, 2], [0, 6, 0], open)).toBe(0);
  });

  it('are the inverse of the shortest opening, under noise too', () => {
    for (const noise of [0, 0.01])
      for (const shape of [exponential(1e-3), twoTimes(50e-6, 400e-6), gaussian(1e-4)]) {
        const { times, values } = record(shape, { ...RECORDED, lead: 0.1, noise });
        for (const loss of [0.01, 0.05, 0.1, 0.5, 2]) {
          const open = value(traceShutter(times, values, loss, 1e-3));
          expectNear(value(traceClip(times, values, open, 1e-3)), loss, 1e-7);
        }
      }
  });

  it('take the base that is given', () => {
    // 1, 7, 1, 0 above 2: 4 of 8.5 have passed at the peak, from the first sample on
    expectNear(value(traceClip([0, 1, 2, 3], [3, 9, 3, 2], 1, 0, 2)), Math.log2(8.5 / 4));
  });

  it('are refused where the shutter closes before the flash, or too much of the light is missing', () => {
    expect(refusal(traceClip([0, 1, 2], [0, 6, 0], 0.5, 0.5))).toMatchObject({
      fail: 'no-answer',
      message: expect.stringContaining('before the flash begins'),
    });
    const { times, values } = record(exponential(1e-3), { decays: 2, samples: 1000, lead: 0.1 });
    expect(refusal(traceClip(times, values, 1e-3)).message).toContain('never falls through 0.1');
  });

  itKeepsItsRanges('TRACECLIP', {
    times: [[0, 1, 2, 3, 4], 'any'],
    values: [[0, 2, 8, 4, 0], 'any'],
    open: [3, 'above 0'],
    delay: [0.001, 'from 0'],
  });
});

describe('a tail that noise hides', () => {
  const flashes = shuttered(12, 501);

  it.each([0.02, 0.1, 0.3, 1])(
    'leaves the opening that loses %d stop within 5 % of the truth in 95 of 100 recordings',
    (loss) => {
      const errors = flashes.map(
        ({ shape, times, values }) => value(traceShutter(times, values, loss)) / openingFor(shape, loss) - 1,
      );
      expect(countWithin(0.05, errors)).toBeGreaterThanOrEqual(95);
    },
  );

  it.each([
    [12, 0.1, 95],
    [12, 0.3, 95],
    [12, 1, 95],
    [8, 0.1, 90],
    [8, 0.3, 95],
    [6, 0.1, 70],
    [6, 0.3, 95],
  ])(
    'of %d decay times leaves a loss of %d stop within 5 % of the truth in %d of 100 recordings',
    (decays, loss, least) => {
      const errors = (decays === 12 ? flashes : shuttered(decays, 501)).map(
        ({ shape, times, values }) => value(traceClip(times, values, openingFor(shape, loss))) / loss - 1,
      );
      expect(countWithin(0.05, errors)).toBeGreaterThanOrEqual(least);
    },
  );

  it('leaves shares that add up to 1', () => {
    for (const { times, values } of flashes.slice(0, 10))
      for (const row of value(traceTable(times, values))) {
        const [, before, inside, after] = row as number[];
        expect((before as number) + (inside as number) + (after as number)).toBeCloseTo(1, 14);
      }
  });
});
