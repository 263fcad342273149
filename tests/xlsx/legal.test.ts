import { Workbook } from '@cj-tech-master/excelts';
import { describe, expect, test } from 'vitest';
import type { Book, BookCell, BookSheet, BookTable } from '../../src/book/book';
import { readXlsx } from '../../src/xlsx/read';
import { asFile } from '../../src/xlsx/write';
import { sheetOf } from './parts';

const one = (value: BookCell['value'], formula?: string): BookCell => ({
  row: 0,
  column: 0,
  value,
  ...(formula === undefined ? {} : { formula }),
});
const table = (name: string, columns: readonly string[], row = 0, column = 0): BookTable => ({
  name,
  area: { row, column, rows: 3, columns: columns.length },
  columns: columns.map((each) => ({ name: each })),
});
const headings = (texts: readonly string[], row = 0): BookCell[] =>
  texts.map((value, column) => ({ row, column, value }));

/** A book written and read again, and the same file as another reader finds it. */
async function saved(book: Book) {
  const { bytes, changed } = await asFile(book);
  const other = new Workbook();
  await other.xlsx.load(bytes);
  const { book: back, notUnderstood } = await readXlsx(bytes);
  expect(notUnderstood).toEqual([]);
  return { back, changed, other };
}
const book = (...sheets: readonly BookSheet[]): Book => ({ sheets, names: [] });

describe('names of sheets', () => {
  const GOOD = sheetOf([one(7)], { name: 'Good' });
  // Excel takes none of these: the signs / ? * [ ] : \ are forbidden, "History" is reserved, 31 letters are the most.
  test.each([
    ['History', 'History 1', /reserved/],
    ['hisTORY', 'hisTORY 1', /reserved/],
    ['f/8 or f/11', 'f-8 or f-11', /none of/],
    ['a?b*c[d]e:f\\g', 'a-b-c-d-e-f-g', /none of/],
    ["'Ann'", 'Ann', /apostrophe/],
    ['  ', 'Sheet', /must have a name/],
    [`${'x'.repeat(31)}y`, 'x'.repeat(31), /at most 31/],
    ['good', 'good (2)', /capitals/],
  ])('%j is written as %j, and all other sheets with it', async (name, written, why) => {
    const bad = sheetOf([one(3)], { name });
    const formula = `='${name.replaceAll("'", "''")}'!A1*2`;
    const user = sheetOf([one(6, formula)], { name: 'User' });
    const { back, changed, other } = await saved(book(GOOD, bad, user));
    expect(back.sheets.map((sheet) => [sheet.name, sheet.cells[0]?.value])).toEqual([
      ['Good', 7],
      [written, 3],
      ['User', 6],
    ]);
    expect(other.worksheets.map((sheet) => sheet.name)).toEqual(['Good', written, 'User']);
    expect(changed).toHaveLength(1);
    expect(changed[0]).toMatch(why);
    expect(changed[0]).toContain(`“${written}”`);
    expect(back.sheets[2]?.cells[0]?.formula).toBe(`='${written}'!A1*2`);
  });

  test('long ones that begin alike stay apart, and what speaks of them follows', async () => {
    const [long, longer] = [
      `${'Still life with glass, second '}day A`,
      `${'Still life with glass, second '}day B`,
    ];
    const rule = { kind: 'list', bounds: [`'${longer}'!$A$1:$A$3`], blank: true, strict: true } as const;
    const area = { row: 4, column: 0, rows: 1, columns: 1 };
    const { back } = await saved({
      sheets: [
        sheetOf([one(1)], { name: long }),
        sheetOf([one(2)], { name: longer }),
        sheetOf([one(3, `=SUM('${long}'!A1,'${longer}'!A1)`)], {
          name: 'Sum',
          rules: [{ ...rule, areas: [area] }],
          conditions: [
            { kind: 'formula', areas: [area], formula: `='${longer}'!A1>1`, look: { bold: true } },
          ],
        }),
      ],
      names: [{ name: 'Day', formula: `='${longer}'!$A$1` }],
    });
    const [first, second] = back.sheets.map(({ name }) => name);
    // 31 letters of the first; the second ends in a number of four letters.
    expect([first, second]).toEqual(['Still life with glass, second d', 'Still life with glass, seco (2)']);
    const sum = back.sheets[2];
    expect(sum?.cells[0]?.formula).toBe(`=SUM('${first}'!A1,'${second}'!A1)`);
    expect(sum?.rules[0]?.bounds).toEqual([`'${second}'!$A$1:$A$3`]);
    expect(sum?.conditions).toMatchObject([{ formula: `='${second}'!A1>1` }]);
    expect(back.names).toEqual([{ name: 'Day', formula: `='${second}'!$A$1` }]);
  });

  test('what spells the old name in a text is told', async () => {
    const { changed } = await saved(
      book(sheetOf([one(1)], { name: 'a/b' }), sheetOf([one(1, `=INDIRECT("'a/b'!A1")`)], { name: 'User' })),
    );
    expect(changed).toHaveLength(2);
    expect(changed[1]).toMatch(/INDIRECT.*a\/b/);
  });

  test('of which none is in sight, the first is shown', async () => {
    const { back, changed } = await saved(
      book(sheetOf([one(1)], { name: 'A', hidden: true }), sheetOf([one(2)], { name: 'B', hidden: true })),
    );
    expect(back.sheets.map(({ hidden }) => hidden)).toEqual([false, true]);
    expect(changed).toHaveLength(1);
  });
});

