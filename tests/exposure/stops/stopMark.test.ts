import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { DIRECTIONS, exactMark } from '../../../src/exposure/stops/marks';
import { stopMark } from '../../../src/exposure/stops/stopMark';
import { stopText } from '../../../src/exposure/stops/stopText';
import { answerOf, itKeepsItsRanges, refusal, value } from '../support';

describe('the nearest mark', () => {
  it('is nearest in stops, not in number: 11.99 is 0.166 stop below f/13 and 0.168 above f/11 (worked by hand)', () => {
    const below = 2 * Math.log2(2 ** (22 / 6) / 11.99);
    const above = 2 * Math.log2(11.99 / 2 ** 3.5);
    expect(below).toBeLessThan(above);
    expect(13 - 11.99).toBeGreaterThan(11.99 - 11);
    expect(stopMark(11.99)).toBe(13);
  });

  it('of a tie is the higher: half a stop above f/8 is f/11 among full stops, and so it is among times', () => {
    expect(stopMark(8 * 2 ** 0.25, 'aperture', 'full')).toBe(11);
    expect(stopMark(2 ** -0.5, 'time', 'full')).toBe(1);
    expect(stopMark(100 * 2 ** 0.5, 'iso', 'full')).toBe(200);
  });

  it('is given as marked, not as it is exactly', () => {
    expect(stopMark(2 ** -6, 'time', 'full')).toBe(1 / 60);
    expect(stopMark(100 * 2 ** (1 / 3), 'iso')).toBe(125);
  });

  it('up and down is the next one that way: between f/8 and f/9, 1/128 and 1/101.6 s, ISO 100 and 125.99', () => {
    expect([stopMark(8.5, 'aperture', 'third', 'up'), stopMark(8.5, 'aperture', 'third', 'down')]).toEqual([
      9, 8,
    ]);
    // 0.008 s is more than the 1/128 s behind 1/125.
    expect([stopMark(0.008, 'time', 'third', 'up'), stopMark(0.008, 'time', 'third', 'down')]).toEqual([
      1 / 100,
      1 / 125,
    ]);
    expect([stopMark(101, 'iso', 'third', 'up'), stopMark(101, 'iso', 'third', 'down')]).toEqual([125, 100]);
    expect([stopMark(8.5, 'aperture', 'full', 'up'), stopMark(15.9, 'aperture', 'full', 'down')]).toEqual([
      11, 11,
    ]);
    expect([stopMark(8.5, 'aperture', 'half', 'up'), stopMark(9.4, 'aperture', 'half', 'down')]).toEqual([
      9.5, 8,
    ]);
  });

  it('is a mark itself within 1e-9 of it, up, down and nearest', () => {
    for (const direction of DIRECTIONS)
      for (const off of [-9e-10, 0, 9e-10]) {
        expect(stopMark(2 ** 3.5 * (1 + off), 'aperture', 'third', direction)).toBe(11);
        expect(answerOf('STOPMARK', '1/125', 'time', 'third', direction)).toBe(1 / 125);
        expect(answerOf('STOPMARK', 'ISO 400', 'iso', 'full', direction)).toBe(400);
      }
    expect(stopMark(2 ** 3.5 * (1 + 2e-9), 'aperture', 'third', 'up')).toBe(13);
    expect(stopMark(2 ** 3.5 * (1 - 2e-9), 'aperture', 'third', 'down')).toBe(10);
  });

  it('up is never below the value, down never above, and nothing lies between', () => {
    const exactOf = (marked: number): number => exactMark('aperture', marked) as number;
    fc.assert(
      fc.property(
        fc.double({ min: 0.72, max: 127, noNaN: true }),
        fc.constantFrom('third', 'full'),
        (n, division) => {
          const [up, down] = (['up', 'down'] as const).map((way) =>
            value(stopMark(n, 'aperture', division, way)),
          );
          const [high, low] = [exactOf(up as number), exactOf(down as number)];
          expect(high).toBeGreaterThanOrEqual(n * (1 - 1e-9));
          expect(low).toBeLessThanOrEqual(n * (1 + 1e-9));
          const stops = 2 * Math.log2(high / low);
          expect(
            Math.min(Math.abs(stops), Math.abs(stops - (division === 'third' ? 1 / 3 : 1))),
          ).toBeLessThan(1e-8);
          expect([up, down]).toContain(stopMark(n, 'aperture', division));
        },
      ),
      trials(3314),
    );
  });

  it('in the gap of the series between f/0.5 and f/0.7 is one of these two', () => {
    // Exact values: 2^−1 and 2^−0.5; their middle in stops is 2^−0.75 = 0.595.
    expect([stopMark(0.59), stopMark(0.6)]).toEqual([0.5, 0.7]);
    for (const division of ['third', 'half'] as const)
      expect([
        stopMark(0.6, 'aperture', division, 'up'),
        stopMark(0.6, 'aperture', division, 'down'),
      ]).toEqual([0.7, 0.5]);
  });

  it('beyond an end of the series is its last mark where a next one would lie farther off', () => {
    // A third of a stop beyond f/128 is f/143.7, a sixth f/135.6.
    expect([stopMark(135), refusal(stopMark(136)).fail]).toEqual([128, 'no-answer']);
    expect([
      stopMark(143, 'aperture', 'third', 'down'),
      refusal(stopMark(144, 'aperture', 'third', 'down')).fail,
    ]).toEqual([128, 'no-answer']);
    expect(refusal(stopMark(129, 'aperture', 'third', 'up')).fail).toBe('no-answer');
    // And below f/0.5: a third of a stop is f/0.445.
    expect(stopMark(0.46, 'aperture', 'third', 'up')).toBe(0.5);
    expect(refusal(stopMark(0.44, 'aperture', 'third', 'up')).fail).toBe('no-answer');
    expect(refusal(stopMark(0.49, 'aperture', 'third', 'down')).fail).toBe('no-answer');
  });

  it('half a division beyond an end is that end where the end is the higher', () => {
    // a sixth of a stop is a factor of 2^(1/12)
    expect(stopMark(0.5 * 2 ** (-1 / 12))).toBe(0.5);
    expect(refusal(stopMark(128 * 2 ** (1 / 12))).fail).toBe('no-answer');
    expect([stopMark(0.495), stopMark(129)]).toEqual([0.5, 128]);
  });

  it('does not exist beyond the series', () => {
    expect(refusal(stopMark(1000)).fail).toBe('no-answer');
    expect(refusal(stopMark(1e-9, 'time')).fail).toBe('no-answer');
  });

  itKeepsItsRanges('STOPMARK', { value: [8, 'above 0'] });
});

