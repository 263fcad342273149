import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Workbook } from '@cj-tech-master/excelts';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { calc } from '../../../src/hosts/command/calcCommand';
import { readXlsx } from '../../../src/xlsx/read';
import { cells, workbook, zip } from '../../xlsx/parts';
import { ran } from '../excel/support/command';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'book-'));
});
afterAll(() => rmSync(folder, { recursive: true }));
beforeEach(() => {
  vi.spyOn(console, 'warn').mockImplementation(() => {});
  vi.spyOn(console, 'error').mockImplementation(() => {});
});
afterEach(() => vi.restoreAllMocks());

type Stored = number | string | boolean | { readonly formula: string; readonly result?: unknown };

/** A file as another program left it: its formulas with the values that it stored. */
async function file(
  name: string,
  sheets: Readonly<Record<string, Readonly<Record<string, Stored>>>>,
  change: (book: Workbook) => void = () => {},
): Promise<string> {
  const book = new Workbook();
  for (const [sheet, held] of Object.entries(sheets)) {
    const out = book.addWorksheet(sheet);
    for (const [a1, value] of Object.entries(held)) out.getCell(a1).value = value as never;
  }
  change(book);
  const path = join(folder, name);
  writeFileSync(path, new Uint8Array(await book.xlsx.writeBuffer()));
  return path;
}

const SHEETS = {
  Plan: {
    A1: 2,
    A2: 3,
    A3: '12',
    B1: { formula: 'SUM(A1:A2)', result: 5 },
    B2: { formula: 'A1*10', result: 21 },
  },
  "Ann's": { A1: 100, B1: { formula: 'Plan!B1+A1', result: 105 } },
};
const lines = (stdout: string) =>
  stdout
    .split('\n')
    .filter(Boolean)
    .map((line) => JSON.parse(line) as unknown);

describe('calc --book with formulas', () => {
  test('calculates them as if they were typed on the first sheet, or on the one that is named', async () => {
    const path = await file('typed.xlsx', SHEETS);
    expect(
      await ran(calc, ['--book', path, '=SUM(A1:B2)', "='Ann''s'!A1+B1", '=SWEEP.STOPDIFF(A1,4)']),
    ).toEqual({
      status: 0,
      // 2 + 3 + 5 + 20, 100 + 5, and two stops from 2 to 4
      stdout: '30\n105\n2\n',
      stderr: '',
    });
    expect(await ran(calc, ['--book', path, '--sheet', "ann's", '=A1', '=Plan!A1', '=B1'])).toEqual({
      status: 0,
      stdout: '100\n2\n105\n',
      stderr: '',
    });
  });

  test('gives whole columns and rows as far as there is something, and says so', async () => {
    const path = await file('lines.xlsx', SHEETS);
    const formulas = ['=A:A', "='Ann''s'!A:B", '=2:3', '=Z:Z', '=SUM(A:A)'];
    const { status, stdout, stderr } = await ran(calc, ['--book', path, '--json', ...formulas]);
    const values = lines(stdout).map((line) => (line as { readonly value: unknown }).value);
    // B3 is empty, and so is Z: that is 0 in a cell of its own.
    const empty = [[0], [0], [0]];
    expect(values).toEqual([
      [[2], [3], ['12']],
      [[100, 105]],
      [
        [3, 20],
        ['12', 0],
      ],
      empty,
      5,
    ]);
    expect(status).toBe(0);
    expect(stderr.split('\n').filter(Boolean)).toEqual(
      formulas.slice(0, 4).map((formula) => `${formula}: only as far as there is something in the sheet.`),
    );
  });

  test('INDIRECT means the sheet that formulas are typed on, and in a cell its own', async () => {
    const path = await file('indirect.xlsx', {
      ...SHEETS,
      "Ann's": { A1: 100, B1: { formula: 'INDIRECT("A1")', result: 100 } },
    });
    const asked = ['=SUM(INDIRECT("A1:A2"))', '=INDIRECT("R2C1",FALSE)', "=INDIRECT(\"'Ann''s'!B1\")"];
    expect(await ran(calc, ['--book', path, ...asked, '=SUM(INDIRECT(ADDRESS(1,1)&":A2"))'])).toEqual({
      status: 0,
      stdout: '5\n3\n100\n5\n',
      stderr: '',
    });
    expect((await ran(calc, ['--book', path, '--sheet', "Ann's", '=INDIRECT("A1")'])).stdout).toBe('100\n');
  });

  test('a text of no letters that a cell holds is a text', async () => {
    const path = await file('empty.xlsx', { Data: { A1: '', A2: 1, C1: { formula: 'A1&""', result: '' } } });
    // Microsoft's help of COUNTA: empty text counts; of COUNTBLANK: it counts there too; of ISBLANK: no empty cell.
    const asked = ['=COUNTA(A1:A3)', '=COUNTBLANK(A1:A3)', '=ISBLANK(A1)', '=ISTEXT(A1)', '=A1=0', '=A1=""'];
    expect((await ran(calc, ['--book', path, ...asked, '=COUNTA(C1)', '=A1+1'])).stdout).toBe(
      '2\n2\nFALSE\nTRUE\nFALSE\nTRUE\n1\n',
    );
    expect((await ran(calc, ['--book', path, '=A1+1'])).stderr).toContain('#VALUE!');
  });

  test('knows the names and tables of the workbook', async () => {
    const path = await file('names.xlsx', SHEETS, (book) => {
      book.definedNames.addFormula('Fee', 'Plan!$A$2*2');
      book.getWorksheet('Plan')?.addTable({
        name: 'Kit',
        ref: 'D1',
        headerRow: true,
        columns: [{ name: 'Qty' }, { name: 'Price' }],
        rows: [
          [1, 10],
          [2, 20],
        ],
      });
    });
    expect(await ran(calc, ['--book', path, '=Fee+1', '=SUM(Kit[Price])', '=ROWS(Kit)'])).toEqual({
      status: 0,
      stdout: '7\n30\n2\n',
      stderr: '',
    });
  });
});