describe('tables', () => {
  test('alike but for capitals get names of their own, each with its formulas', async () => {
    const first = sheetOf(
      [...headings(['Ws']), { row: 5, column: 0, value: 1, formula: '=SUM(Heads[Ws])' }],
      {
        name: 'One',
        tables: [table('Heads', ['Ws'])],
      },
    );
    const second = sheetOf(
      [...headings(['Ws']), { row: 5, column: 0, value: 2, formula: '=SUM(HEADS[Ws])' }],
      {
        name: 'Two',
        tables: [table('HEADS', ['Ws'])],
      },
    );
    const { back, changed } = await saved(book(first, second));
    expect(back.sheets.map((sheet) => [sheet.tables[0]?.name, sheet.cells.at(-1)?.formula])).toEqual([
      ['Heads', '=SUM(Heads[Ws])'],
      ['HEADS_2', '=SUM(HEADS_2[Ws])'],
    ]);
    expect(changed).toHaveLength(1);
  });

  test('have a heading of its own above each column, in their cells too', async () => {
    const cells = [
      ...headings(['Head', 'head', '', 'Ws']),
      { row: 1, column: 0, value: 5, formula: '=SUM(Kit[Old])+Kit[[#This Row],[Old]]' },
      { row: 7, column: 0, value: 5, formula: '=SUM(Kit[[#Headers],[Head]:[Old]])+COUNTA(Kit[#All])' },
    ];
    const sheet = sheetOf(cells, { tables: [table('Kit', ['Head', 'Second', ' ', 'Old'])] });
    const { back, changed } = await saved(book(sheet));
    const [written] = back.sheets;
    const names = ['Head', 'head2', 'Column', 'Ws'];
    expect(written?.tables[0]?.columns.map(({ name }) => name)).toEqual(names);
    expect(written?.cells.filter(({ row }) => row === 0).map(({ value }) => value)).toEqual(names);
    // What was typed above a column since is its name, and formulas follow.
    expect(written?.cells.filter(({ formula }) => formula).map(({ formula }) => formula)).toEqual([
      '=SUM(Kit[Ws])+Kit[[#This Row],[Ws]]',
      '=SUM(Kit[[#Headers],[Head]:[Ws]])+COUNTA(Kit[#All])',
    ]);
    expect(changed).toHaveLength(2);
  });

  test('have texts as headings', async () => {
    const sheet = sheetOf(
      [
        { row: 0, column: 0, value: 2026 },
        { row: 0, column: 1, value: 'Twice', formula: '=UPPER("x")' },
      ],
      { tables: [table('Kit', ['2026', 'Twice'])] },
    );
    const { back, changed } = await saved(book(sheet));
    expect(back.sheets[0]?.cells).toMatchObject([{ value: '2026' }, { value: 'Twice' }]);
    expect(back.sheets[0]?.cells[1]?.formula).toBeUndefined();
    expect(changed).toHaveLength(1);
  });

  test('without a row below their headings are cells; the charts over them stay', async () => {
    const kit = table('Kit', ['A', 'B']);
    const chart: BookSheet['charts'][number] = {
      kind: 'line',
      title: 'Light',
      xTitle: 'across',
      yTitle: 'up',
      x: { table: 'Kit', column: 'A' },
      series: [{ name: 'B', values: { table: 'Kit', column: 'B' } }],
      place: { row: 5, column: 0, rows: 10, columns: 4 },
    };
    const short = { ...kit, area: { ...kit.area, rows: 1 } };
    const { back, changed } = await saved(
      book(sheetOf(headings(['A', 'B']), { tables: [short], charts: [chart] })),
    );
    expect(back.sheets[0]?.tables).toEqual([]);
    expect(back.sheets[0]?.charts).toHaveLength(1);
    expect(changed).toHaveLength(1);
  });
});

