import { describe, expect, it } from 'vitest';
import { ENOUGH, meanOver, medianOf, medianRead } from '../../../src/exposure/trace/meanOverTime';
import { signalOf } from './signals';

describe('the middle of a stretch', () => {
  /** What is read, and at which places. */
  const placesRead = (from: number, to: number): readonly number[] => {
    const places: number[] = [];
    medianRead(from, to, (i) => places.push(i));
    return places;
  };

  it('is that of the samples from the first of them, without the one that ends it', () => {
    expect(medianRead(10, 15, (i) => i * i)).toBe(144);
    expect(medianRead(10, 14, (i) => i)).toBe(11.5);
    const signal = signalOf([9, 1, 5, 4, 8, 7], { base: 1, scale: 2 });
    expect(medianOf(signal, 1, 4)).toBe(6);
  });

  it('is told by each sample where they are no more than enough, wherever the stretch lies', () => {
    expect(placesRead(3, 6)).toEqual([3, 4, 5]);
    expect(placesRead(ENOUGH, ENOUGH + 3)).toEqual([ENOUGH, ENOUGH + 1, ENOUGH + 2]);
    expect(placesRead(5, 5 + ENOUGH)).toHaveLength(ENOUGH);
  });

  it('is told by every second or third where they are more', () => {
    const second = Array.from({ length: ENOUGH / 2 + 1 }, (_, k) => 7 + 2 * k);
    expect(placesRead(7, 7 + ENOUGH + 1)).toEqual(second);
    const third = Array.from({ length: ENOUGH }, (_, k) => 3 * k);
    expect(placesRead(0, 3 * ENOUGH)).toEqual(third);
  });
});

describe('the mean over a span of time', () => {
  // trapezoids of 1 · 46, 1 · 3, 2 · 6, 4 · 5 and 1 · 36
  const uneven = () => signalOf([90, 2, 4, 8, 2, 70], { times: [0, 1, 2, 4, 8, 9] });

  it('is the area under the samples, by the length and told in the middle', () => {
    expect(meanOver(uneven(), 1, 8)).toEqual({ level: 35 / 7, time: 4.5, count: 3 });
    expect(meanOver(uneven(), 2, 4)).toEqual({ level: 6, time: 3, count: 1 });
    expect(meanOver(uneven(), 0, 9)).toEqual({ level: (46 + 35 + 36) / 9, time: 4.5, count: 5 });
  });

  it('begins and ends between samples where the times lie there', () => {
    // from 3 at 1.5 over 4 at 2 to 6 at 3: 0.5 · 3.5 + 1 · 5
    expect(meanOver(uneven(), 1.5, 3)).toEqual({ level: 6.75 / 1.5, time: 2.25, count: 1 });
    // from 6.5 at 5 to 5 at 6, within one cell
    expect(meanOver(uneven(), 5, 6)).toEqual({ level: 5.75, time: 5.5, count: 1 });
  });

  it('hardly changes where a time moves by its last digit over a sample', () => {
    for (const off of [-1e-15, 0, 1e-15]) expect(meanOver(uneven(), 1 + off, 8).level).toBeCloseTo(5, 12);
    for (const off of [-1e-15, 0, 1e-15]) expect(meanOver(uneven(), 1, 8 + off).level).toBeCloseTo(5, 12);
  });

  it('is the light of the sample before where the span holds no time', () => {
    expect(meanOver(uneven(), 4, 4)).toEqual({ level: 8, time: 4, count: 1 });
    expect(meanOver(signalOf([0, 3, 5, 1], { times: [0, 1, 1, 2] }), 1, 1)).toEqual({
      level: 5,
      time: 1,
      count: 1,
    });
  });
});
