import { describe, expect, it } from 'vitest';
import { NOTHING_DOUBTFUL, noteOf, traceNote } from '../../src/catalogue/traceNote';
import { traceTime } from '../../src/exposure/trace/traceTime';
import { refusal, value } from '../exposure/support';
import {
  changed,
  exactly,
  exponential,
  gaussian,
  halfSine,
  record,
  type Recording,
  trapezoid,
  twoTimes,
} from '../exposure/trace/shapes';

const FLASH = twoTimes(50e-6, 400e-6);
const GOOD = { decays: 40, samples: 40_000, lead: 0.1 };
const note = ({ times, values }: Recording): string => value(traceNote(times, values));
const upTo = ({ times, values }: Recording, end: number): Recording => ({
  times: times.subarray(0, end),
  values: values.subarray(0, end),
});

describe('the note of a recording', () => {
  it('is one fixed sentence where nothing is doubtful, with a little noise too', () => {
    for (const shape of [FLASH, exponential(1e-3), gaussian(1e-4), halfSine(1e-3)])
      expect(note(record(shape, { ...GOOD, samples: 200_000 })), shape.name).toBe(NOTHING_DOUBTFUL);
    for (const shape of [FLASH, gaussian(1e-4), halfSine(1e-3)])
      expect(note(record(shape, { ...GOOD, samples: 200_000, noise: 0.003 })), shape.name).toBe(
        NOTHING_DOUBTFUL,
      );
    for (const shape of [gaussian(1e-4), halfSine(1e-3)])
      expect(note(record(shape, { ...GOOD, samples: 200_000, noise: 0.01 })), shape.name).toBe(
        NOTHING_DOUBTFUL,
      );
  });

  it('tells in each recording that a duration near the top of a slow fall is unsure, which errs by 3 % in one of ten', () => {
    const [fast, slow] = [twoTimes(10e-6, 1e-3), { decays: 40, samples: 200_000, lead: 0.1, noise: 0.01 }];
    const errors = Array.from({ length: 10 }, (_, k) => {
      const recording = record(fast, { ...slow, seed: 101 + k });
      expect(note(recording)).toMatch(
        /Noise leaves durations from 0\.9 of the height up unsure, that at 0\.9 by up to (2\.\d|3) %\.$/,
      );
      const { width } = exactly(fast, 0.9);
      return Math.abs(value(traceTime(recording.times, recording.values, 0.9)) / width - 1);
    });
    expect(Math.max(...errors)).toBeGreaterThan(0.02);
    expect(errors.filter((error) => error < 0.02).length).toBeGreaterThanOrEqual(8);
  });

  it('says so of nothing else, where the durations that heads are judged by are known', () => {
    const unsure = 'Noise leaves durations from 0.';
    const slow = (noise: number): string => note(record(exponential(1e-3), { ...GOOD, noise }));
    expect(slow(0.002)).toMatch(
      /^Nothing doubtful was found in this recording, but noise leaves durations from 0\.[6-9] of the height up unsure, that at 0\.9 by up to \d(\.\d)? %\.$/,
    );
    expect(slow(0.01)).toContain(unsure);
    expect(slow(0.01)).not.toContain('Nothing doubtful');
  });

  it('tells levels from a half on, and levels beside another doubt, as any doubt', () => {
    const high = (from: number) => ({ doubt: 'high levels', from, share: 0.25 }) as const;
    const long = { doubt: 'long', duration: 0.4 } as const;
    const unsure = (from: string): string =>
      `oise leaves durations from ${from} of the height up unsure, that at 0.9 by up to 25 %.`;
    expect(noteOf([high(0.5)])).toBe(`N${unsure('0.5')}`);
    expect(noteOf([high(0.6)])).toBe(`${NOTHING_DOUBTFUL.slice(0, -1)}, but n${unsure('0.6')}`);
    const tooLong = 'The duration at 0.5 is 400 ms, longer than a flash is: are the times in milliseconds?';
    expect(noteOf([high(0.6), long])).toBe(`N${unsure('0.6')} ${tooLong}`);
    expect(noteOf([long])).toBe(tooLong);
    expect(noteOf([])).toBe(NOTHING_DOUBTFUL);
  });

  it('says times in the unit that suits them, and light in percent', () => {
    for (const [duration, said] of [
      [0.06, '60 ms'],
      [0.9994, '999 ms'],
      [1, '1 s'],
      [2.5, '2.5 s'],
    ] as const)
      expect(noteOf([{ doubt: 'long', duration }])).toContain(`The duration at 0.5 is ${said}, longer`);
    const seam = (gap: number) => noteOf([{ doubt: 'jump in the times', row: 60, gap, usual: 2e-6 }]);
    expect(seam(1e-3)).toContain('Row 60 comes 1 ms after the row before it, where most come after 2 µs:');
    expect(seam(0.99e-3)).toContain('comes 990 µs after');
    expect(noteOf([{ doubt: 'lamp', hertz: 100, swing: 0.031 }])).toBe(
      'The light beside the flash swings by 3.1 % of the height at 100 Hz, as that of a lamp on the mains: switch it off.',
    );
    const tail = (missing: number) => noteOf([{ doubt: 'tail in noise', light: 0.03, share: 0.05, missing }]);
    expect(tail(0)).toMatch(/by the decay before it\.$/);
    expect(tail(0.002)).toMatch(
      /by the decay before it\. Small losses to a shutter are unsure: record 2 ms longer\.$/,
    );
  });

  it('tells a tail that noise hides: 3 % of an exponential decay below 3 % of its height', () => {
    expect(note(record(exponential(1e-3), { ...GOOD, samples: 200_000, noise: 0.01 }))).toMatch(
      /^The tail sinks into the noise at 3(\.\d)? % of the height: (2\.9|3(\.\d)?) % of the light comes after that, by the decay before it\. Noise leaves durations from 0\.[78] of the height up unsure, that at 0\.9 by up to [567](\.\d)? %\.$/,
    );
  });

  it('counts the samples inside t0.5 where they are fewer than 20', () => {
    expect(note({ times: new Float64Array([0, 1, 2]), values: new Float64Array([0, 1, 0]) })).toContain(
      'Only 1 sample lies inside',
    );
    const few = (samples: number): string => note(record(halfSine(3), { decays: Math.PI, samples, lead: 0 }));
    // two thirds of a half sine lie above a half of it: 16 of 24 steps
    expect(few(25)).toMatch(/Only (15|16|17) samples lie inside/);
    expect(few(300)).not.toContain('Only');
  });

  it('tells a flat top: clipped, or a square pulse', () => {
    for (const noise of [0, 0.01]) {
      const good = record(FLASH, { ...GOOD, samples: 200_000, noise });
      expect(note(changed(good, (light) => Math.min(light, 0.8)))).toMatch(
        /top is flat .* clipped, or it is a square/,
      );
      const square = record(trapezoid(100e-6, 300e-6, 200e-6), { ...GOOD, samples: 200_000, noise });
      expect(note(square)).toContain('top is flat');
    }
  });

  it('tells a sample that makes the flash look higher than it is, and t0.5 half as long', () => {
    for (const noise of [0, 0.002, 0.01]) {
      const good = record(FLASH, { decays: 12, samples: 4000, lead: 0.1, noise });
      const peak = good.times.findIndex((t) => t > FLASH.rise(0.999));
      for (const at of [peak, peak + 100]) {
        const odd = changed(good, (light, _, i) => (i === at ? 2 : light));
        const [long, short] = [good, odd].map(({ times, values }) => value(traceTime(times, values)));
        expect((short as number) / (long as number)).toBeLessThan(0.6);
        expect(note(odd)).toContain(`Row ${at + 1}, the highest, stands`);
        expect(note(good)).not.toContain('the highest, stands');
      }
    }
  });

  it('counts the flashes where there are several', () => {
    const other = (at: number) => (light: number, part: number) =>
      light + 0.3 * FLASH.light((part - at) * 44 * FLASH.decay);
    const two = changed(record(FLASH, GOOD), other(0.5));
    expect(note(two)).toContain('shows 2 flashes: the highest is measured, which peaks at 119 µs');
    expect(note(changed(two, other(0.8)))).toContain('shows 3 flashes');
    expect(note(changed(record(FLASH, { ...GOOD, lead: 0.5 }), other(0.1)))).toContain('shows 2 flashes');
  });

  it('is one sentence after the other where more than one thing is doubtful', () => {
    expect(value(traceNote([0, 1e-3, 2e-3], [0, 8, 2], 0))).toBe(
      'Only 1 sample lies inside the duration at 0.5: record with a shorter sample interval. ' +
        'The recording ends at 25 % of the height: the light that follows is missing.',
    );
  });

  it('does not take a later flash that is cut off for the tail or the base', () => {
    const two = changed(
      record(FLASH, GOOD),
      (light, part) => light + 0.5 * FLASH.light((part - 0.99) * 44 * FLASH.decay),
    );
    expect(note(two)).toMatch(/^The recording shows 2 flashes[^.]*\.$/);
  });

  it('says where the tail is cut off', () => {
    const good = record(FLASH, GOOD);
    const cut = (level: number): string =>
      note(
        upTo(
          good,
          good.times.findIndex((t) => t > FLASH.fall(level)),
        ),
      );
    expect(cut(0.3)).toContain('ends at 30 % of the height');
    expect(cut(0.05)).toContain('ends at 5.1 % of the height');
    expect(cut(0.01)).toBe(NOTHING_DOUBTFUL);
    // a spike on the last row that is not blank
    const spike = Float64Array.from({ length: 900 }, (_, i) => (i === 500 ? 1 : 0));
    expect(value(traceNote([1], spike))).toContain('never falls through 0.1 of its height');
  });

  it('says where it starts on the flash, and that the base is unsure then', () => {
    const started = note(record(exponential(1e-3), { ...GOOD, lead: 0 }));
    expect(started).toContain('starts at 100 % of the height');
    expect(started).toContain('base is unsure');
    expect(note(record(FLASH, { ...GOOD, lead: 0 }))).toContain('Fewer than 40 samples');
  });

  it('does not ask for the base where it is given', () => {
    const { times, values } = record(FLASH, { decays: 40, samples: 40_000 });
    expect(value(traceNote(times, values))).toContain('or give the base');
    expect(value(traceNote(times, values, 0))).not.toContain('base');
  });

  it('says where the base drifts, or is not come back to', () => {
    const good = record(FLASH, GOOD);
    expect(note(changed(good, (light, part) => light + 0.1 * part))).toContain(
      'base rises by 10 % of the height',
    );
    expect(note(changed(good, (light, part) => light - 0.1 * part))).toContain(
      'base falls by 10 % of the height',
    );
    expect(note(changed(good, (light, part) => light - (part > 0.11 ? 0.05 : 0)))).toContain(
      'below the base before it',
    );
    expect(note(changed(good, (light, part) => light + (part > 0.11 ? 0.015 : 0)))).toContain(
      'above the base before it',
    );
  });

  it('tells a dip that begins in the first cell of a recording by its own time, worked by hand', () => {
    // falls from 0.75 through 0.5 after half a second, is up again at 13 s, and down at 45 s
    const corners = [[0, 0.75], [1, 0.25], [5, 0.25], [29, 1], [61, 0]] as const; // prettier-ignore
    const [times, values] = [0, 1].map((k) => corners.map((corner) => corner[k] as number)) as [
      number[],
      number[],
    ];
    expect(value(traceNote(times, values, 0))).toContain('above it for 32.5 s of a duration of 45 s');
  });

  it('tells ringing, with the time above the level and the duration: 2.4583 s of 2.875 s, worked by hand', () => {
    const times = Float64Array.from({ length: 4001 }, (_, i) => i / 1000);
    // straight lines 0, 10, 4, 8, 0 a second apart: below 5 from 1.8333 to 2.25
    const corners = [0, 10, 4, 8, 0, 0];
    const values = times.map((t) => {
      const i = Math.floor(t);
      return (corners[i] as number) + (t - i) * ((corners[i + 1] as number) - (corners[i] as number));
    });
    expect(note({ times, values })).toContain('dips below 0.5 of the height');
    expect(note({ times, values })).toContain('above it for 2.46 s of a duration of 2.88 s');
    expect(note({ times, values })).not.toContain('dips below 0.1');
    expect(value(traceNote([1], corners.slice(0, 5).concat(0.1)))).toContain(
      'for 2.46 s of a duration of 2.88 s',
    );
  });

  it('says how much noise there is where it is much', () => {
    expect(note(record(FLASH, { ...GOOD, noise: 0.03 }))).toMatch(/Noise is (2\.9|3|3\.1) % of the height/);
  });

  it('says where times do not rise', () => {
    const { times, values } = record(FLASH, GOOD);
    const rounded = times.map((t) => Math.round(t * 1e6) / 1e6);
    expect(note({ times: rounded, values })).toMatch(/\d+ rows have the same time as the row before/);
    expect(value(traceNote([0, 1, 3, 2], [0, 5, 1, 0]))).toContain('row 4 is earlier than row 3');
  });

  it('is the reason of the refusal where nothing can be measured', () => {
    expect(value(traceNote([0, 1, 2, 3], [2, 2, 2, 2]))).toContain('never rises above its base');
    expect(value(traceNote([0, 1, 2, 3], [2, NaN, 2, 2]))).toContain('row 2 is not a finite number');
  });

  it('is refused where rows are missing', () => {
    expect(refusal(traceNote([], [1, 2])).fail).toBe('unreadable');
    expect(refusal(traceNote([1, 2], [1, 2, 3])).fail).toBe('unreadable');
  });
});
