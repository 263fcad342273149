import { expect, test } from 'vitest';
import { rowOf } from '../../src/catalogue';

/** Functions whose answer may be worth little, and what their help has to point to. */
test.each([
  ['LIGHTMINUS', /LIGHTMINUSRANGE/],
  ['LIGHTUNMIX', /second column: ±/],
  ['LIGHTEVENNESS', /tenth of a stop steps by 6\.7 %/],
  ['TRACETIME', /TRACENOTE says what is doubtful.*TRACENOTE says from which level on/],
  ['TRACEINSIDE', /TRACENOTE says what is doubtful/],
  ['TRACETAIL', /TRACENOTE says what is doubtful/],
  ['TRACETABLE', /TRACENOTE says what is doubtful.*TRACENOTE says from which level on/],
  ['TRACESHUTTER', /TRACENOTE says what is doubtful.*TRACENOTE says how much/],
  ['TRACECLIP', /TRACENOTE says what is doubtful.*TRACENOTE says how much/],
])('the help of %s says its doubt', (id, doubt) => expect(rowOf(id)?.notes).toMatch(doubt));

test('a tenth of a stop is 6.7 % of the light: 1 − 2^(−1/10), worked by hand', () =>
  expect(100 * (1 - 2 ** -0.1)).toBeCloseTo(6.7, 1));
