import { describe, expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import { axeFaults, LOOKS } from './paneChecks';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

/** Faults in the grid's own parts, which are not ours to mend: the rules it breaks. */
const OF_THE_GRID = [
  'aria-allowed-attr',
  'aria-command-name',
  'aria-roles',
  'button-name',
  'label',
  'landmark-unique',
  'tabindex',
];

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

describe('the keyboard is the grid’s', () => {
  const type = async (text: string): Promise<void> => {
    await sheet.page.keyboard.type(text);
    await sheet.page.keyboard.press('Enter');
  };

  it('at once after starting over, and after taking that back', async () => {
    await sheet.enter('B6', '22');
    await sheet.command('Start over');
    await sheet.dialog.getByRole('button', { name: 'Start over' }).click();
    await expect.poll(() => sheet.notice.innerText()).toBe('This is a new workbook.');
    await type('11');
    await sheet.shows('B5', 11);
    await sheet.page.getByRole('button', { name: 'Take back' }).click();
    await sheet.shows('B6', 22);
    const at = await sheet.page.evaluate(() => window.sweeptable.selected());
    await type('32');
    await sheet.shows(at, 32);
    expect(await sheet.dialog.count()).toBe(0);
  });

  it('after a dialog behind which the page was drawn in other colours', async () => {
    await sheet.command('Start over');
    await sheet.page.emulateMedia(LOOKS.forced);
    await sheet.page.evaluate(
      () => new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn))),
    );
    await sheet.page.keyboard.press('Escape');
    await expect.poll(() => sheet.dialog.count()).toBe(0);
    await sheet.enter('H5', '22');
    await sheet.shows('H5', 22);
  });
});
