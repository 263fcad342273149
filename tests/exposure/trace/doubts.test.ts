import { describe, expect, it } from 'vitest';
import { doubtSentence } from '../../../src/catalogue/traceNote';
import { type Doubt, doubtsOf as factsOf } from '../../../src/exposure/trace/doubts';
import type { Pulse } from '../../../src/exposure/trace/pulse';
import { DARK, pulseOf, signalOf } from './signals';

/** Straight lines between corners, each given by its light and the samples since the one before. */
function lines(first: number, ...corners: readonly (readonly [light: number, samples: number])[]): number[] {
  const values = [first];
  for (const [light, samples] of corners) {
    const start = values.at(-1) as number;
    for (let k = 1; k <= samples; k++) values.push(start + ((light - start) * k) / samples);
  }
  return values;
}

/** The doubts of a pulse in their sentences, but for that a flash of seconds is a long one. */
const doubtsOf = (pulse: Pulse): readonly string[] =>
  factsOf(pulse)
    .filter(({ doubt }) => doubt !== 'long')
    .map((found) => doubtSentence(found));

/** The doubts of a pulse whose samples are a second apart. */
const doubts = (values: readonly number[], told: Partial<Pulse> = {}): readonly string[] =>
  doubtsOf(pulseOf(signalOf(values, { times: values.map((_, i) => i) }), told));

/** Half a minute up and half a minute down, all lights and times such as a computer holds without rounding. */
const TRIANGLE = lines(0, [1, 32], [0, 32]);
const cutAt = (light: number): readonly number[] => TRIANGLE.slice(0, 65 - 32 * light);

describe('the doubts about a pulse', () => {
  it('are none where it starts and ends in the dark, has one sharp top and many samples', () => {
    expect(doubts(TRIANGLE)).toEqual([]);
    // at a steady step a last value of 0 would be a blank one
    expect(doubtsOf(pulseOf(signalOf([...TRIANGLE, 1 / 1024])))).toEqual([]);
  });

  it('tell from where on it was recorded, where that is a tenth of the height or more', () => {
    const starts = (light: number, told: Partial<Pulse> = {}) => doubts(lines(light, [1, 32], [0, 32]), told);
    const sentence = 'levels below that count from its first sample.';
    expect(starts(0.25)).toEqual([`The recording starts at 25 % of the height: ${sentence}`]);
    expect(starts(0.1)).toEqual([`The recording starts at 10 % of the height: ${sentence}`]);
    expect(starts(0.09)).toEqual([]);
    // the light begins with sample 14 of 32 on the way up
    expect(doubts(TRIANGLE, { from: 14 })).toEqual([
      `The recording starts at 44 % of the height: ${sentence}`,
    ]);
  });

  it('have no word for a flash that rises at once', () => {
    expect(doubts(lines(0.25, [1, 32], [0, 32]), { instant: true })).toEqual([]);
    expect(doubts([0, ...lines(1, [0, 64])], { from: 1, instant: true })).toEqual([]);
  });

  it('ask for a base that is sure', () => {
    expect(doubts(TRIANGLE, { base: { ...DARK, sure: false } })).toEqual([
      'Fewer than 40 samples lie clearly before the flash, so the base is unsure: record more before it, or give the base.',
    ]);
  });

  it('tell how far the base drifts from the first sample to the last, from a hundredth of the height on', () => {
    const drifts = (slope: number, scale: number) => {
      const times = TRIANGLE.map((_, i) => 100 + i);
      const values = TRIANGLE.map((light, i) => light / scale + slope * i);
      const signal = signalOf(values, { times, slope, origin: 100, scale });
      return doubtsOf(pulseOf(signal, { base: { ...DARK, slope: slope * scale } }));
    };
    const sentence = 'of the height along a straight line, which is taken off.';
    // 64 s × 1/512 a second × 2
    expect(drifts(1 / 512, 2)).toEqual([`The base rises by 25 % ${sentence}`]);
    expect(drifts(-1 / 512, 4)).toEqual([`The base falls by 50 % ${sentence}`]);
    expect(drifts(0.01 / 64, 1)).toEqual([`The base rises by 1 % ${sentence}`]);
    expect(drifts(0.0099 / 64, 1)).toEqual([]);
  });

  it('count the samples inside t0.5 where they are fewer than 20', () => {
    const rest = 'inside the duration at 0.5: record with a shorter sample interval.';
    expect(doubts([0, 1, 0])).toEqual([`Only 1 sample lies ${rest}`]);
    expect(doubts([0, 0, 0.25, 0.75, 1, 0.75, 0.25, 0])).toEqual([`Only 3 samples lie ${rest}`]);
    // the last sample below a half is 9 of 19 up, the last above it 10 of 19 or of 21 down
    expect(doubts(lines(0, [1, 19], [0, 19]))).toEqual([`Only 19 samples lie ${rest}`]);
    expect(doubts(lines(0, [1, 19], [0, 21]))).toEqual([]);
  });
});

