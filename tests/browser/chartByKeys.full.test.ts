import { expect, it } from 'vitest';
import { covers } from './chartsOnSheet';
import { TALL } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import { status, tab } from './paneChecks';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
}, TALL);

const TITLE = 'Share of the light at the subject';
const press = (...keys: string[]) =>
  keys.reduce((before, key) => before.then(() => sheet.page.keyboard.press(key)), Promise.resolve());
const focused = () => sheet.page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');

it('a chart is moved and sized by keys, which it names, and goes back to the cells', async () => {
  await sheet.insert('Lights on set');
  await sheet.click('B5');
  await press('Control+Alt+5');
  expect(await focused()).toBe(
    `Chart: ${TITLE}. Arrow keys move it, Shift and an arrow key size it, Escape goes back to the cells.`,
  );
  await press('ArrowUp', 'ArrowLeft', 'Shift+ArrowDown', 'Shift+ArrowRight');
  await covers(sheet, 'H3', 'P14');
  expect(await sheet.page.locator('.charts [role=status]').innerText()).toBe('From H3 to P14');
  // Keys of the cells do nothing here.
  await press('8', 'Delete', 'Enter');
  await press('Control+z');
  await covers(sheet, 'H3', 'O14');
  await press('Escape', '3', '2', 'Enter');
  await sheet.shows('B5', 32);
  expect(await sheet.page.evaluate(() => window.sweeptable.selected())).toBe('B6');
});

it('a chart that was moved counts as changed where its sheet is to be taken back', async () => {
  await sheet.insert('Lights on set');
  await press('Control+Alt+5', 'ArrowDown', 'Escape');
  await covers(sheet, 'I5', 'P15');
  await tab(sheet.page, 'Sheets').click();
  await sheet.pane.getByRole('button', { name: 'Take back' }).click();
  await expect.poll(() => status(sheet.page).innerText()).toMatch('has changed since it came in');
});
