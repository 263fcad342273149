import { describe, expect, it } from 'vitest';
import { isFail } from '../../../src/exposure/core/result';
import { traceInside, traceTail } from '../../../src/exposure/trace/traceShares';
import { traceTable } from '../../../src/exposure/trace/traceTable';
import { traceTime } from '../../../src/exposure/trace/traceTime';
import { expectNear, refusal, value } from '../support';
import { record, twoTimes } from './shapes';

const FLASH = twoTimes(50e-6, 400e-6);

describe('the table of a flash', () => {
  it('has nine rows, levels 0.1 to 0.9: duration, before, inside, after', () => {
    // a triangle 1 s up and 3 s down: (1 − L)·4 s, L² of the light outside, a quarter of that before; worked by hand
    const rows = value(traceTable([0, 1, 4], [0, 5, 0]));
    expect(rows.length).toBe(9);
    for (const [i, row] of rows.entries()) {
      const outside = ((i + 1) / 10) ** 2;
      const wanted = [4 * (1 - (i + 1) / 10), outside / 4, 1 - outside, (3 * outside) / 4];
      for (const [k, cell] of row.entries()) expectNear(value(cell), wanted[k] as number, 1e-10);
    }
  });

  it('says what the single functions say, with noise and without, and with a base given', () => {
    for (const noise of [0, 0.01])
      for (const base of [undefined, 0.02]) {
        const { times, values } = record(FLASH, { decays: 40, samples: 30_000, lead: 0.1, noise });
        for (const [i, row] of value(traceTable(times, values, base)).entries()) {
          const level = (i + 1) / 10;
          const [width, before, inside, after] = row.map((cell) => value(cell)) as [
            number,
            number,
            number,
            number,
          ];
          expectNear(width, value(traceTime(times, values, level, base)), 1e-9);
          expect(inside).toBeCloseTo(value(traceInside(times, values, level, base)), 9);
          expect(after).toBeCloseTo(value(traceTail(times, values, level, base)), 9);
          expect(before + inside + after).toBeCloseTo(1, 12);
        }
      }
  });

  it('keeps the rows that the recording answers where it ends early, with its shares refused', () => {
    const whole = record(FLASH, { decays: 40, samples: 30_000, lead: 0.1 });
    const end = whole.times.findIndex((t) => t > FLASH.fall(0.35));
    const rows = value(traceTable(whole.times.subarray(0, end), whole.values.subarray(0, end)));
    for (const [i, row] of rows.entries()) {
      expect(row).toHaveLength(4);
      expect(isFail(row[0]), `${(i + 1) / 10}`).toBe((i + 1) / 10 < 0.35);
      for (const share of row.slice(1)) expect(refusal(share).fail).toBe('no-answer');
    }
  });
});
