import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

it('leads a newcomer from one button to a card, keeps what a cell refuses, and finds our functions', async () => {
  const { page } = sheet;
  await sheet.pane.getByRole('button', { name: 'New job', exact: true }).click();
  await expect
    .poll(() => sheet.pane.locator('.pane > .status').innerText())
    .toContain('First type your heads over those in “Heads”');
  expect(await sheet.sheets()).toEqual(['Pops build', 'Heads', 'Pops plan', 'Set card']);
  expect(await page.evaluate(() => window.sweeptable.inView())).toBe('Heads');

  // one step for undo
  await page.keyboard.press('Control+z');
  await expect.poll(() => sheet.sheets()).toEqual(['Pops build']);
  await page.keyboard.press('Control+y');
  await expect.poll(() => sheet.sheets()).toHaveLength(4);

  // the reason stands at the cell, and what was typed is still there to be mended
  await sheet.sheet('Pops build');
  await sheet.enter('B7', '-5');
  const tip = page.locator('.tip').filter({ hasText: 'A length in millimetres, above 0.' });
  await tip.waitFor();
  expect(await page.getByRole('dialog').filter({ visible: true }).count()).toBe(0);
  await page.keyboard.press('Backspace');
  await page.keyboard.press('Backspace');
  await page.keyboard.type('180');
  await page.keyboard.press('Enter');
  await sheet.shows('B7', 180);
  expect(await tip.count()).toBe(0);

  // a name without what ours begin with
  await sheet.enter('F30', '=STOPDIFF(8,11)');
  await sheet.shows('F30', '#NAME?');
  await sheet.hover('F30');
  await page.locator('.tip').filter({ hasText: 'Did you mean SWEEP.STOPDIFF' }).waitFor();
});
