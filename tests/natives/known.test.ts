import { describe, expect, test } from 'vitest';
import { excuseFor, KNOWN } from './known';

describe('differences that are known', () => {
  test.each(KNOWN.map((known) => [known.name, known] as const))('%s', (name, { excused, never }) => {
    expect(excuseFor(excused)?.name).toBe(name);
    expect(excuseFor(never)).toBeUndefined();
  });

  test('a wrong sum is none', () => {
    expect(excuseFor({ formula: '=SUM(E1:E6)', ours: 52.6, theirs: 52.600001 })).toBeUndefined();
  });
});
