import { describe, expect, test } from 'vitest';
import type { Book } from '../../src/book/book';
import { planAlone } from '../../src/sheets/makePlan';
import { TEMPLATES } from '../../src/sheets/templates';
import { readXlsx } from '../../src/xlsx/read';
import { asFile, writeXlsx } from '../../src/xlsx/write';
import { openPackage } from '../../src/xlsx/zip';
import { ran } from '../hosts/excel/support/command';
import { sheet as command } from '../../src/hosts/command/sheetCommand';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const partOf = async (bytes: Uint8Array, name: string): Promise<string> =>
  new TextDecoder().decode(await openPackage(bytes).read(name));

const book: Book = {
  sheets: TEMPLATES.slice(0, 2).map((template) => planAlone(template, true).sheet),
  names: [],
};
const ours = book.sheets.flatMap(({ cells }) => cells.filter(({ formula }) => formula?.includes('SWEEP.')));

describe('a file for Excel', () => {
  test('was calculated by a version that Excel does not calculate again for', async () => {
    // What Excel of Microsoft 365 writes; it calculates a file anew, and shows #NAME? without the add-in, where the number is lower. From memory.
    expect(await partOf(await writeXlsx(book), 'xl/workbook.xml')).toContain('<calcPr calcId="191029"');
  });
  test('is the same, byte for byte, each time', async () => {
    expect(await writeXlsx(book)).toEqual(await writeXlsx(book));
  });
  test('has each formula with a function of ours as one that may spill, so that Excel puts no @ before it', async () => {
    const bytes = await writeXlsx(book);
    const parts = await Promise.all(
      book.sheets.map((_, i) => partOf(bytes, `xl/worksheets/sheet${i + 1}.xml`)),
    );
    const cells = [...parts.join('').matchAll(/<c r="([A-Z]+\d+)"([^>]*)><f([^>]*)>([^<]*)<\/f>/g)];
    const called = cells.filter(([, , , , formula]) => formula?.includes('_xldudf_SWEEP_'));
    expect(called.length).toBe(ours.length);
    for (const [, at, cell, attributes] of called) {
      expect(cell).toMatch(/ cm="\d+"/);
      expect(attributes).toBe(` t="array" ref="${at}"`);
    }
    expect(cells.length).toBeGreaterThan(called.length);
    for (const [, , cell, attributes, formula] of cells)
      if (!formula?.includes('_xldudf_SWEEP_')) expect([cell, attributes].join('')).not.toMatch(/ cm=|array/);
  });
  test('reads back as it was', async () => {
    const { book: back, notUnderstood } = await readXlsx(await writeXlsx(book));
    expect(notUnderstood).toEqual([]);
    for (const [i, { cells }] of book.sheets.entries())
      for (const { row, column, formula } of cells)
        if (formula !== undefined)
          expect(
            back.sheets[i]?.cells.find((cell) => cell.row === row && cell.column === column),
          ).toMatchObject({
            formula,
          });
    expect(back.sheets.flatMap(({ cells }) => cells.filter(({ spill }) => spill))).toEqual([]);
  });
});

describe('names of a sheet', () => {
  const sheets = book.sheets.map((sheet, i) => ({
    ...sheet,
    name: ["Ann's set", 'Two'][i] as string,
    names: [{ name: 'target', formula: ["='Ann''s set'!$B$9", '=Two!$B$4'][i] as string }],
  }));
  const names = [{ name: 'studio', formula: '=12' }];
  test('hold on that sheet alone', async () => {
    const { bytes, changed } = await asFile({ sheets, names });
    expect(changed).toEqual([]);
    const xml = await partOf(bytes, 'xl/workbook.xml');
    const found = [...xml.matchAll(/<definedName name="(target|studio)"([^>]*)>([^<]*)</g)];
    expect(found.map(([, ...rest]) => rest.map((text) => text?.replaceAll('&apos;', "'"))).sort()).toEqual([
      ['studio', '', '12'],
      ['target', ' localSheetId="0"', "'Ann''s set'!$B$9"],
      ['target', ' localSheetId="1"', 'Two!$B$4'],
    ]);
  });
  test('are in a file of a template, for each value of its forms', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'sweeptable-names-'));
    const path = join(folder, 'lights.xlsx');
    expect((await ran(command, ['lights-on-set', path])).status).toBe(0);
    const xml = await partOf(new Uint8Array(readFileSync(path)), 'xl/workbook.xml');
    rmSync(folder, { recursive: true });
    const { names: planned } = planAlone(TEMPLATES.find(({ id }) => id === 'lights-on-set') as (typeof TEMPLATES)[0], true); // prettier-ignore
    for (const { name } of planned) expect(xml).toContain(`<definedName name="${name}" localSheetId="0">`);
  });
});
