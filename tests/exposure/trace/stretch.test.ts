import { describe, expect, it } from 'vitest';
import { ENOUGH, meanOver, medianOf, medianRead } from '../../../src/exposure/trace/stretch';
import { signalFrom, signalOf } from './signals';

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
  // trapezoids of 1 · 3, 2 · 6 and 4 · 5 over the times 1, 2, 4 and 8
  const uneven = () => signalOf([90, 2, 4, 8, 2, 70], { times: [0, 1, 2, 4, 8, 9] });

  it('is the area under the samples, by the length and told in the middle', () => {
    expect(meanOver(uneven(), 1, 8)).toEqual({ level: 35 / 7, time: 4.5, count: 4 });
    expect(meanOver(uneven(), 2, 4)).toEqual({ level: 6, time: 3, count: 2 });
  });

  it('begins and ends with the first sample at or after a time', () => {
    expect(meanOver(uneven(), 0.5, 7)).toEqual({ level: 35 / 7, time: 4.5, count: 4 });
    expect(meanOver(uneven(), 1.5, 3)).toEqual({ level: 6, time: 3, count: 2 });
  });

  it('ends with the recording', () => {
    // 1 · 46, 3 · 1 and 1 · 36 more
    expect(meanOver(uneven(), -5, 99)).toEqual({ level: (46 + 35 + 36) / 9, time: 4.5, count: 6 });
    expect(meanOver(uneven(), 12, 99)).toEqual({ level: 70, time: 9, count: 1 });
  });

  it('is the light of the first sample where the span holds no time', () => {
    expect(meanOver(uneven(), 4, 4)).toEqual({ level: 8, time: 4, count: 1 });
    expect(meanOver(uneven(), 4, 1)).toEqual({ level: 8, time: 4, count: 1 });
    expect(meanOver(signalOf([0, 3, 5, 1], { times: [0, 1, 1, 2] }), 1, 1)).toEqual({
      level: 3,
      time: 1,
      count: 1,
    });
  });

  it('is told by every third of many samples, and by each of few among many', () => {
    const signal = signalFrom((t) => 3 + 2 * t, { to: 20_000, count: 20_001 });
    // 20 000 steps by threes end at 19 998
    expect(meanOver(signal, 0, 20_000)).toEqual({ level: 3 + 19_998, time: 9999, count: 6667 });
    expect(meanOver(signal, 10_000, 10_004)).toEqual({ level: 3 + 20_004, time: 10_002, count: 5 });
  });
});
