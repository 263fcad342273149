import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import { status } from './paneChecks';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook(
  (fresh) => {
    sheet = fresh;
  },
  { height: 1300 },
);

const said = () => expect.poll(() => status(sheet.page).innerText());
const notice = () => expect.poll(() => sheet.page.locator('#notice').innerText());
/** The most that the first light of the plan can do. */
const MOST = 'M65';
/** Looks for sheets to link, where the card may still be open. */
async function look(): Promise<void> {
  const button = sheet.pane.getByRole('button', { name: 'Look for sheets to link' });
  if (!(await button.isVisible())) await sheet.pane.getByText('Link sheets', { exact: true }).click();
  await button.click();
}
/** What is offered of one table or form. */
const join = (title: string) => sheet.pane.locator('section.join').filter({ hasText: title });
const formula = async (): Promise<string> => (await sheet.cell(MOST)).formula;

it('sheets that were inserted apart are joined, and keep what they looked up where the other is deleted', async () => {
  const { page, pane } = sheet;
  await sheet.insert('Pops plan');
  await sheet.insert('Heads');
  await said().toMatch('“Pops plan” could look things up in it: see Link sheets, below the list.');
  // the sheet begins at its first cell to type in, A44, scrolled into sight
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowRight');
  expect(await page.evaluate(() => window.sweeptable.selected())).toBe('C44');
  await page.keyboard.type('500');
  await page.keyboard.press('Enter');
  await look();
  await said().toMatch('“Pops plan”, “Pops build” could look something up elsewhere. Nothing is changed yet.');
  // what differs from the list is shown, and not taken unasked
  await pane.getByText('M65, Alder 600: 600 → 500').waitFor();
  const most = pane.getByRole('checkbox', { name: 'Most', exact: true });
  expect(await most.isChecked()).toBe(false);
  expect(await pane.getByRole('checkbox', { name: 'Least', exact: true }).isChecked()).toBe(true);
  await most.check();
  await sheet.sheet('Pops plan');
  expect([await formula(), (await sheet.cell(MOST)).value]).toEqual(['', 600]);
  await join('“The lights” on “Pops plan”').getByRole('button', { name: 'Look these up in Heads' }).click();
  await said().toMatch('“Pops plan” looks up Most, Least, Step');
  await sheet.shows(MOST, 500);
  await sheet.undo('A3');
  await sheet.shows(MOST, 600);
  expect(await formula()).toBe('');
  await page.keyboard.press('Control+y');
  await sheet.shows(MOST, 500);

  await page.locator('[data-u-comp="slide-tab-item"]').filter({ hasText: 'Heads' }).click({ button: 'right' });
  await sheet.seen('Delete').last().click();
  await page.getByRole('button', { name: /OK|Confirm/ }).last().click();
  await notice().toMatch('“Heads” is gone. “Pops plan” looked things up in it: what it said last stands there now as if typed.');
  await sheet.sheet('Pops plan');
  await sheet.shows(MOST, 500);
  expect(await formula()).toBe('');
  await sheet.undo('A3');
  await expect.poll(() => sheet.sheets()).toContain('Heads');
  await sheet.sheet('Pops plan');
  await expect.poll(formula).toContain('INDEX(Models[Most]');
  await sheet.shows(MOST, 500);
}); // prettier-ignore

/** The workbench begins with Pops build. The recycle time of its slowest head, Cedar 2400, which is the third in Heads. */
const RECYCLE = 'B10';

it('cells outside tables are joined as well, and keep what they looked up', async () => {
  const { page } = sheet;
  await sheet.insert('Heads');
  await said().toMatch('“Pops build” could look things up in it: see Link sheets, below the list.');
  await look();
  await join('“On the set” on “Pops build”').getByRole('button', { name: 'Look these up in Heads' }).click();
  await said().toMatch('“Pops build” looks up Recycle time, slowest head, Flashes in a row allowed, Pause to cool after them in “Heads”.');
  await sheet.sheet('Pops build');
  const recycle = async (): Promise<string> => (await sheet.cell(RECYCLE)).formula;
  await expect.poll(recycle).toContain('INDEX(Models[Recycle],MATCH(IF(ISTEXT($B$18');
  await sheet.shows(RECYCLE, 1.2);
  await sheet.undo('A3');
  await expect.poll(recycle).toBe('');
  await page.keyboard.press('Control+y');
  await expect.poll(recycle).toContain('INDEX(Models[Recycle]');

  await page.locator('[data-u-comp="slide-tab-item"]').filter({ hasText: 'Heads' }).click({ button: 'right' });
  await sheet.seen('Delete').last().click();
  await page.getByRole('button', { name: /OK|Confirm/ }).last().click();
  await notice().toMatch('“Heads” is gone. “Pops build” looked things up in it: what it said last stands there now as if typed.');
  await expect.poll(recycle).toBe('');
  await sheet.shows(RECYCLE, 1.2);
}); // prettier-ignore
