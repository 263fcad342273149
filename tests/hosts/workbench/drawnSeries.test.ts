import { expect, test } from 'vitest';
import { figureSteps } from '../../../src/hosts/workbench/charts/drawing/figureSteps';
import { isDrawn } from '../../../src/hosts/workbench/charts/liveChart';

test('between two pops there is no mark along the axis', () => {
  expect(figureSteps([1, 2, 3]).incrs?.slice(0, 6)).toEqual([1, 2, 5, 10, 20, 50]);
  expect(figureSteps([0.5, Math.PI])).toEqual({});
});

test('marks along the axis are no closer than the figures of its numbers', () => {
  expect(figureSteps([1.31, 1.3, 2]).incrs?.slice(0, 4)).toEqual([0.01, 0.02, 0.05, 0.1]);
  expect(figureSteps([0.5, 1, 1.5]).incrs?.slice(0, 4)).toEqual([0.1, 0.2, 0.5, 1]);
});

test('a series without a number is not named among those that are drawn', () => {
  const series = (values: readonly (number | null)[]) => ({ name: 'Light 6', format: '0', values });
  expect([isDrawn(series([null, null])), isDrawn(series([null, 8]))]).toEqual([false, true]);
});
