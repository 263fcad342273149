import { describe, expect, it } from 'vitest';
import { searchSteps } from '../../../src/exposure/balance/searchSteps';

/** 1 and 60 tenths of a stop below it, down to 1/64. */
const sixStops = Array.from({ length: 61 }, (_, k) => 2 ** (-k / 10));

describe('the search over all settings, of cases worked by hand,', () => {
  it('has the one setting of no heads', () => {
    expect(searchSteps([], 1)).toEqual([]);
  });

  it('does not try in vain what the least of the heads that follow makes too much', () => {
    // Six heads that bring a sixth each at their least: of all the settings of five, one alone leaves room for the sixth.
    const heads = Array.from({ length: 6 }, () => ({ shares: sixStops, light: [64 / 6] }));
    expect(searchSteps(heads, 0.01)).toEqual([60, 60, 60, 60, 60, 60]);
  });

  it('does not try in vain what the most of the heads that follow cannot make good', () => {
    // The first point wants the first head at a half, as the second must stay at its most for the second point; the others
    // bring that three hundredths at their most. With the first head at its most, the second is too low whatever they do.
    const heads = [
      { shares: sixStops, light: [1, 0] },
      { shares: sixStops, light: [0.5, 0.97] },
      ...[3, 4, 5].map(() => ({ shares: sixStops, light: [0, 0.01] })),
    ];
    expect(searchSteps(heads, 0.1)).toEqual([10, 0, 0, 0, 0]);
  });
});
