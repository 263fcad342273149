import { expect, it } from 'vitest';
import { general } from '../../../src/hosts/workbench/cell/general';

it('rounds a number without a format to what other spreadsheets have room for', () => {
  // as LibreOffice prints them in columns that are wide enough
  expect(
    [0.474078394602, 10.9949306303, 2155.58896029832, 272.33913738492, 0.0746666666667, 1.04881, -2 / 3].map(
      general,
    ),
  ).toEqual(['0.474078395', '10.99493063', '2155.58896', '272.3391374', '0.074666667', '1.04881', '-0.666666667']); // prettier-ignore
  expect([0, 5, -12, 99_999_999_999, 0.1, 7.99999999999].map(general)).toEqual(['0', '5', '-12', '99999999999', '0.1', '8']); // prettier-ignore
});

it('rounds half of the last digit away from zero by the digits that are meant, not by their binary form', () => {
  // the first three as LibreOffice prints them; the last one, no half, is the square root of 5
  expect([0.2750070475, -2.4393397825, 2.2360679775, 2.23606797749979].map(general)).toEqual(['0.275007048', '-2.439339783', '2.236067978', '2.236067977']); // prettier-ignore
});

it('writes the smallest and the largest with a power of ten', () => {
  expect([0.0000270880361174, 0.00001, 1.5e11, -2e-12].map(general)).toEqual(['2.7088E-05', '0.00001', '1.5E+11', '-2E-12']); // prettier-ignore
});
