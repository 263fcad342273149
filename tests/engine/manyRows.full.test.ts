import { expect, test } from 'vitest';
import { answers } from './book';

test('100,000 rows are calculated in one call', async () => {
  const { book, answer } = await answers(['=SWEEP.STOPDIFF(1,2^(SEQUENCE(100000)/1000),"energy")']);
  const rows = answer(0) as number[][];
  expect(rows.length).toBe(100_000);
  // 2^(n/1000) lies n/1000 stops of energy above 1
  for (const n of [1, 1234, 54_321, 100_000]) expect(rows[n - 1]?.[0]).toBeCloseTo(n / 1000, 11);
  expect(rows.flat().every(Number.isFinite)).toBe(true);
  book.dispose();
});