describe('a value as text', () => {
  it.each([
    [8, 'f/8'],
    [8 * 2 ** (1 / 20), 'f/8 +0.1'],
    [8 * 2 ** (9 / 20), 'f/8 +0.9'],
    [8 * 2 ** (9.49 / 20), 'f/8 +0.9'],
    [8 * 2 ** (9.51 / 20), 'f/11'],
    [8 * 2 ** (-0.4 / 20), 'f/8'],
    [8 * 2 ** (-0.6 / 20), 'f/5.6 +0.9'],
    [2 ** 3.5, 'f/11'],
  ])('%d counts its tenths above the full stop below: %s (worked by hand)', (exact, text) => {
    expect(stopText(exact)).toBe(text);
  });

  it('never says ten tenths', () => {
    for (let n = 0; n <= 2000; n++) {
      const text = String(stopText(2 ** (n / 400)));
      expect(text).toMatch(/^f\/[\d.]+( \+0\.[1-9])?$/);
    }
  });

  it.each([
    [2 ** -7, 'time', 'tenth', '1/125 s'],
    [2 ** -6.7, 'time', 'tenth', '1/125 s +0.3'],
    [200 * 2 ** 0.5, 'iso', 'tenth', 'ISO 200 +0.5'],
    [2 ** (22 / 6), 'aperture', 'third', 'f/13'],
    [2 ** (15 / 4), 'aperture', 'half', 'f/13 half'],
    [2 ** (17 / 4), 'aperture', 'half', 'f/19'],
    [2 ** -4.5, 'time', 'half', '1/20 s half'],
    [100 * 2 ** 0.5, 'iso', 'half', 'ISO 140'],
    [12, 'aperture', 'full', 'f/11'],
  ] as const)('%d of %s by %s is %s', (exact, scale, division, text) => {
    expect(stopText(exact, scale, division)).toBe(text);
  });

  it('does not exist beyond the series', () => {
    expect(refusal(stopText(1e6)).fail).toBe('no-answer');
    expect(refusal(stopText(1e6, 'aperture', 'half')).fail).toBe('no-answer');
  });

  itKeepsItsRanges('STOPTEXT', { value: [8, 'above 0'] });
});
