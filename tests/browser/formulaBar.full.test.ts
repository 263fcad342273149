import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

/** Chooses a cell, and clicks into the formula bar. */
async function clickBar(cell: string): Promise<void> {
  await sheet.click(cell);
  await sheet.page.locator('[data-u-comp="formula-bar"] canvas').first().click();
  await expect
    .poll(() => sheet.page.evaluate(() => document.activeElement?.id))
    .toBe('__editor___INTERNAL_EDITOR__DOCS_FORMULA_BAR');
}

it('what is typed into the formula bar is in the cell', async () => {
  const { keyboard } = sheet.page;
  await clickBar('G6');
  await keyboard.type('=sweep.stopdiff(8,11)');
  await keyboard.press('Enter');
  await sheet.shows('G6', 1);
  expect((await sheet.cell('G6')).formula).toBe('=SWEEP.STOPDIFF(8,11)');

  await clickBar('B6');
  await keyboard.press('End');
  await keyboard.type('+0.3');
  await keyboard.press('Enter');
  await sheet.shows('B6', 'f/45+0.3');
});
