import { expect, test } from 'vitest';
import { rowOf } from '../../src/catalogue';
import { exactly, exponential, type Shape, twoTimes } from '../exposure/trace/shapes';

/** Functions whose answer may be worth little, and what their help has to point to. */
test.each([
  ['LIGHTMINUS', /LIGHTMINUSRANGE/],
  ['LIGHTUNMIX', /second column: ±/],
  ['LIGHTEVENNESS', /tenth of a stop steps by 6\.7 %/],
  ['FLASHLEVEL', /nearer to 2\.6 times its t0\.5 than to the 3\.32 times/],
  ['FLASHSHARE', /nearer to 2\.6 times its t0\.5 than to the 3\.32 times/],
  ['FLASHCLIP', /nearer to 2\.6 times its t0\.5 than to the 3\.32 times/],
  ['SHUTTERFORFLASH', /nearer to 2\.6 times its t0\.5 than to the 3\.32 times/],
  ['TRACETIME', /TRACENOTE says what is doubtful.*TRACENOTE says from which level on/],
  ['TRACEINSIDE', /TRACENOTE says what is doubtful/],
  ['TRACETAIL', /TRACENOTE says what is doubtful/],
  ['TRACETABLE', /TRACENOTE says what is doubtful.*TRACENOTE says from which level on/],
  ['TRACESHUTTER', /TRACENOTE says what is doubtful.*TRACENOTE says how much/],
  ['TRACECLIP', /TRACENOTE says what is doubtful.*TRACENOTE says how much/],
])('the help of %s says its doubt', (id, doubt) => expect(rowOf(id)?.notes).toMatch(doubt));

test('t0.1 is 3.32 times t0.5 for a decay alone, nearer to 2.6 with a rise, 2 where it rises nearly as slowly as it falls', () => {
  const ratio = (shape: Shape): number => exactly(shape, 0.1).width / exactly(shape, 0.5).width;
  expect(ratio(exponential(1e-3))).toBeCloseTo(Math.log(10) / Math.log(2), 9);
  expect(Math.abs(ratio(twoTimes(50e-6, 400e-6)) - 2.6)).toBeLessThan(0.2);
  expect(ratio(twoTimes(399e-6, 400e-6))).toBeCloseTo(2, 0);
});

test('a tenth of a stop is 6.7 % of the light: 1 − 2^(−1/10), worked by hand', () =>
  expect(100 * (1 - 2 ** -0.1)).toBeCloseTo(6.7, 1));
