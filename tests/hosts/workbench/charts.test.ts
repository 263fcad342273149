import type { CustomData } from '@univerjs/core';
import { Workbook } from '@cj-tech-master/excelts';
import { installChartSupport } from '@cj-tech-master/excelts/chart';
import { beforeAll, describe, expect, test } from 'vitest';
import type { BookSheet, BookTable } from '../../../src/book/book';
import { drawnChart, keep, keptCharts, keptWith } from '../../../src/hosts/workbench/charts/keptWithSheet';
import { rowsDrawn } from '../../../src/hosts/workbench/charts/rowsDrawn';
import { readXlsx } from '../../../src/xlsx/read';

beforeAll(() => installChartSupport());

/** A file as another program makes it: no table, and a chart over plain cells with a name of its own for the series. */
async function strangersSheet(): Promise<BookSheet> {
  const book = new Workbook();
  const sheet = book.addWorksheet('Brought in');
  sheet.addRows([
    ['Head', 'Ws'],
    ['Alder', 300],
    ['Birch', 600],
  ]);
  sheet.addColumnChart(
    { title: 'Energy', series: [{ name: 'Energy set', categories: "'Brought in'!$A$2:$A$3", values: "'Brought in'!$B$2:$B$3" }] },
    'D2:I12',
  ); // prettier-ignore
  const { book: read, notUnderstood } = await readXlsx(new Uint8Array(await book.xlsx.writeBuffer()));
  expect(notUnderstood).toEqual([]);
  return read.sheets[0] as BookSheet;
}

/** The charts of a sheet after it was stored, with the tables that it has then. */
const afterwards = (custom: CustomData, tables: readonly BookTable[]) =>
  keptCharts(keptWith({ custom: JSON.parse(JSON.stringify(custom)) }), tables).map((chart) =>
    drawnChart(chart, tables),
  );

const column = (c: number, rows: number) => ({ row: 1, column: c, rows, columns: 1 });
/** Two columns below the headings in row 1. */
const heads = (rows: number, name = 'Heads'): BookTable => ({
  name,
  area: { row: 0, column: 0, rows: rows + 1, columns: 2 },
  columns: [{ name: 'Head' }, { name: 'Ws' }],
});
const COMMON = { type: 'column', title: 'Energy', xTitle: 'head', yTitle: 'Ws' } as const;
const onTable = (rows: number) => ({
  ...COMMON,
  x: column(0, rows),
  series: [{ name: 'Energy set', values: column(1, rows) }],
  place: { row: rows + 2, column: 0, rows: 10, columns: 4 },
});
const page = { landscape: false, header: '', titleRows: 0, breaks: [] };
const kept = keep({ charts: [onTable(3)], tables: [heads(3)], page });

describe('charts kept with their sheet', () => {
  test('one of a stranger’s file over plain cells is kept, where it was', async () => {
    const sheet = await strangersSheet();
    expect(sheet.charts).toHaveLength(1);
    expect(afterwards(keep(sheet), sheet.tables)).toEqual(sheet.charts);
  });
  test('one over a table grows and moves with its rows, and follows its new name', () =>
    expect(afterwards(kept, [heads(5, 'Heads_2')])).toEqual([onTable(5)]));
  test('one whose table is gone is known to be, and not dropped in silence', () =>
    expect(afterwards(kept, [])).toEqual([undefined]));
  test('one of a workbook stored before charts named the cells of each series', () => {
    const former = { ...COMMON, table: 'Heads', x: 'Head', series: ['Ws'], place: { row: 1, column: 0, rows: 10, columns: 4 } }; // prettier-ignore
    const { series, ...rest } = onTable(3);
    expect(afterwards({ sweeptable: { charts: [former], page } }, [heads(3)])).toEqual([
      { ...rest, series: [{ ...series[0], name: 'Ws' }] },
    ]);
  });
});

describe('the rows of a chart that are drawn', () => {
  test.each([
    [
      'a line over words, all but those without one',
      'line',
      ['Alder', '', 'Birch', null, '1/125'],
      [0, 2, 4],
    ],
    ['a line over numbers, those with a number', 'line', [8, null, '', 11, '#N/A'], [0, 3]],
    ['columns, all but those without a name', 'column', ['Alder', null, 3, ''], [0, 2]],
    ['a line over nothing, none', 'line', [null, ''], []],
  ] as const)('of %s', (_what, type, xs, rows) => expect(rowsDrawn(type, xs)).toEqual(rows));
});
