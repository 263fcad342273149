import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { lay } from '../../../src/hosts/excel/lay';
import type { Template } from '../../../src/sheets/template';
import { openExcel, sheetOf } from './support/laid';
import { HOST_FILES } from './support/office-host';

const read = (id: string): Template =>
  JSON.parse(readFileSync(resolve(import.meta.dirname, `../../sheets/kinds/${id}.json`), 'utf8')) as Template;

/** What stands in a column that is looked up, where the workbook has these sheets. */
async function lookedUp(file: (typeof HOST_FILES)[number], ...before: Template[]): Promise<unknown> {
  const { workbook, excel } = openExcel({ file });
  for (const template of before) await lay(excel, template, true);
  await lay(excel, read('kinds'), true);
  return sheetOf(workbook, 'Kinds').cells.get('B13');
}

test.each(HOST_FILES)('a column is looked up where the workbook has the table, through %s', async (file) => {
  const partner = read('partner');
  expect(await lookedUp(file)).toBe(1000);
  expect(await lookedUp(file, partner)).toMatch(/^=IFERROR\(IF\(INDEX\(Stock\[Most\],MATCH\(/);
  const own = JSON.parse(JSON.stringify(partner).replaceAll('Most', 'Price')) as Template;
  expect(await lookedUp(file, own)).toBe(1000);
  expect(await lookedUp(file, own, partner)).toContain('INDEX(Stock_2[Most]');
});
