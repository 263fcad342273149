import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import { leave, names } from './suggested';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

/** Chooses a cell, and clicks into the formula bar. */
async function clickBar(cell: string): Promise<void> {
  await sheet.click(cell);
  await clickIntoBar();
}

async function clickIntoBar(): Promise<void> {
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

it('what is typed after the bar is left goes into the next cells', async () => {
  const { keyboard } = sheet.page;
  await clickBar('G12');
  for (const words of ['12', '34', '56']) {
    await keyboard.type(words);
    await keyboard.press('Enter');
  }
  await sheet.shows('G14', 56);
  expect(await sheet.values('G12', 'G13')).toEqual([12, 34]);
});

it('what is begun in a cell goes on in the formula bar, and back in the cell', async () => {
  const { keyboard, mouse } = sheet.page;
  for (const [cell, begun, more, held] of [
    ['G7', '12', '5', 125],
    ['G8', '=1+', '2', 3],
  ] as const) {
    await sheet.click(cell);
    await keyboard.type(begun);
    await clickIntoBar();
    await keyboard.type(more);
    await keyboard.press('Enter');
    await sheet.shows(cell, held);
  }
  await clickBar('G9');
  await keyboard.type('12');
  const { x, y } = await sheet.page.evaluate(() => window.sweeptable.place('G9'));
  await mouse.click(x, y);
  await keyboard.press('End');
  await keyboard.type('5');
  await keyboard.press('Enter');
  await sheet.shows('G9', 125);
});

it('offers functions in the formula bar as in a cell, and names their arguments', async () => {
  const { keyboard } = sheet.page;
  const entries = sheet.page.locator('[data-u-comp="sheets-formula-editor"] li');
  for (const [typed, first] of [
    ['=SWEEP.POPS', 'SWEEP.POPSFORTARGET'],
    ['=popsfort', 'SWEEP.POPSFORTARGET'],
  ] as const) {
    await clickBar('G10');
    await keyboard.type(typed);
    await expect.poll(async () => (await names(entries))[0]).toBe(first);
    await leave(sheet);
  }
  await clickBar('G10');
  await keyboard.type('=popsfort');
  await entries.first().waitFor();
  await keyboard.press('Enter');
  const help = sheet.page.locator('[data-u-comp="rect-popup"]', { hasText: 'SWEEP.POPSFORTARGET(' });
  await help.first().waitFor();
  await keyboard.type('16,45)');
  await keyboard.press('Enter');
  await expect.poll(async () => (await sheet.cell('G10')).formula).toBe('=SWEEP.POPSFORTARGET(16,45)');
  await clickBar('G11');
  await keyboard.type('=STOPDIFF(8,11)');
  await keyboard.press('Enter');
  await sheet.shows('G11', '#NAME?');
  await sheet.hover('G11');
  await expect.poll(() => sheet.page.locator('.tip').innerText()).toContain('SWEEP.STOPDIFF');
});
