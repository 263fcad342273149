import { expect, it } from 'vitest';
import { allInOneWorkbook } from './onePage';
import { leave, names, typed } from './suggested';
import type { Workbench } from './workbench';

let sheet: Workbench;
allInOneWorkbook((fresh) => {
  sheet = fresh;
});

it('a formula reads text as a meter or a shutter shows it, and names in small letters', async () => {
  await sheet.enterDown('H9', [
    '=SWEEP.STOPDIFF("f/8","f/11")',
    '=SWEEP.STOPDIFF("1/125","1/60","time")',
    '=SWEEP.STOPTEXT(12.55)',
    '=sweep.stopdiff(8,16)',
  ]);
  await sheet.showsNear('H9', 1);
  await sheet.showsNear('H10', 1);
  await sheet.shows('H11', 'f/11 +0.3');
  await sheet.showsNear('H12', 2);
});

it('mistakes of a fraction that became a date, or a ratio that became a time of day, are named', async () => {
  await sheet.enterDown('G12', ['1/4', '3:10']);
  await sheet.enterDown('H12', ['=SWEEP.EXPOSUREVALUE(8,G12)', '=SWEEP.MAGNIFICATIONLOSS(G13)']);
  await sheet.refuses('H12', '#VALUE!', /looks like a date/);
  await sheet.refuses('H13', '#VALUE!', /looks like a clock time/);
});

it('there is no mistake where a shutter time is no date', async () => {
  await sheet.enterDown('G16', ['1/60', '1/45']);
  await sheet.enterDown('H16', ['=SWEEP.EXPOSUREVALUE(8,G16)', '=SWEEP.EXPOSUREVALUE(8,G17)']);
  // By definition: f/8 is 6, and the marks 1/60 and 1/45 stand for 2^-6 s and 2^-5.5 s.
  await sheet.showsNear('H16', 12);
  await sheet.showsNear('H17', 11.5);
});

it('what is offered is a plain name first where it stands there whole', async () => {
  const offered = await names(await typed(sheet, 'H21', '=SUM'));
  expect(offered[0]).toBe('SUM');
  expect(offered).toContain('SWEEP.LIGHTSUM');
  await leave(sheet);
});

it('a function that this grid does not calculate is named by its cell', async () => {
  await sheet.enter('H22', '=REGEXTEST(A1,"a")');
  await sheet.refuses('H22', '#NAME?', /^This grid has no function REGEXTEST\./);
});
