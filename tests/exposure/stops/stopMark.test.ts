import { describe, expect, it } from 'vitest';
import { stopMark } from '../../../src/exposure/stops/stopMark';
import { stopText } from '../../../src/exposure/stops/stopText';
import { itKeepsItsRanges, refusal } from '../support';

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