test('names that may not be get others, and formulas follow', async () => {
  const names = ['A1', 'R1C1', 'bad name', 'Rate', 'RATE', 'Kit', 'true', '2nd', 'fine.name_1'];
  const { back, changed } = await saved({
    sheets: [
      sheetOf(
        [
          ...headings(['x']),
          { row: 8, column: 0, value: 4, formula: '=LET(RATE,2,RATE*RATE)' },
          { row: 9, column: 0, value: 1, formula: '=Rate+RATE+rate+KIT' },
        ],
        { name: 'S', tables: [table('kit', ['x'])] },
      ),
    ],
    names: names.map((name, i) => ({ name, formula: `=${i}` })),
  });
  expect(back.names).toEqual(
    ['_A1', '_R1C1', 'bad_name', 'Rate', 'RATE_2', 'Kit_2', '_true', '_2nd', 'fine.name_1'].map(
      (name, i) => ({
        name,
        formula: `=${i}`,
      }),
    ),
  );
  expect(back.sheets[0]?.cells.slice(-2).map(({ formula }) => formula)).toEqual([
    '=LET(RATE,2,RATE*RATE)',
    '=Rate+RATE_2+Rate+kit',
  ]);
  expect(changed).toHaveLength(7);
});

test('a name that stands for nothing is left out', async () => {
  const { back, changed } = await saved({
    sheets: [sheetOf([one(1)])],
    names: [{ name: 'Void', formula: '=' }],
  });
  expect(back.names).toEqual([]);
  expect(changed).toHaveLength(1);
});

describe('what a sheet holds', () => {
  test('frozen up to its last column and row, merged without measure or twice, and much longer than it may be', async () => {
    const whole = { row: 0, column: 0, rows: 1_048_576, columns: 16_384 };
    const [merge, over] = [
      { row: 3, column: 0, rows: 2, columns: 2 },
      { row: 4, column: 1, rows: 2, columns: 2 },
    ];
    const sheet = sheetOf(
      [one('x'.repeat(40_000)), { row: 1, column: 0, value: 5, formula: `=${'1+'.repeat(5000)}1` }],
      {
        freeze: { rows: 1_048_576, columns: 16_384 },
        merges: [merge, over, whole, { row: 9, column: 9, rows: 1, columns: 1 }],
        rules: [
          { areas: [merge], kind: 'list', bounds: [`"${'word,'.repeat(60)}end"`], blank: true, strict: true },
          { areas: [over], kind: 'any', bounds: [], blank: true, strict: true, prompt: 'p'.repeat(300) },
        ],
      },
    );
    const { back, changed } = await saved(book(sheet));
    const [written] = back.sheets;
    expect(written?.cells[0]?.value).toBe('x'.repeat(32_767));
    expect(written?.cells.find(({ row }) => row === 1)).toEqual({ row: 1, column: 0, value: 5 });
    expect(written?.freeze).toEqual({ rows: 1_048_575, columns: 16_383 });
    expect(written?.merges).toEqual([merge]);
    expect(written?.rules).toMatchObject([{ prompt: 'p'.repeat(255) }]);
    expect(changed).toHaveLength(7);
  });
});

test('a book that is as it may be is written as it is, with nothing said', async () => {
  const sheet = sheetOf(
    [...headings(['Head', 'Ws']), { row: 1, column: 1, value: 2, formula: '=LEN(Kit[Head])' }],
    {
      tables: [table('Kit', ['Head', 'Ws'])],
      freeze: { rows: 1, columns: 1 },
    },
  );
  const { back, changed } = await saved({ sheets: [sheet], names: [{ name: 'Rate', formula: '=2' }] });
  expect(changed).toEqual([]);
  expect(back).toEqual({ sheets: [sheet], names: [{ name: 'Rate', formula: '=2' }] });
});
