import { expect, it } from 'vitest';
import { Q } from '../../../src/catalogue/quantities';
import { isLikeNumber, summableUnits } from '../../../src/hosts/workbench/book/summable';

it.each([
  [['0.0" s"', '0" s"', '0.00 "s"']],
  [['General', '0', '0']],
  [['General', '#,##0.00', '0.00']],
  [['0" Ws"']],
  [['0" mm"', '0.0" mm"']],
  [['0" m"']],
  [['+0" mired";-0" mired"']],
  [['0" h"']],
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
  [['0', '0.00']],
  [['0%', '0%']],
  [['0.0" %"', '0.0" %"']],
  [[Q.guide.shown.result, Q.guide.shown.result]],
  [['0" nm"', '0" nm"']],
  [['0.0":1"', '0.0":1"']],
  [['"ISO "0']],
  [['0" K"', '0" K"']],
  [['yyyy-mm-dd', 'yyyy-mm-dd']],
  [['hh:mm', 'hh:mm']],
])('does not add up %j', (formats) => {
  expect(summableUnits(formats)).toBe(false);
});

it.each(['1/60', 'f/11', 'F11', ' 400 Ws', '-1/3', '−1/3', 'ISO 200', 'ND8', 'x2.5', '.5', '30%'])(
  '%j is like a number',
  (text) => expect(isLikeNumber(text)).toBe(true),
);
it.each(['Alder 600', 'Softbox', 'f', 'none', '', '-', 'Notes 3'])('%j is not', (text) =>
  expect(isLikeNumber(text)).toBe(false),
);