describe('calc --book alone', () => {
  test('tells of each formula cell that holds another value', async () => {
    const path = await file('differs.xlsx', SHEETS);
    const { status, stdout, stderr } = await ran(calc, ['--book', path]);
    expect(lines(stdout)).toEqual([
      { sheet: 'Plan', cell: 'B2', formula: '=A1*10', stored: 21, calculated: 20 },
    ]);
    expect(stderr).not.toContain('circle');
    expect({ status, stderr }).toEqual({
      status: 1,
      stderr: '3 formula cells compared: 1 with another value.\n',
    });
    const other = await ran(calc, ['--book', path, '--sheet', "Ann's"]);
    expect(other).toEqual({
      status: 0,
      stdout: '',
      stderr: '1 formula cell compared: none with another value.\n',
    });
  });

  test('takes what it does not know, circles, stored errors and texts for what they are', async () => {
    const path = await file('odd.xlsx', {
      Data: {
        A1: { formula: 'NOSUCH(1)', result: 7 },
        A2: { formula: 'A3+1', result: 0 },
        A3: { formula: 'A2+1', result: 0 },
        A4: { formula: '1/0', result: { error: '#DIV/0!' } },
        A5: { formula: 'NA()', result: 3 },
        A6: '12',
        A7: { formula: 'A6&"x"', result: '12x' },
        A8: { formula: 'A6=12', result: false },
        A9: { formula: 'NOW()', result: 1 },
        A10: { formula: 'REGEXTEST("a","b")', result: false },
        A11: { formula: 'IF(A6="","x","")', result: '' },
        A12: { formula: '0.1+0.2', result: 0.3 },
        A13: { formula: 'Gone+1', result: 4 },
      },
    });
    const { status, stdout, stderr } = await ran(calc, ['--book', path]);
    expect(status).toBe(1);
    const found = lines(stdout) as { cell: string; calculated: unknown; message?: string }[];
    expect(found.map(({ cell }) => cell)).toEqual(['A1', 'A2', 'A3', 'A5', 'A10', 'A13']);
    const said = Object.fromEntries(
      found.map(({ cell, calculated, message }) => [cell, [calculated, message]]),
    );
    expect(said.A1).toEqual(['#NAME?', expect.stringContaining('no function NOSUCH')]);
    expect(said.A10).toEqual(['#NAME?', expect.stringContaining('no function REGEXTEST')]);
    expect(said.A13?.[0]).toBe('#NAME?');
    expect(stderr).toContain('go round in a circle');
    expect(stderr).toContain('11 formula cells compared: 6 with another value.');
    expect(stderr).toContain('1 more with NOW, TODAY or RAND');
  });

  test('lists what is not understood', async () => {
    const path = await file(
      'links.xlsx',
      { Data: { A1: { formula: '[1]Other!A1', result: 5 }, B1: { formula: 'A1+1', result: 6 } } },
      (book) => {
        book.properties.date1904 = true;
      },
    );
    const { status, stdout, stderr } = await ran(calc, ['--book', path]);
    expect({ status, stdout }).toEqual({ status: 0, stdout: '' });
    expect(stderr).toContain('counts days from 1904');
    expect(stderr).toContain('Links to other files are left out');
  });

  test('a workbook that counts from 1904 has the same days', async () => {
    const day = (date: string): Date => new Date(`${date}T00:00:00Z`);
    const path = await file(
      'apple.xlsx',
      {
        Data: {
          A1: 44197,
          A2: { formula: 'A1+31', result: 44228 },
          A3: { formula: 'YEAR(A1)', result: 2025 },
          A4: { formula: 'A2-A1', result: 31 },
          A5: 0.5,
        },
      },
      (book) => {
        book.properties.date1904 = true;
        const data = book.getWorksheet('Data');
        for (const a1 of ['A1', 'A2']) if (data) data.getCell(a1).numFmt = 'd mmm yyyy';
        if (data) data.getCell('A5').numFmt = 'h:mm';
      },
    );
    // 44,197 days behind the first of 1904 is the second of January 2025, day 45,659 from 1900.
    expect((day('2025-01-02').getTime() - day('1904-01-01').getTime()) / 86_400_000).toBe(44_197);
    expect((await ran(calc, ['--book', path, '=A1', '=TEXT(A1,"yyyy-mm-dd")', '=A5'])).stdout).toBe(
      '45659\n2025-01-02\n0.5\n',
    );
    expect((await ran(calc, ['--book', path])).stdout).toBe('');
  });

  test('writes the workbook with its own values, and over no file', async () => {
    const path = await file('old.xlsx', SHEETS);
    const out = join(folder, 'new.xlsx');
    const { status, stderr } = await ran(calc, ['--book', path, '--out', out]);
    expect(status).toBe(1);
    expect(stderr).toContain(`Wrote ${out}`);
    const { book } = await readXlsx(readFileSync(out));
    const cell = book.sheets[0]?.cells.find(({ row, column }) => row === 1 && column === 1);
    expect(cell).toMatchObject({ formula: '=A1*10', value: 20 });
    expect((await ran(calc, ['--book', out])).status).toBe(0);
    const before = readFileSync(out);
    expect(await ran(calc, ['--book', path, '--out', out])).toEqual({
      status: 1,
      stdout: '',
      stderr: `There is a file ${out} already: nothing was written.\n`,
    });
    expect(readFileSync(out).equals(before)).toBe(true);
  });

  test('writes what no file may hold under another name, and says so', async () => {
    const path = join(folder, 'names.xlsx');
    const names =
      '<definedNames><definedName name="Rate">2</definedName><definedName name="RATE_">3</definedName>' +
      '<definedName name="bad name">4</definedName></definedNames>';
    const held = cells('<row r="1"><c r="A1"><f>Rate*10</f><v>20</v></c></row>');
    writeFileSync(path, zip(workbook(held, {}, names)));
    const out = join(folder, 'legal.xlsx');
    const { status, stderr } = await ran(calc, ['--book', path, '--out', out]);
    expect(status).toBe(0);
    expect(stderr).toMatch(/The name “bad name” is “bad_name” in the file: .+\.\n/);
    const { book } = await readXlsx(readFileSync(out));
    expect(book.names.map(({ name }) => name)).toEqual(['Rate', 'RATE_', 'bad_name']);
    expect(book.sheets[0]?.cells[0]).toMatchObject({ formula: '=Rate*10', value: 20 });
  });

  test('says what it cannot do', async () => {
    const path = await file('plain.xlsx', SHEETS);
    const none = join(folder, 'none.xlsx');
    expect((await ran(calc, ['--book', none])).stderr).toContain(`There is no file ${none} to read.`);
    writeFileSync(none, 'no workbook');
    expect((await ran(calc, ['--book', none])).stderr).toContain('no workbook');
    expect(await ran(calc, ['--book', path, '--sheet', 'Plans', '=1'])).toEqual({
      status: 2,
      stdout: '',
      stderr: "There is no sheet Plans; there is Plan or Ann's.\n",
    });
    expect((await ran(calc, ['--book'])).stderr).toBe('--book must be followed by a file.\n');
    expect((await ran(calc, ['--sheet', 'Plan', '=1'])).stderr).toBe(
      '--sheet needs a workbook: name it by --book.\n',
    );
    expect((await ran(calc, ['--book', path, '--out', join(folder, 'x.csv')])).stderr).toContain(
      'must end in .xlsx',
    );
    expect(existsSync(join(folder, 'x.csv'))).toBe(false);
  });
});