describe('an odd sample', () => {
  const odd = (row: number, percent: number): string =>
    `Row ${row}, the highest, stands ${percent} % of the height above the rows beside it, and all levels are counted from it: if it is a disturbance, take it out.`;
  /** A triangle of half the height, with one sample of the whole. */
  const spiked = (at: number, light = 1): readonly number[] =>
    TRIANGLE.map((x, i) => (i === at ? light : x / 2));

  it('is one that stands alone on a flash that goes on beside it', () => {
    // a 64th from sample to sample: at the top 31/64 beside it, in the middle of the fall 17/64
    expect(doubts(spiked(32))).toContain(odd(33, 52));
    expect(doubts(spiked(48))).toContain(odd(49, 73));
    expect(doubts(spiked(16))).toContain(odd(17, 73));
  });

  const said = 'the highest, stands';

  it('is none where the light changes a third as fast nearby, or it hardly stands out', () => {
    // a quarter above both sides, and so much from sample to sample beyond these
    const peaked = (step: number): string =>
      doubts(
        lines(0, [0.75 - 2 * step, 20], [0.75, 2], [1, 1], [0.75, 1], [0.75 - 2 * step, 2], [0, 20]),
      ).join();
    expect(peaked(1 / 11)).not.toContain(said);
    expect(peaked(1 / 13)).toContain(said);
    // four samples on either side are near: a jump by a tenth between the third and the fourth, or the fourth and the fifth
    const jump = (near: number): string =>
      doubts(lines(0, [0.5, 20], [0.6, 1], [0.75, near], [1, 1], [0.75, 1], [0.5, 30])).join();
    expect(jump(2)).not.toContain(said);
    expect(jump(3)).toContain(said);
    // a smooth flash that a sample tops by 4 and by 6 hundredths
    const topped = (above: number): readonly string[] =>
      doubts(lines(0, [1 - above, 320], [0, 320]).map((x, i) => (i === 320 ? 1 : x)));
    expect(topped(0.04)).toEqual([]);
    expect(topped(0.06)).toHaveLength(1);
  });

  it('is none in noise that reaches as high, in the dark, or where a few corners are all there is', () => {
    const values = spiked(32);
    expect(doubts(values, { noise: 0.08 }).join()).toContain(said);
    expect(doubts(values, { noise: 0.09 }).join()).not.toContain(said);
    const alone = (beside: number): string =>
      doubts(lines(0, [beside, 30], [1, 1], [beside, 1], [0, 30])).join();
    expect(alone(0.03)).toContain(said);
    expect(alone(0.01)).not.toContain(said);
    expect(doubts(spiked(32).slice(13, 53)).join()).toContain(said);
    expect(doubts(spiked(32).slice(13, 52)).join()).not.toContain(said);
  });

  it('may be the second sample of a recording, or the last but one, and not one with nothing before or after it', () => {
    const falling = lines(1, [0.5, 1], [0.25, 50]);
    for (const values of [[0.5, ...falling], [0.5, ...falling].reverse()])
      expect(doubts(values).join()).toContain(said);
    for (const values of [falling, [...falling].reverse()]) expect(doubts(values).join()).not.toContain(said);
  });
});

