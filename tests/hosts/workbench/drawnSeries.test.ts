import { expect, test } from 'vitest';
import { wholeSteps } from '../../../src/hosts/workbench/charts/drawing/wholeSteps';
import { isDrawn } from '../../../src/hosts/workbench/charts/liveChart';

test('between two pops there is no mark along the axis', () => {
  expect(wholeSteps([1, 2, 3]).incrs?.slice(0, 6)).toEqual([1, 2, 5, 10, 20, 50]);
  expect(wholeSteps([0.5, 1, 1.5])).toEqual({});
});

test('a series without a number is not named among those that are drawn', () => {
  const series = (values: readonly (number | null)[]) => ({ name: 'Light 6', format: '0', values });
  expect([isDrawn(series([null, null])), isDrawn(series([null, 8]))]).toEqual([false, true]);
});
