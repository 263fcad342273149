import { expect, it } from 'vitest';
import { type Axis, partsOf } from '../../../src/hosts/workbench/grid/panes';

/** Under a heading of 20 px the first 60 px of the sheet stay; the others are scrolled by 30 px. */
const AXIS: Axis = {
  heading: 20,
  zoom: 1,
  frozen: { from: 0, to: 60 },
  scroll: 30,
  edge: 80,
  end: 500,
};

it('sees what stays where it is, and what is scrolled behind it', () => {
  expect(partsOf(10, 50, AXIS)).toEqual([{ at: 30, cutBefore: 0, cutAfter: 0 }]);
  // 100 + 20 - 30
  expect(partsOf(100, 200, AXIS)).toEqual([{ at: 90, cutBefore: 0, cutAfter: 0 }]);
  // 70 + 20 - 30 = 60, 20 px of it behind the 80 where they begin
  expect(partsOf(70, 170, AXIS)).toEqual([{ at: 60, cutBefore: 20, cutAfter: 0 }]);
  expect(partsOf(60, 85, AXIS)).toEqual([]);
  expect(partsOf(600, 700, AXIS)).toEqual([]);
});

it('sees in two parts what reaches over the line', () => {
  // its first 40 px stay, from 40 to 80; of the other 100 px those from 90 to 160 of the sheet are below
  expect(partsOf(20, 160, AXIS)).toEqual([
    { at: 40, cutBefore: 0, cutAfter: 100 },
    { at: 10, cutBefore: 70, cutAfter: 0 },
  ]);
  // scrolled until the rest is behind the line
  expect(partsOf(20, 80, { ...AXIS, scroll: 25 })).toEqual([{ at: 40, cutBefore: 0, cutAfter: 20 }]);
});

it('keeps to the zoom, and to lines that stay from further down the sheet', () => {
  const zoomed = { ...AXIS, zoom: 2, edge: 160 };
  expect(partsOf(20, 160, zoomed)).toEqual([
    { at: 80, cutBefore: 0, cutAfter: 200 },
    { at: 20, cutBefore: 140, cutAfter: 0 },
  ]);
  // the first 40 px of the sheet are out of sight above those that stay
  const further: Axis = { ...AXIS, frozen: { from: 40, to: 60 }, edge: 40 };
  expect(partsOf(20, 160, further)[0]).toEqual({ at: 0, cutBefore: 20, cutAfter: 100 });
});

it('sees one part where nothing stays', () => {
  const axis: Axis = { ...AXIS, frozen: undefined, edge: 20 };
  expect(partsOf(20, 160, axis)).toEqual([{ at: 10, cutBefore: 10, cutAfter: 0 }]);
});