describe('a flat top', () => {
  const flat = (percent: number) => [
    `The top is flat over ${percent} % of the duration at 0.5: the recording is clipped, or it is a square pulse.`,
  ];

  it('is told where it takes more than a tenth of t0.5', () => {
    // 32 s of slopes above a half
    expect(doubts(lines(0, [1, 32], [1, 3], [0, 32]))).toEqual([]);
    expect(doubts(lines(0, [1, 32], [1, 8], [0, 32]))).toEqual(flat(20));
    // 4 s of 32 + 4 + 4, a tenth just so
    expect(doubts(lines(0, [1, 64], [1, 4], [0, 8]))).toEqual([]);
  });

  it('reaches from the first lit sample of a square pulse to the last', () => {
    expect(doubts(lines(0, [0, 10], [1, 1], [1, 20], [0, 1], [0, 10]))).toEqual(
      // 20 s of 21: half a second of rise and of fall lie inside
      flat(95),
    );
  });

  it('is the longest time on end within a thousandth of the highest sample', () => {
    const topped = (...top: readonly number[]) =>
      doubts([...lines(0, [1, 32]), ...top, ...lines(1, [0, 32])]);
    // 6 s, 3 s and 3 s of 38 and 39 s
    expect(topped(1, 1, 1, 1, 1)).toEqual(flat(16));
    expect(topped(1, 1, 0.99, 1, 1, 1)).toEqual([]);
    expect(topped(0.999, 0.999, 1, 0.999, 0.999)).toEqual(flat(16));
    expect(topped(0.9989, 0.9989, 1, 0.9989, 0.9989)).toEqual([]);
    // 5 s and 2 s of 41 s
    expect(topped(1, 1, 1, 1, 1, 0.99, 1, 1)).toEqual(flat(12));
  });

  it('is not looked for in a later flash', () => {
    const values = lines(0, [1, 32], [0, 32], [1, 1], [1, 20], [0, 1]);
    expect(doubts(values, { to: 64, later: 65 })).toEqual([
      'The recording shows 2 flashes: the highest is measured, which peaks at 32 s.',
    ]);
  });

  it('is under noise that which falls by less than half of the noise', () => {
    const fitted = (falls: number, noise = 0.01) =>
      doubts(TRIANGLE, { noise, top: { height: 1, doubt: 0, at: 32, from: 28, to: 36, falls } });
    // 8 s of 32
    expect(fitted(0.0049)).toEqual(flat(25));
    expect(fitted(0.005)).toEqual([]);
    expect(fitted(0.008)).toEqual([]);
    expect(fitted(0, 0)).toEqual([]);
  });
});

describe('other flashes', () => {
  const shows = (count: number, time: string) => [
    `The recording shows ${count} flashes: the highest is measured, which peaks at ${time}.`,
  ];
  /** Flashes of half the height in the dark before and after the one that is measured. */
  function among(earlier: number, later: number, second = 1): readonly string[] {
    const other = lines(0, [0.5, 4], [0, 4], [0, 8]);
    const before = Array.from({ length: earlier }, () => other).flat();
    const after = Array.from({ length: later }, () => [...other].reverse()).flat();
    const values = [...before, ...TRIANGLE, ...after];
    const first = before.length;
    const times = values.map((_, i) => ((i - first) / 32) * second);
    return doubtsOf(
      pulseOf(signalOf(values, { times }), {
        from: first,
        to: first + 64,
        // the lit sample of another flash that is nearest to this one
        earlier: earlier > 0 ? first - 10 : undefined,
        later: later > 0 ? first + 65 + 9 : undefined,
      }),
    );
  }

  it('are counted on both sides', () => {
    expect(among(0, 1)).toEqual(shows(2, '1 s'));
    expect(among(1, 0)).toEqual(shows(2, '1 s'));
    expect(among(1, 2)).toEqual(shows(4, '1 s'));
    expect(among(3, 1)).toEqual(shows(5, '1 s'));
  });

  it('leave the time of the highest to be told, in the unit that suits it', () => {
    expect(among(1, 1, 1.5)).toEqual(shows(3, '1.5 s'));
    expect(among(1, 1, 0.999)).toEqual(shows(3, '999 ms'));
    expect(among(1, 1, 1e-3)).toEqual(shows(3, '1 ms'));
    expect(among(1, 1, 999e-6)).toEqual(shows(3, '999 µs'));
    expect(among(1, 1, 85e-6)).toEqual(shows(3, '85 µs'));
  });
});

