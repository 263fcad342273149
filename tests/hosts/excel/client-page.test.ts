import { expect, test } from 'vitest';
import { readXlsx } from '../../../src/xlsx/read';
import { layout, tableTop } from '../../../src/sheets/layout';
import type { TemplateTable } from '../../../src/sheets/template';
import { templateOf } from '../../sheets/support';
import { openExcel, sheetOf } from './support/laid';

const page = templateOf('client-page');
const top = tableTop(layout(page).tables.get('ClientShots') as TemplateTable);

/** The demo's page in a workbook, and what the workbook was told to open beside it. */
async function open() {
  const opened = openExcel();
  const files: Uint8Array[] = [];
  opened.excel.createWorkbook = (base64 = '') => {
    files.push(Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0)));
    return Promise.resolve();
  };
  await opened.host.insertSheet(page.id, true);
  // Sums and dates; a formula that lacks nothing says nothing.
  opened.workbook.onFormula = (formula) =>
    /^=IF\(ISERROR|^=IFERROR\(IF\(TRIM|^=IF\(\$/.test(formula) ? '' : 'EUR 7.77';
  opened.workbook.log.length = 0;
  return { ...opened, files, sheet: sheetOf(opened.workbook, page.name) };
}

test('the page opens in a workbook of its own, as values and in its looks; this workbook is only read', async () => {
  const { host, workbook, files } = await open();
  expect(await host.prepareClientPage()).toEqual({
    done: 'The client page is open in a new workbook. It holds that page alone, as values and without pictures: a logo has its place at the top right. Look it over before you send it. Save it, and send that file.',
  });
  expect(workbook.log).toEqual([]);
  const { book } = await readXlsx(files[0] as Uint8Array);
  expect(book.sheets).toHaveLength(1);
  const cells = book.sheets[0]?.cells ?? [];
  const shown = cells.map(({ value }) => value);
  expect(shown).toEqual(expect.arrayContaining(['Studio North Light', 'EUR 7.77', 'Vessels', 'Shot', 12]));
  expect(cells.filter(({ formula }) => formula !== undefined)).toEqual([]);
  expect(shown).not.toContain(page.answers);
  expect(book.sheets[0]?.merges).toEqual([{ row: 1, column: 3, rows: 6, columns: 1 }]);
  expect(cells.find(({ value }) => value === 'In all')?.style).toMatchObject({ bold: true, size: 11 });
  expect(cells.find(({ value }) => value === 'Studio North Light')?.style).toMatchObject({ size: 16 });
});

test('a sheet that says what it lacks is not prepared, nor is a workbook without one', async () => {
  const { host, sheet, files } = await open();
  sheet.cells.set('D15', '! shot 2: pictures');
  expect(await host.prepareClientPage()).toEqual({
    refused: '“Client page” is not ready: D15 says: shot 2: pictures. Nothing was prepared.',
  });
  sheet.cells.set('D15', '');
  sheet.cells.set(`A${top + 2}`, '#REF!');
  expect(await host.prepareClientPage()).toEqual({
    refused: `“Client page” is not ready: A${top + 2} shows #REF!. Nothing was prepared.`,
  });
  expect(files).toEqual([]);
  expect(await openExcel().host.prepareClientPage()).toHaveProperty(
    'refused',
    'No sheet of this workbook is one that clients read. Nothing was prepared. Insert “Client page” beside the Estimate.',
  );
});

test('a row or a column that is hidden is not sent unseen', async () => {
  const { host, sheet, files } = await open();
  sheet.hidden.add(top + 1);
  expect(await host.prepareClientPage()).toEqual({
    refused: `“Client page” is not ready: A${top + 2} is hidden, and holds something: show it or clear it. Nothing was prepared.`,
  });
  sheet.hidden.clear();
  sheet.hiddenColumns.add(2);
  expect(await host.prepareClientPage()).toHaveProperty(
    'refused',
    expect.stringContaining(`C${top + 1} is hidden`),
  );
  expect(files).toEqual([]);
  sheet.hiddenColumns.clear();
  expect(await host.prepareClientPage()).toHaveProperty('done');
});

test('where Excel opens no workbook, it is said', async () => {
  const { host, excel } = await open();
  excel.createWorkbook = () => Promise.reject(new Error('not here'));
  expect(await host.prepareClientPage()).toHaveProperty('refused');
});
