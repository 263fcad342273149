import { describe, expect, test } from 'vitest';
import { isCellError } from '../../src/formula/errors';
import { TEMPLATES } from '../../src/sheets/templates';
import { calculated, templateOf } from './support';

type Worked = readonly (readonly [cell: string, value: number, working: string])[];

/**
 * Worked by hand from powers of 2, without any function of ours. A meter's f/16 and 3 tenths lets in 2^8.3 parts of
 * light less than f/1 (f-number squared), f/22 on the ring is 2^4.5.
 */
const LIGHTS_ON_SET: Worked = [
  ['B9', 31.748021039364, '2^4.5 × 150/120 × 2^(1/6)'],
  ['J14', 9.849155306759, '2^(6.6/2)'],
  ['K13', 315.1729698163, '2^8.3'],
  ['K15', 128, '2^7'],
  ['L13', 0.3965862291, '315.173 of 315.173 + 97.006 + 128 + 181.019 + 73.517 = 794.715'],
  ['L17', 0.0925070089, '73.517 of 794.715'],
  ['M14', -1.7, '6.6 − 8.3'],
  ['M16', -0.8, '7.5 − 8.3'],
  ['O13', 20.0792115375, '31.748 × √(1 / (1 + 1/4 + 1/2 + 1/2 + 1/4))'],
  ['O14', 10.0396057687, '20.079 × √(1/4)'],
  ['P13', 395.8523732319, '300 × 20.079² / 315.173 = 383.77 Ws is 6.45 tenths below 600: 600 × 2^−0.6'],
  ['P14', 424.2640687119, '415.62 Ws is 15.3 tenths below 1200: 1200 × 2^−1.5'],
  ['P16', 689.2190129982, '668.17 Ws is 18.4 tenths below 2400: 2400 × 2^−1.8'],
  ['Q13', 20.3929700371, '17.753 × √(395.85 / 300)'],
  ['R13', 0.0447385718, '0.64474 − 0.6'],
  ['R14', 0.0297010725, '1.52970 − 1.5'],
  ['B21', 28.1906874832, '√794.715'],
  ['B22', 32.2273953804, '√(20.393² + 10.143² + 14.420² + 14.420² + 10.196²)'],
  ['B23', 4.2490095854, 'key and fill against fill: 1 + 2^1.7'],
  ['B24', 315.1729698163, 'the only key'],
  ['B25', 97.0058602567, 'the only fill: 2^6.6'],
];

describe.each([['lights-on-set', LIGHTS_ON_SET]] as const)('the demo job of %s', (id, worked) => {
  test('gives what is worked out by hand', async () => {
    const at = (await calculated(templateOf(id))).at;
    for (const [cell, value, working] of worked) {
      const found = at(cell);
      expect(typeof found, `${cell}: ${working}`).toBe('number');
      expect((found as number) / value, `${cell}: ${working}`).toBeCloseTo(1, 8);
    }
  });
});

describe.each(TEMPLATES.map((t) => [t.name, t] as const))('%s', (_, template) => {
  test.each([true, false])('holds no error (filled: %s)', async (filled) => {
    const { plan, values } = await calculated(template, filled);
    const formulas = plan.cells.filter(({ formula }) => formula !== undefined);
    const bad = formulas.filter(({ row, column }) => {
      const value = values(row, column);
      return value === null || isCellError(value);
    });
    expect(formulas.length).toBeGreaterThan(5);
    expect(bad).toEqual([]);
  });
});
