import { expect, it } from 'vitest';
import { summableUnits } from '../../../src/hosts/workbench/book/summable';

it.each([
  [['0.0" s"', '0" s"', '0.00 "s"']],
  [['General', '0', '#,##0.00']],
  [['0" Ws"']],
  [['0.0" stop";-0.0" stop"', '+0.0" stop"']],
  [[]],
])('adds up %j', (formats) => {
  expect(summableUnits(formats)).toBe(true);
});

it.each([
  [['"f/"0.0', '0.0" s"']],
  [['"f/"0.0', '"f/"0.#']],
  [['0" mm"', '0" s"']],
  [['General', '0" s"']],
  [['0%', '0']],
])('does not add up %j', (formats) => {
  expect(summableUnits(formats)).toBe(false);
});