describe('the end of the recording', () => {
  const endsAt = (percent: number) => [
    `The recording ends at ${percent} % of the height: the light that follows is missing.`,
  ];
  const rests = (percent: number, way: string) => [
    `After the flash the recording rests ${percent} % of the height ${way} the base before it: low levels and shares are unsure.`,
  ];

  it('is told where it cuts the light off', () => {
    expect(doubts(cutAt(0.75))).toEqual(endsAt(75));
    expect(doubts(cutAt(0.25))).toEqual(endsAt(25));
    expect(doubts(cutAt(3 / 32))).toEqual(endsAt(9.4));
    expect(doubts(cutAt(3 / 32), { foot: { low: 3 / 32, high: 3 / 32 } })).toEqual([]);
  });

  it('is the middle of the last 64th of the samples, of 20 at the most', () => {
    const ending = (...end: readonly number[]) => doubts([...lines(0, [1, 64], [0.375, 125]), ...end]);
    // three of 193 samples
    expect(ending(0.25, 0.125, 0.1875)).toEqual(endsAt(19));
    expect(ending(0.125, 0.25, 0.25)).toEqual(endsAt(25));
    // 20 of some 1500
    const long = (last: number) =>
      doubts([...lines(0, [1, 1000], [0.5, 500]), ...Array<number>(last).fill(0.25)]);
    expect(long(11)).toEqual(endsAt(25));
    expect(long(9)).toEqual(endsAt(50));
  });

  it('is told where it does not come back to the base', () => {
    const resting = (light: number, told: Partial<Pulse> = {}) =>
      doubts(lines(0, [1, 32], [0, 32], [light, 1], [light, 5]), { to: 64, ...told });
    expect(resting(0.05)).toEqual(rests(5, 'above'));
    expect(resting(-0.25)).toEqual(rests(25, 'below'));
    expect(resting(0.015)).toEqual(rests(1.5, 'above'));
    expect(resting(0.01)).toEqual([]);
    expect(resting(0.0125, { noise: 0.015 })).toEqual([]);
    expect(resting(0.018, { noise: 0.015 })).toEqual(rests(1.8, 'above'));
    // dark, and light to the end
    expect(resting(0)).toEqual([]);
    expect(resting(0.018, { to: 70 })).toEqual([]);
  });

  it('says nothing of a base that is unsure', () => {
    const values = lines(0, [1, 32], [0, 32], [0.05, 1], [0.05, 5]);
    expect(doubts(values, { to: 64, base: { ...DARK, sure: false } })).toHaveLength(1);
  });

  it('is that of another flash where one follows', () => {
    const values = lines(0, [1, 32], [0, 40], [0.5, 16]);
    expect(doubts(values, { to: 68, later: 73 })).toEqual([
      'The recording shows 2 flashes: the highest is measured, which peaks at 32 s.',
    ]);
  });

  it('leaves it to the lowest level to say why that is not told', () => {
    // the last sample alone is lit, and the middle of the last three is dark
    const spike = [...lines(0, [0, 130], [1, 32], [0, 32]), 0, 0.5];
    const never = 'The trace never falls through 0.1 of its height: the recording ends too early';
    expect(doubts(spike)).toEqual([`${never}.`]);
    expect(doubtsOf(pulseOf(signalOf(spike)))).toEqual([`${never} (zeros at the end count as blank cells).`]);
  });
});

