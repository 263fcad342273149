import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

it('leads a newcomer from one button to a card, and finds our functions', async () => {
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

  await sheet.sheet('Pops build');
  // a name without what ours begin with
  await sheet.enter('H10', '=STOPDIFF(8,11)');
  await sheet.shows('H10', '#NAME?');
  await sheet.hover('H10');
  await page.locator('.tip').filter({ hasText: 'Did you mean SWEEP.STOPDIFF' }).waitFor();
});
