import { expect, it } from 'vitest';
import { allInOneWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
allInOneWorkbook((fresh) => {
  sheet = fresh;
});

/** In Pops build: what is lost in filters, and the shutter time of a metering; both hold texts, so that 1/60 is no date. */
const [FILTERS, TIME] = ['B9', 'B13'];
/** Seconds of a recycling, as the demo job has them. */
const RECYCLE = { cell: 'B10', seconds: 1.2 };

const held = async (a1: string) => {
  const { formula, value, text } = await sheet.cell(a1);
  return { formula, value, text };
};

it('a formula that is typed into a cell of texts calculates there, and is a number to what reads it', async () => {
  await sheet.enter('H10', `=SUM(${TIME},H11)`);
  await sheet.enter(TIME, `=${RECYCLE.cell}`);
  await sheet.shows(TIME, RECYCLE.seconds);
  expect((await held(TIME)).formula).toBe(`=${RECYCLE.cell}`);
  await sheet.shows('H10', RECYCLE.seconds);
  // when the cell itself is not calculated anew
  await sheet.enter('H11', '3');
  await sheet.showsNear('H10', RECYCLE.seconds + 3);
  await sheet.enter(RECYCLE.cell, '2');
  await sheet.shows(TIME, 2);
  await sheet.enter(RECYCLE.cell, String(RECYCLE.seconds));

  // the brackets at its end may be left out, as anywhere
  await sheet.enter(FILTERS, '=MAX(1/3,1/4');
  await sheet.showsNear(FILTERS, 1 / 3);
  expect((await held(FILTERS)).formula).toBe('=MAX(1/3,1/4)');
});

it('a fraction is none the less kept as it is typed, before and behind a formula', async () => {
  await sheet.enter(TIME, '=1/60');
  await sheet.showsNear(TIME, 1 / 60);
  await sheet.enter(TIME, '1/60');
  await sheet.shows(TIME, '1/60');
  expect(await held(TIME)).toEqual({ formula: '', value: '1/60', text: '1/60' });
});

it("a text behind ' stays one, and a cell that is opened and left stays as it was", async () => {
  const { keyboard } = sheet.page;
  for (const [typed, formula, value] of [
    ["'=8", '', '=8'],
    ["'1/60", '', '1/60'],
    ['=8', '=8', 8],
  ] as const) {
    await sheet.enter(TIME, typed);
    await sheet.shows(TIME, value);
    await sheet.click(TIME);
    await keyboard.press('F2');
    await keyboard.press('Enter');
    await expect.poll(() => sheet.page.evaluate(() => window.sweeptable.selected())).toBe('B14');
    // an answer is worked out anew
    await expect.poll(() => held(TIME)).toEqual({ formula, value, text: String(value) });
  }
});

it('a formula that is pasted there calculates too', async () => {
  await sheet.paste(TIME, `=${RECYCLE.cell}*2`);
  await sheet.shows(TIME, 2 * RECYCLE.seconds);
  await sheet.paste(TIME, '1/60');
  await sheet.shows(TIME, '1/60');
  const before = await sheet.values(FILTERS);
  await sheet.paste(FILTERS, '=1/2\n=1+1');
  await sheet.shows(FILTERS, 1 / 2);
  await sheet.undo('H20');
  await expect.poll(() => sheet.values(FILTERS)).toEqual(before);
});

it.each([
  ['Depth options', 'B6', '=1/4', 0.25],
  ['Flash trace', 'B8', '=1/2000', 1 / 2000],
])('so it is in %s', async (template, a1, typed, value) => {
  await sheet.startOver();
  await sheet.insert(template);
  await sheet.enter(a1, typed);
  await sheet.showsNear(a1, value);
  await sheet.startOver();
});