describe('light that dips below a level on the way', () => {
  const dips = (level: number, above: string, duration: string) => [
    `The light dips below ${level} of the height on the way: it lies above it for ${above} of a duration of ${duration}.`,
  ];
  /** Up to 1, down to a light, up to three quarters, down to 0: a 32nd a second throughout. */
  const dipTo = (light: number): number[] =>
    lines(0, [1, 32], [light, 32 * (1 - light)], [0.75, 32 * (0.75 - light)], [0, 24]);

  it('is told with the time that it lies above it, worked by hand', () => {
    // 16 s to 80 s, below a half from 48 s to 64 s
    expect(doubts(dipTo(0.25))).toEqual(dips(0.5, '48 s', '64 s'));
    // 16 s to 51 s, below a half from 32.667 s to 34.333 s, between samples
    const values = [...lines(0, [1, 32]), 0.25, 0.25, ...lines(1, [0, 32])];
    expect(doubts(values)).toEqual(dips(0.5, '33.3 s', '35 s'));
  });

  it('is told at a tenth of the height as well', () => {
    const [half, tenth] = doubts(dipTo(0)) as [string, string];
    // 96 s to 16 s, below a half from 48 s to 80 s; 3.2 s to 108.8 s, below a tenth for 6.4 s
    expect([half]).toEqual(dips(0.5, '48 s', '80 s'));
    expect([tenth]).toEqual(dips(0.1, '99.2 s', '106 s'));
    expect(doubts(dipTo(0))).toHaveLength(2);
  });

  it('is added up over all dips', () => {
    const values = lines(0, [1, 32], [0.25, 24], [0.75, 16], [0.375, 12], [0.75, 12], [0, 24]);
    // 16 s to 104 s, without 48 s to 64 s and 80 s to 88 s
    expect(doubts(values)).toEqual(dips(0.5, '64 s', '88 s'));
  });

  it('is worth a word from a hundredth of the duration on', () => {
    const fall = (...dip: readonly number[]) => [
      ...lines(0, [1, 64], [0.75, 32]),
      ...dip,
      ...lines(0.75, [0.75, 2], [0.5, 32], [0, 64]),
    ];
    // 1 s of 100 s, and 2 s of 101 s
    expect(doubts(fall(0.25))).toEqual([]);
    expect(doubts(fall(0.25, 0.25))).toEqual(dips(0.5, '99 s', '101 s'));
  });

  it('is one only where it is deeper than a thousandth of the height and four times the noise', () => {
    const shallow = (light: number, noise = 0) =>
      doubts(lines(0, [1, 32], [light, 16], [light, 10], [0.75, 16], [0, 24]), { noise });
    expect(shallow(0.4995)).toEqual([]);
    expect(shallow(0.499)).toEqual([]);
    expect(shallow(0.4989)).toHaveLength(1);
    expect(shallow(0.4609, 0.01)).toEqual([]);
    expect(shallow(0.4375, 0.01)).toHaveLength(1);
    // touches the level, does not sink below it
    expect(shallow(0.5)).toEqual([]);
  });
});

describe('noise and times', () => {
  it('are told where the noise is more than a fiftieth of the height', () => {
    expect(doubts(TRIANGLE, { noise: 0.02 }).join()).not.toContain('Noise is');
    // A straight fall of 32 s goes on from 0.09 with 16·(0.3 + 0.09) s: 0.5616 of 32 − 16·0.09² + 0.5616
    expect(doubts(TRIANGLE, { noise: 0.03 })).toEqual([
      // four times these 6.24 s after 61.12 s, and the last sample lies at 64 s
      'The tail sinks into the noise at 9 % of the height: 1.7 % of the light comes after that, by the decay before it. Small losses to a shutter are unsure: record 22.1 s longer.',
      'Noise is 3 % of the height: durations at high levels are unsure.',
    ]);
  });

  it('are told with less noise where they leave durations unsure: a 64th of the height is known to a 320th', () => {
    const top = { height: 1, doubt: 1 / 320, at: 32, from: 32, to: 32, falls: 1 };
    // at a level L a triangle lasts 64·(1 − L) s, of which four times 64 s · L / 320 are unsure: 4·9/320, and 4·4/3/320 at 0.7
    expect(doubts(TRIANGLE, { noise: 1 / 64, top })).toEqual([
      'Noise leaves durations from 0.7 of the height up unsure, that at 0.9 by up to 11 %.',
    ]);
  });

  it('are told where the noise hides the lowest level', () => {
    // 2.5 × 0.05 is 0.125, which is 0.13 in hundredths, rounded up
    expect(doubts(TRIANGLE, { noise: 0.05 })).toEqual([
      '0.1 of the height is lost in the noise of the trace: ask for 0.13 or more, or record a cleaner trace.',
      // 16·0.15²·(1 + e) of 32 − 16·0.15² and that
      // and four times these 8.924 s after 59.2 s
      'The tail sinks into the noise at 15 % of the height: 4.1 % of the light comes after that, by the decay before it. Small losses to a shutter are unsure: record 30.9 s longer.',
      'Noise is 5 % of the height: durations at high levels are unsure.',
    ]);
  });

  it('are told where more than a twentieth of the rows have the time of the row before', () => {
    /** A hundred rows, the last at 0 s; so many of the first have one time. */
    const alike = (rows: number, blank = 0): readonly string[] => {
      const values = [...lines(0, [0, 34], [1, 32], [1 / 64, 33]), ...Array<number>(blank).fill(0)];
      const times = values.map((_, i) => Math.min(0, Math.max(i, rows) - 99));
      return doubtsOf(pulseOf(signalOf(values, { times })));
    };
    expect(alike(5)).toEqual([]);
    expect(alike(6)).toEqual([
      '6 rows have the same time as the row before: the times do not rise there, are they rounded?',
    ]);
    // a blank row is no row, though it has the time of the last
    expect(alike(5, 1)).toEqual([]);
  });
});

