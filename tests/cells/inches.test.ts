import { expect, test } from 'vitest';
import { Q } from '../../src/catalogue/quantities';
import { readInches } from '../../src/cells/inches';

/** A foot is 0.3048 m and an inch 0.0254 m, by definition. */
test.each([
  [`5' 6"`, 5 * 0.3048 + 6 * 0.0254],
  ['5 ft 6 1/2 in', 5 * 0.3048 + 6.5 * 0.0254],
  [`5'11.5"`, 5 * 0.3048 + 11.5 * 0.0254],
  ['22 1/2 in', 22.5 * 0.0254],
  ['3/4 in', 0.75 * 0.0254],
  ['40 in', 40 * 0.0254],
])('%s are feet and inches', (text, metres) =>
  expect(readInches(text, Q.lightDistance)).toBeCloseTo(metres, 12),
);

test.each([
  [`5' 12"`, 'has too many inches: 12 inches make a foot'],
  ['5 ft 14 in', 'has too many inches: 12 inches make a foot'],
  ['1,200 in', 'can be read two ways: write 1200, or 1.2'],
])('%s is refused, and says why', (text, message) =>
  expect(readInches(text, Q.lightDistance)).toEqual({ fail: 'unreadable', message }),
);

test.each(['5 ft', '5.5 ft 6 in', '1/3 in', '6'])('%s is not of this form', (text) =>
  expect(readInches(text, Q.lightDistance)).toBeUndefined(),
);
