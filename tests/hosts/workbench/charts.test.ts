import type { CustomData } from '@univerjs/core';
import { Workbook } from '@cj-tech-master/excelts';
import { installChartSupport } from '@cj-tech-master/excelts/chart';
import { beforeAll, describe, expect, test } from 'vitest';
import type { BookSheet, BookTable } from '../../../src/book/book';
import { drawnChart } from '../../../src/book/chart';
import { keep, keptCharts, keptWith } from '../../../src/hosts/workbench/book/keptWithSheet';
import { plainCellsNote } from '../../../src/hosts/workbench/charts/plainCells';
import { kindOver, rowsDrawn } from '../../../src/hosts/workbench/charts/rowsDrawn';
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
  keptCharts(keptWith({ custom: JSON.parse(JSON.stringify(custom)) }), tables);

/** Two columns below the headings in row 1. */
const heads = (rows: number, name = 'Heads'): BookTable => ({
  name,
  area: { row: 0, column: 0, rows: rows + 1, columns: 2 },
  columns: [{ name: 'Head' }, { name: 'Ws' }],
});
const COMMON = { title: 'Energy', xTitle: 'head', yTitle: 'Ws' };
const onTable = (rows: number, table = 'Heads') => ({
  ...COMMON,
  kind: 'column' as const,
  x: { table, column: 'Head' },
  series: [{ name: 'Energy set', values: { table, column: 'Ws' } }],
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
  test('one over a table grows and moves with its rows, and follows its new name', () => {
    const [chart] = afterwards(kept, [heads(5, 'Heads_2')]);
    expect(chart).toEqual(onTable(5, 'Heads_2'));
    const rows = { row: 1, rows: 5, columns: 1 };
    expect(chart && drawnChart(chart, [heads(5, 'Heads_2')])).toMatchObject({
      x: { ...rows, column: 0 },
      series: [{ x: { ...rows, column: 0 }, values: { ...rows, column: 1 } }],
    });
  });
  test('one whose table is gone is known to be, and not dropped in silence', () => {
    const [chart] = afterwards(kept, []);
    expect(chart?.title).toBe('Energy');
    expect(chart && drawnChart(chart, [])).toBeUndefined();
  });
  test.each([
    ['column', 'column'],
    ['line', 'scatter'],
  ] as const)('one of a workbook stored before a chart named the cells of each series: %s', (type, kind) => {
    const former = { ...COMMON, type, table: 'Heads', x: 'Head', series: ['Ws'], place: { row: 1, column: 0, rows: 10, columns: 4 } }; // prettier-ignore
    const { series, ...rest } = onTable(3);
    expect(afterwards({ sweeptable: { charts: [former], page } }, [heads(3)])).toEqual([
      { ...rest, kind, series: [{ ...series[0], name: 'Ws' }] },
    ]);
  });
});

test('a chart over plain cells says which, as it does not follow them; one over a table has nothing to say', () => {
  const cells = { row: 1, column: 0, rows: 2, columns: 1 };
  const chart = onTable(3);
  const point = { name: 'Now', x: { cells }, values: { cells: { ...cells, column: 1, rows: 1 } } };
  expect(plainCellsNote(chart)).toBeUndefined();
  expect(plainCellsNote({ ...chart, series: [...chart.series, point] })).toBe(
    'Reads A2:A3, B2, even after rows or columns were inserted or deleted before them.',
  );
});

describe('the rows of a chart that are drawn', () => {
  test.each([
    ['a line over words, all but those without one', 'line', ['Alder', '', 'Birch', null, '1/125'], [0, 2, 4]],
    ['a line over numbers in their order, too', 'line', [8, null, 11], [0, 2]],
    ['a scatter, those with a number', 'scatter', [8, null, '', 11, '#N/A'], [0, 3]],
    ['columns, all but those without a name', 'column', ['Alder', null, 3, ''], [0, 2]],
    ['a line over nothing, none', 'line', [null, ''], []],
  ] as const)('of %s', (_what, kind, xs, rows) => expect(rowsDrawn(kind, xs)).toEqual(rows)); // prettier-ignore
  test('a scatter over words alone runs over them in their order; over a number it does not', () => {
    expect(kindOver('scatter', ['Alder', null, 'Birch'])).toBe('line');
    expect(kindOver('scatter', ['Alder', 2])).toBe('scatter');
    expect(kindOver('scatter', [null, ''])).toBe('scatter');
    expect(kindOver('column', ['Alder'])).toBe('column');
  });
});