describe('facts of a recording as a whole', () => {
  const facts = (
    values: readonly number[],
    times: ArrayLike<number>,
    told: Partial<Pulse> = {},
  ): readonly Doubt[] => factsOf(pulseOf(signalOf(values, { times }), told));
  const ms = (step: number): readonly number[] => TRIANGLE.map((_, i) => (step * i) / 1000);

  it('are a flash longer than 50 ms, whose times may be in milliseconds: t0.5 of the triangle is 32 steps', () => {
    expect(facts(TRIANGLE, ms(1.5))).toEqual([]);
    expect(facts(TRIANGLE, ms(1.6))).toEqual([{ doubt: 'long', duration: expect.closeTo(0.0512, 9) }]);
    expect(doubtSentence({ doubt: 'long', duration: 0.4 })).toBe(
      'The duration at 0.5 is 400 ms, longer than a flash is: are the times in milliseconds?',
    );
  });

  it('are a seam of two recordings: three steps in one, and no less, in 40 samples or more', () => {
    const seam = (row: number, steps: number, values = TRIANGLE): readonly Doubt[] =>
      facts(
        values,
        values.map((_, i) => (i < row - 1 ? i : i + steps - 1) / 1024),
      );
    expect(seam(60, 4)).toEqual([{ doubt: 'jump in the times', row: 60, gap: 4 / 1024, usual: 1 / 1024 }]);
    expect(seam(60, 3)).toEqual([]);
    // the first of two that are as long
    const twice = TRIANGLE.map((_, i) => (i + (i >= 20 ? 3 : 0) + (i >= 50 ? 3 : 0)) / 1024);
    expect(facts(TRIANGLE, twice)).toMatchObject([{ doubt: 'jump in the times', row: 21 }]);
    // 39 and 40 samples
    for (const [up, names] of [
      [18, []],
      [19, ['jump in the times']],
    ] as const)
      expect(
        seam(35, 4, lines(0, [1, up], [0, 20]))
          .map(({ doubt }) => doubt)
          .filter((name) => name === 'jump in the times'),
      ).toEqual(names);
    expect(seam(5, 4)).toHaveLength(1);
    expect(seam(10, 4, lines(0, [1, 19], [0, 19])).map(({ doubt }) => doubt)).not.toContain(
      'jump in the times',
    );
    expect(doubtSentence({ doubt: 'jump in the times', row: 60, gap: 0.002, usual: 1e-6 })).toBe(
      'Row 60 comes 2 ms after the row before it, where most come after 1 µs: are these two recordings in one?',
    );
    // rounded times have their own sentence
    const rounded = TRIANGLE.map((_, i) => Math.floor(i / 8) / 128);
    expect(facts(TRIANGLE, rounded).map(({ doubt }) => doubt)).toEqual(['equal times']);
  });

  it('are the light that is carried on', () => {
    expect(facts(TRIANGLE, ms(1), { noise: 0.03 })[0]).toMatchObject({ doubt: 'tail in noise' });
    expect(facts(TRIANGLE, ms(1), { noise: 0.01 })).toEqual([]);
  });

  it('lack nothing after a tail that is recorded for four of its decay times', () => {
    // 6.24 ms four times after 61.12 ms, as in seconds above: up to 86.08 ms
    const missing = (last: number): unknown =>
      facts(
        [...TRIANGLE, ...Array<number>(last - 64).fill(0)],
        Array.from({ length: last + 1 }, (_, i) => i / 1000 - 1),
        {
          noise: 0.03,
        },
      )[0];
    expect(missing(76)).toMatchObject({ doubt: 'tail in noise', missing: expect.closeTo(0.01, 3) });
    expect(missing(88)).toMatchObject({ doubt: 'tail in noise', missing: 0 });
  });
});
