import { expect, it } from 'vitest';
import { LIGHTS, LIGHTS_AND_ONE } from './lightsOnSet';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook(
  (fresh) => {
    sheet = fresh;
  },
  { height: 1900 },
);

const formula = async (a1: string) => (await sheet.cell(a1)).formula;

it('rows that come in from the menu in a table push whole rows down', async () => {
  await sheet.insert('Lights on set');
  const { x, y } = await sheet.page.evaluate(() => window.sweeptable.place('A35'));
  await sheet.click('A35');
  await sheet.page.mouse.click(x, y, { button: 'right' });
  await sheet.page.getByText('Insert', { exact: true }).last().hover();
  await sheet.page.getByText('A row of the table', { exact: true }).first().click();
  await expect.poll(() => sheet.tables()).toHaveProperty('Lights', LIGHTS_AND_ONE);
  await sheet.shows('A39', 'Room, 1/2 s');
  expect(await formula('Q35')).toBe(await formula('Q36'));
  await sheet.undo('A3');
  await expect.poll(() => sheet.tables()).toHaveProperty('Lights', LIGHTS);
});

it('the foot of a table leaves the cells below a table to who writes there, and shows all buttons under the pointer', async () => {
  await sheet.insert('Lights on set');
  const sort = sheet.page.getByRole('button', { name: 'Sort Lights…' });
  // the second row below the table, where its foot is
  await sheet.click('A33');
  await sheet.click('A40');
  expect(await sort.isVisible()).toBe(false);
  expect(await sheet.tables()).toHaveProperty('Lights', LIGHTS);
  await sheet.page.getByRole('button', { name: 'Add a row to Lights' }).hover();
  await expect.poll(() => sort.isVisible()).toBe(true);
  await sheet.hover('D20');
  await expect.poll(() => sort.isVisible()).toBe(false);
});

it('a cell of a table can be copied and pasted in part, and emptied, from its menu', async () => {
  const { mouse } = sheet.page;
  const menuAt = async (a1: string, ...entries: string[]): Promise<void> => {
    await sheet.click(a1);
    const { x, y } = await sheet.page.evaluate((at) => window.sweeptable.place(at), a1);
    await mouse.click(x, y, { button: 'right' });
    for (const entry of entries.slice(0, -1)) await sheet.seen(entry).last().hover();
    await sheet
      .seen(entries.at(-1) ?? '')
      .last()
      .click();
  };
  await sheet.insert('Lights on set');
  await sheet.copy('D34', 'E34');
  await menuAt('D35', 'Paste only', 'Values');
  // as at the second light
  await sheet.shows('E35', (await sheet.values('E34'))[0]);
  expect(await sheet.values('D35')).toEqual(await sheet.values('D34'));
  await menuAt('Q35', 'Copy as', 'Formulas alone');
  await menuAt('D35', 'Clear', 'What they hold');
  await sheet.shows('D35', null);
  await sheet.undo('D36');
  await expect.poll(() => sheet.values('D35')).toEqual(await sheet.values('D34'));
});
