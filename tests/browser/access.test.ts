import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import { axeFaults } from './paneChecks';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

/**
 * What the grid breaks and no attribute of ours mends: the menu of all sheets is opened by an element around a button, which says
 * of itself what only the button may.
 */
const OF_THE_GRID = ['aria-allowed-attr'];

it('the page as a whole has only the faults of the grid', async () => {
  const rules = (await axeFaults(sheet.page)).map(([rule]) => rule);
  expect(rules.sort()).toEqual(OF_THE_GRID);
});

it('dialogs take the keyboard, and give it back', async () => {
  await sheet.page.getByRole('button', { name: 'Start over' }).focus();
  await sheet.page.keyboard.press('Enter');
  await expect.poll(() => sheet.dialog.locator(':focus').count()).toBe(1);
  await sheet.page.keyboard.press('Escape');
  await expect.poll(() => sheet.dialog.count()).toBe(0);
  expect(await sheet.page.locator(':focus').innerText()).toBe('Start over');
  expect(await sheet.sheets()).toEqual(['Pops build']);
});
