import { describe, expect, it } from 'vitest';
import { lastKept } from '../../../src/exposure/core/lastKept';

/** A function that counts how often it really works. */
function counted(most: number): {
  readonly ask: (...given: unknown[]) => object;
  readonly times: () => number;
} {
  let times = 0;
  const ask = lastKept(most, (...given: unknown[]) => ({ given, time: ++times }));
  return { ask, times: () => times };
}

describe('a function that keeps its last answers', () => {
  it('works once for the same arguments, however they were made', () => {
    const { ask, times } = counted(2);
    const first = ask([8, undefined], 1, undefined, true);
    expect(ask([8, undefined], 1, undefined, true)).toBe(first);
    expect(times()).toBe(1);
  });

  it('works again for others: another number, order, truth, depth or gap', () => {
    const { ask, times } = counted(9);
    const all = [[[8, 11], 1], [[11, 8], 1], [[8, 11], 1.0000000000000002], [[8], 11, 1], [[8, undefined], 1], [[8, 11], true]]; // prettier-ignore
    for (const given of all) ask(...given);
    expect(times()).toBe(all.length);
  });

  it('forgets the one that was not asked for the longest time', () => {
    const { ask, times } = counted(2);
    ask(1);
    ask(2);
    ask(1);
    ask(3); // 2 goes
    ask(1);
    expect(times()).toBe(3);
    ask(2);
    expect(times()).toBe(4);
  });

  it('keeps an answer that is undefined', () => {
    let times = 0;
    const ask = lastKept(1, (...given: readonly number[]) => void (times += given.length));
    ask(1);
    ask(1);
    expect(times).toBe(1);
  });
});
