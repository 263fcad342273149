import { expect, it } from 'vitest';
import type { Book } from '../../src/book/book';
import { readXlsx } from '../../src/xlsx/read';
import { writeXlsx } from '../../src/xlsx/write';
import { openPackage } from '../../src/xlsx/zip';
import { sheetOf } from './parts';

const BOOK: Book = {
  sheets: [
    {
      ...sheetOf([
        { row: 0, column: 0, value: 'Part' },
        { row: 0, column: 1, value: 'Power' },
        ...['key', 'fill & "rim"', 'ambient'].map((value, i) => ({ row: i + 1, column: 0, value })),
      ]),
      filteredRows: [1, 3],
      tables: [
        {
          name: 'Lights',
          area: { row: 0, column: 0, rows: 4, columns: 2 },
          columns: [{ name: 'Part' }, { name: 'Power' }],
          filters: [{ column: 0, texts: ['fill & "rim"', 'a\nb'], blank: true }],
        },
      ],
    },
  ],
  names: [],
};

it('writes what a table is filtered by, and the rows that it hides', async () => {
  const bytes = await writeXlsx(BOOK);
  const part = async (name: string) => new TextDecoder().decode(await openPackage(bytes).read(name));
  // filterColumn and filters of ISO/IEC 29500-1, 18.3.2.7 and 18.3.2.8
  expect(await part('xl/tables/table1.xml')).toContain(
    '<filterColumn colId="0"><filters blank="1"><filter val="fill &amp; &quot;rim&quot;"/><filter val="a&#10;b"/></filters></filterColumn>',
  );
  const rows = (await part('xl/worksheets/sheet1.xml')).match(/<row [^>]*>/g) ?? [];
  expect(rows.map((row) => /hidden="1"/.test(row))).toEqual([false, true, false, true]);
});

it('reads which rows a filter hides, and which are hidden by hand: all where no table is filtered', async () => {
  const { book, notUnderstood } = await readXlsx(await writeXlsx(BOOK));
  expect(book.sheets[0]?.filteredRows).toEqual([1, 3]);
  expect(notUnderstood).toEqual([]);
  const [sheet] = BOOK.sheets;
  if (!sheet) throw new Error('no sheet');
  const plain = await readXlsx(await writeXlsx({ ...BOOK, sheets: [{ ...sheet, tables: [] }] }));
  expect(plain.book.sheets[0]).toMatchObject({ hiddenRows: [1, 3] });
  expect(plain.book.sheets[0]?.filteredRows).toBeUndefined();
  const tables = sheet.tables.map(({ name, area, columns }) => ({ name, area, columns }));
  const byHand = await readXlsx(await writeXlsx({ ...BOOK, sheets: [{ ...sheet, tables }] }));
  expect(byHand.book.sheets[0]).toMatchObject({ hiddenRows: [1, 3] });
  expect(byHand.book.sheets[0]?.filteredRows).toBeUndefined();
  expect([plain, byHand].flatMap((each) => each.notUnderstood)).toEqual([]);
});

it('writes rows that are hidden by hand beside those that a filter hides, and shows those below the last cell', async () => {
  const [sheet] = BOOK.sheets;
  if (!sheet) throw new Error('no sheet');
  const cells = [...sheet.cells, { row: 6, column: 0, value: 'a note' }];
  const bytes = await writeXlsx({ ...BOOK, sheets: [{ ...sheet, cells, hiddenRows: [5, 8] }] });
  const { book, notUnderstood } = await readXlsx(bytes);
  expect(book.sheets[0]).toMatchObject({ filteredRows: [1, 3], hiddenRows: [5] });
  expect(notUnderstood).toEqual(['Hidden rows below the last cell are shown.']);
});

it('writes signs that stand for something in a replacement as they are', async () => {
  const [sheet] = BOOK.sheets;
  if (!sheet) throw new Error('no sheet');
  const texts = ['US$& more', "5 $'", '$$5', '$`'];
  const tables = sheet.tables.map((table) => ({ ...table, filters: [{ column: 0, texts, blank: false }] }));
  const bytes = await writeXlsx({ ...BOOK, sheets: [{ ...sheet, tables }] });
  const part = new TextDecoder().decode(await openPackage(bytes).read('xl/tables/table1.xml'));
  expect([...part.matchAll(/<filter val="([^"]*)"/g)].map(([, text]) => text)).toEqual([
    'US$&amp; more',
    "5 $'",
    '$$5',
    '$`',
  ]);
});
