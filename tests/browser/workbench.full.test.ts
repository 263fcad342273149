import { describe, expect, it } from 'vitest';
import { CATALOGUE, NAMESPACE } from '../../src/catalogue';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

it('after the dot every function is listed', async () => {
  await sheet.click('H20');
  await sheet.page.keyboard.type('=SWEEP.');
  const offered = sheet.page.locator('[data-u-comp="sheets-formula-editor"] li');
  await offered.first().waitFor();
  const names = await offered.locator('> span:first-child').allInnerTexts();
  expect(names).toEqual(CATALOGUE.map(({ id }) => `${NAMESPACE}.${id}`));
  await sheet.page.keyboard.press('Escape');
});

// For every commit the engine has these by itself: tests/engine/functions.test.ts.
describe('mistakes', () => {
  it('in the number of arguments have a sentence', async () => {
    await sheet.enterDown('H5', [
      '=SWEEP.STOPDIFF(8)',
      '=SWEEP.STOPDIFF(8,11,"aperture",4)',
      '=SWEEP.STOPDIFF()',
    ]);
    await sheet.refuses('H5', '#VALUE!', /to/);
    await sheet.refuses('H6', '#VALUE!', /2 or 3 values, not 4/);
    await sheet.refuses('H7', '#VALUE!', /from/);
  });

  it('leave the sentence behind when the cell is typed over', async () => {
    await sheet.enter('H9', '=SWEEP.STOPDIFF(8,"x")');
    await sheet.refuses('H9', '#VALUE!', /x/);
    await sheet.enter('H9', '=1/0');
    await sheet.shows('H9', '#DIV/0!');
    expect((await sheet.cell('H9')).message).toBeUndefined();
    await sheet.enter('H9', '=SWEEP.STOPDIFF(8,11)');
    await sheet.showsNear('H9', 1);
  });
});

describe('a column of readings', () => {
  it('says #SPILL! rather than overwrite', async () => {
    await sheet.enterDown('G5', ['16', '11', '8']);
    await sheet.enter('H6', 'kept');
    await sheet.enter('H5', '=SWEEP.LIGHTSHARE(G5:G7)');
    await sheet.shows('H5', '#SPILL!');
    await sheet.shows('H6', 'kept');
  });
});
