import { expect, test } from 'vitest';
import { headNote, planNote } from '../../src/catalogue/planRemarks';
import type { HeadRemark, PlanRemark } from '../../src/exposure/pops/plan/remarks';

test.each<readonly [HeadRemark, string]>([
  [{ remark: 'off', lacks: 'target' }, 'off: no target'],
  [{ remark: 'too weak', at: { stops: -1, pops: 1 } }, '1 stop too weak at one pop'],
  [
    { remark: 'too weak', at: { stops: -0.1, pops: 2 }, next: { stops: 0.48, pops: 3 } },
    '0.1 stop too weak at 2 pops, and 0.48 stop too strong at least power, 3 pops',
  ],
  [{ remark: 'too strong', at: { stops: 1.1, pops: 1 } }, '1.1 stops too strong at least power, one pop'],
  [
    { remark: 'too strong', at: { stops: 0.1, pops: 3 }, before: { stops: -0.48, pops: 2 } },
    '0.1 stop too strong at least power, 3 pops, and 0.48 stop too weak at 2 pops',
  ],
  [
    { remark: 'stays on', at: { stops: 1, pops: 2 } },
    '1 stop too strong at least power, 2 pops, and it stays on for all of them',
  ],
  [
    { remark: 'between settings', at: { stops: 0.04, pops: 1 } },
    '0.04 stop too strong at its nearest setting, one pop',
  ],
  [
    { remark: 'between settings', at: { stops: -0.04, pops: 2 } },
    '0.04 stop too weak at its nearest setting, 2 pops',
  ],
  [{ remark: 'switch off', pops: 1 }, 'switch off after one pop'],
  [{ remark: 'too many pops', pops: 31, allowed: 12 }, '31 pops in a row, where 12 are allowed'],
  [{ remark: 'too many pops', pops: 4, allowed: 1 }, '4 pops in a row, where 1 is allowed'],
])('of one head: %j', (remark, words) => expect(headNote([remark])).toBe(words));

test.each<readonly [PlanRemark, string]>([
  [{ remark: 'all off' }, 'all heads are off'],
  [
    { remark: 'out of reach', heads: [0, 1] },
    'out of reach: heads 1 and 2; of all plans this one misses least',
  ],
  [
    {
      remark: 'switch off',
      after: [
        { heads: [1, 3], pops: 1 },
        { heads: [2], pops: 4 },
      ],
    },
    'switch off heads 2 and 4 after one pop, head 3 after 4 pops',
  ],
  [{ remark: 'too many pops', heads: [0] }, 'more pops in a row than allowed: head 1'],
])('of all heads: %j', (remark, words) => expect(planNote([remark])).toBe(words));

test('several stand one behind the other, and none is blank', () => {
  expect(headNote([{ remark: 'switch off', pops: 2 }, { remark: 'too many pops', pops: 2, allowed: 1 }])).toBe(
    'switch off after 2 pops; 2 pops in a row, where 1 is allowed',
  ); // prettier-ignore
  expect(planNote([{ remark: 'all off' }, { remark: 'too many pops', heads: [0, 1, 2] }])).toBe(
    'all heads are off; more pops in a row than allowed: heads 1, 2 and 3',
  );
  expect([headNote([]), planNote([])]).toEqual(['', '']);
});
