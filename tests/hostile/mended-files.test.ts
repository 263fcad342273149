import { expect, test } from 'vitest';
import { readXlsx } from '../../src/xlsx/read';
import { cells, workbook, zip } from '../xlsx/parts';
import { type Parts, relation, relations } from './files';

/** Files that once escaped, and what is read of them now. */
const read = async (sheet: string, more: Parts = {}) => {
  const { book, notUnderstood } = await readXlsx(zip(workbook(sheet, more)));
  const [first] = book.sheets;
  if (!first) throw new Error('there is no sheet');
  return { ...first, notUnderstood };
};
const rowOf = (inside: string): string => cells(`<row r="1">${inside}</row>`);

test('elements and words of a rule may be called anything', async () => {
  const rule = (attributes: string): string =>
    `<conditionalFormatting sqref="A1"><cfRule dxfId="0" ${attributes}><formula>1</formula></cfRule></conditionalFormatting>`;
  const { notUnderstood, conditions } = await read(
    `${cells('<constructor/><toString/><__proto__/>')}${rule('type="cellIs" operator="constructor"')}${rule('type="toString"')}`,
    {
      'xl/_rels/workbook.xml.rels': relations(
        relation('s', 'worksheet', 'worksheets/sheet1.xml'),
        relation('y', 'styles', 'styles.xml'),
      ),
      'xl/styles.xml': '<styleSheet><dxfs><dxf><font><b/></font></dxf></dxfs></styleSheet>',
    },
  );
  expect(conditions).toEqual([]);
  expect(notUnderstood).toEqual(['Some conditional formats are left out.']);
});

test('an error that nobody knows is one all the same, and a zero has no sign', async () => {
  const { cells: found } = await read(rowOf('<c t="e"><v>oops</v></c><c><v>-0</v></c>'));
  expect(found.map(({ value }) => value)).toEqual([{ error: '#VALUE!' }, 0]);
});

test('sizes are those of a sheet', async () => {
  const { heights, widths, freeze, page } = await read(
    '<sheetViews><sheetView><pane state="frozen" ySplit="1e999" xSplit="1e9"/></sheetView></sheetViews>' +
      '<cols><col min="0" max="2" width="1e999"/><col min="3" max="3" width="0.001"/></cols>' +
      `${cells('<row r="1" ht="1e999"/>')}<rowBreaks><brk id="1e999"/></rowBreaks>`,
  );
  expect(heights).toEqual({ 0: 409.5 });
  expect(widths).toEqual({ 0: 255, 1: 255 });
  expect(freeze).toEqual({ rows: 1_048_576, columns: 16_384 });
  expect(page.breaks).toEqual([1_048_576]);
});

test('a row in a cell does not move the cell', async () => {
  const { cells: found } = await read(rowOf('<c r="B1"><row r="3"/><v>8</v></c>'));
  expect(found).toEqual([{ row: 0, column: 1, value: 8 }]);
});

test('a table has the rows that it says, but for its totals', async () => {
  const { tables } = await read(cells(''), {
    'xl/worksheets/_rels/sheet1.xml.rels': relations(relation('t', 'table', '../tables/t.xml')),
    'xl/tables/t.xml': '<table ref="A1:B4" name="T" totalsRowCount="-999"/>',
  });
  expect(tables.map(({ area }) => area)).toEqual([{ row: 0, column: 0, rows: 4, columns: 2 }]);
});

test('what asks another program is left out, as links to other files are', async () => {
  const { cells: found, notUnderstood } = await read(
    rowOf(
      `<c><f>cmd|'/C calc'!A0</f><v>1</v></c><c><f>'app'|topic!item+1</f><v>2</v></c><c><f>"a|b"&amp;'a|b'!A1&amp;T[a|b]</f><v>3</v></c>`,
    ),
  );
  expect(found.map(({ formula }) => formula)).toEqual([undefined, undefined, `="a|b"&'a|b'!A1&T[a|b]`]);
  expect(notUnderstood.join()).toContain('Links to other files are left out');
});

test('a chart that lies on no sheet is left out', async () => {
  const drawing = (row: string): Parts => ({
    'xl/worksheets/_rels/sheet1.xml.rels': relations(relation('d', 'drawing', '../drawings/d.xml')),
    'xl/drawings/d.xml': `<wsDr><a><from><col>1</col><row>${row}</row></from><to><col>6</col><row>1e999</row></to><chart id="k"/></a></wsDr>`,
    'xl/drawings/_rels/d.xml.rels': relations(relation('k', 'chart', '../charts/c.xml')),
    'xl/charts/c.xml': `<chartSpace><chart><plotArea><lineChart><ser><cat><f>'Sheet1'!A1:A2</f></cat><val><f>'Sheet1'!B1:B2</f></val></ser></lineChart></plotArea></chart></chartSpace>`,
  });
  for (const at of ['1', '-5', '0.5', 'x']) expect((await read(cells(''), drawing(at))).charts).toEqual([]);
});
