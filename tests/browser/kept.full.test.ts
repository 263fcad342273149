import type { IWorkbookData } from '@univerjs/core';
import { describe, expect, it } from 'vitest';
import { readXlsx } from '../../src/xlsx/read';
import { cells, workbook, zip } from '../xlsx/parts';
import { downloaded } from './downloaded';
import { eachItsWorkbook } from './onePage';
import { isStored, put, storedWorkbook } from './stored';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

it('saves a workbook with names that no file may hold, and says what they are there', async () => {
  await sheet.insert('Lights on set');
  await sheet.enter('I18', '=1+1');
  await isStored(sheet.page, 'I18', 2);
  await sheet.page.evaluate(() => dispatchEvent(new Event('pagehide')));
  const snapshot = (await storedWorkbook(sheet.page)) as IWorkbookData;
  for (const [i, name] of ['History', 'f/8: a?'].entries())
    (snapshot.sheets[snapshot.sheetOrder[i] ?? ''] as { name: string }).name = name;
  await put(sheet.page, 'now', { format: 1, saved: Date.now() + 60_000, snapshot });
  await sheet.reload();
  expect(await sheet.sheets()).toEqual(['History', 'f/8: a?']);

  const [download] = await Promise.all([sheet.page.waitForEvent('download'), sheet.command('Save as .xlsx')]);
  await expect
    .poll(() => sheet.dialog.innerText())
    .toMatch(/“History” is “History 1”[^]*“f\/8: a\?” is “f-8- a-”/);
  await sheet.dialog.getByRole('button', { name: 'Close' }).click();
  const { book } = await readXlsx(await downloaded(download));
  expect(book.sheets.map(({ name }) => name)).toEqual(['History 1', 'f-8- a-']);
  expect(book.sheets[1]?.cells.find(({ formula }) => formula === '=1+1')?.value).toBe(2);
});

it('leads from the other name of its address to the workbook that is kept', async () => {
  await sheet.enter('B6', '22');
  await isStored(sheet.page, 'B6', 22);
  const home = sheet.page.url();
  await sheet.page.goto(home.replace('127.0.0.1', 'localhost'));
  await sheet.loaded();
  expect(sheet.page.url()).toBe(home);
  await sheet.shows('B6', 22);
  expect(sheet.complaints.outside.splice(0)).toEqual([home.replace('127.0.0.1', 'localhost')]);
});

describe('a file that is hard to show is open at once, with the work before it at hand', () => {
  const row = (text: string, style = '') =>
    cells(
      `<row r="1"><c r="A1" t="inlineStr"${style}><is><t>${text}</t></is></c></row><row r="2"><c r="A2"><f>1+1</f></c></row>`,
    );
  const list = '<dataValidations><dataValidation type="list" sqref="A1:XFD1048576"><formula1>"a,b"</formula1></dataValidation></dataValidations>'; // prettier-ignore
  const wrapped = {
    'xl/styles.xml': '<styleSheet><cellXfs><xf/><xf><alignment wrapText="1"/></xf></cellXfs></styleSheet>',
  };
  const withStyles = (sheetText: string) => {
    const parts = workbook(sheetText, wrapped);
    const relations = String(parts['xl/_rels/workbook.xml.rels']);
    const type = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles';
    return {
      ...parts,
      'xl/_rels/workbook.xml.rels': relations.replace(
        '</Relationships>',
        `<Relationship Id="y" Type="${type}" Target="styles.xml"/></Relationships>`,
      ),
    };
  };
  it.each([
      ['a text of a million letters', workbook(row('x'.repeat(1_000_000))), /cut/],
      ['a text as long as may be, in lines', withStyles(row('x'.repeat(32_767), ' s="1"')), undefined],
      ['cells merged over all of the sheet', workbook(`${row('a')}<mergeCells><mergeCell ref="A1:XFD1048576"/></mergeCells>`), /Merged/],
      ['a list for all of the sheet', workbook(row('a') + list), /Rules/],
      ['all columns frozen', workbook(`<sheetViews><sheetView><pane xSplit="16384" state="frozen"/></sheetView></sheetViews>${row('a')}`), undefined],
    ])('%s', async (_, parts, said) => {
      await sheet.enter('B6', '22');
      const [chooser] = await Promise.all([sheet.page.waitForEvent('filechooser'), sheet.command('Open .xlsx')]);
      await chooser.setFiles({ name: 'hard.xlsx', mimeType: '', buffer: Buffer.from(zip(parts)) });
      await sheet.dialog.getByRole('button', { name: 'Open', exact: true }).click();
      await expect.poll(() => sheet.notice.innerText()).toMatch(/is open/);
      if (said) {
        await expect.poll(() => sheet.dialog.innerText()).toMatch(said);
        await sheet.dialog.getByRole('button', { name: 'Close' }).click();
      }
      expect(await sheet.sheets()).toEqual(['Sheet1']);
      await sheet.page.getByRole('button', { name: 'Take back' }).click();
      await sheet.shows('B6', 22);
    }); // prettier-ignore
});
