import { expect, test } from 'vitest';
import { seriesLook } from '../../src/book/seriesLook';

const looks = (count: number): string[] =>
  Array.from({ length: count }, (_, i) => {
    const { ink, dash } = seriesLook({}, i, 12);
    return `${ink} ${dash}`;
  });

test('of sixteen lines no two are alike: four inks, four dashes', () =>
  expect(new Set(looks(16)).size).toBe(16));

test('the first of each ink have a dash each, so that they are told apart in grey', () => {
  const dashes = Array.from({ length: 4 }, (_, i) => seriesLook({}, i, 12).dash);
  expect(new Set(dashes).size).toBe(4);
});
