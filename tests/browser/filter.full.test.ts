import { expect, it } from 'vitest';
import { downloaded } from './downloaded';
import { filterDialog } from './filterDialog';
import { eachItsWorkbook } from './onePage';
import { sortDialog } from './sortDialog';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook(
  (fresh) => {
    sheet = fresh;
  },
  { height: 1900 },
);

const button = (name: string) => sheet.page.getByRole('button', { name, exact: true });
const said = () => sheet.notice.innerText();

it('what a filter hides stays hidden after a reload, a sort, a new row, a paste, and in a file', async () => {
  await sheet.insert('Lights on set');
  await expect.poll(() => sheet.texts('O33')).toEqual([expect.stringMatching(/^\d.*%$/)]);
  // the heads of 400 Ws stand in rows 35 and 36
  await button('Add a row to Lights').hover();
  await button('Filter Lights…').click();
  await filterDialog(sheet, 'Head', 'Alder 600', 'Birch 1200', 'Cedar 2400');
  await expect.poll(said).toContain('3 rows of Lights are hidden.');
  const hidden = await sheet.texts('A35', 'A36', 'A38', 'D35', 'D36', 'D38');

  await sheet.reload();
  await button('Lights: 3 rows are hidden: show').waitFor();

  await button('Lights: 3 rows are hidden: show').hover();
  await button('Sort Lights…').click();
  await sortDialog(sheet, 'Head', 'Largest first, Z to A');
  await expect
    .poll(() => sheet.texts('A33', 'A34', 'A37'))
    .toEqual(['Cedar 2400', 'Birch 1200', 'Alder 600']);
  expect(await sheet.texts('A35', 'A36', 'A38', 'D35', 'D36', 'D38')).toEqual(hidden);

  // Figures into the rows in view, and into none between them.
  await sheet.paste('E34', '1\n2');
  await expect.poll(() => sheet.values('E34', 'E37')).toEqual([1, 2]);
  expect(await sheet.texts('A35', 'A36', 'A38', 'D35', 'D36', 'D38')).toEqual(hidden);

  await button('Lights: 3 rows are hidden: show').hover();
  await button('Add a row to Lights').click();
  await expect.poll(async () => (await sheet.tables())['Lights']).toMatch(/^A32:[A-Z]+39$/);
  await button('Lights: 3 rows are hidden: show').waitFor();

  const [download] = await Promise.all([sheet.page.waitForEvent('download'), sheet.command('Save as .xlsx')]);
  const file = { name: 'book.xlsx', mimeType: '', buffer: await downloaded(download) };
  await sheet.startOver();
  const [chooser] = await Promise.all([sheet.page.waitForEvent('filechooser'), sheet.command('Open .xlsx')]);
  await chooser.setFiles(file);
  await sheet.dialog.getByRole('button', { name: 'Open', exact: true }).click();
  await expect.poll(() => sheet.sheets()).toContain('Lights on set');
  await sheet.sheet('Lights on set');
  await button('Lights: 3 rows are hidden: show').waitFor();
});
