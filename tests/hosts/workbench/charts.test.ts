import { Workbook } from '@cj-tech-master/excelts';
import { installChartSupport } from '@cj-tech-master/excelts/chart';
import { beforeAll, describe, expect, test } from 'vitest';
import type { BookSheet, BookTable } from '../../../src/book/book';
import { drawnChart } from '../../../src/book/chart';
import type { Area } from '../../../src/formula/area';
import { keep, keptCharts, keptWith } from '../../../src/hosts/workbench/book/keptWithSheet';
import { keptToday } from '../../../src/hosts/workbench/charts/formerCharts';
import { chartsInReach, extentOf } from '../../../src/hosts/workbench/charts/inReach';
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
const afterwards = (sheet: Parameters<typeof keep>[0], tables: readonly BookTable[]) =>
  keptCharts(keptWith({ custom: JSON.parse(JSON.stringify(keep(sheet))) }), tables);

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

describe('charts kept with their sheet', () => {
  test('one of a stranger’s file over plain cells is kept, where it was', async () => {
    const sheet = await strangersSheet();
    expect(sheet.charts).toHaveLength(1);
    expect(afterwards(sheet, sheet.tables)).toEqual(sheet.charts);
  });
  test('one over a table grows with its rows, follows its new name, and stays where it stands', () => {
    const [chart] = afterwards({ charts: [onTable(3)], tables: [heads(3)], cells: [], page }, [
      heads(5, 'Heads_2'),
    ]);
    expect(chart).toEqual({ ...onTable(5, 'Heads_2'), place: onTable(3).place });
    const rows = { row: 1, rows: 5, columns: 1 };
    expect(chart && drawnChart(chart, [heads(5, 'Heads_2')])).toMatchObject({
      x: { ...rows, column: 0 },
      series: [{ x: { ...rows, column: 0 }, values: { ...rows, column: 1 } }],
    });
  });
  test('one whose table is gone is known to be, and not dropped in silence', () => {
    const [chart] = afterwards({ charts: [onTable(3)], tables: [heads(3)], cells: [], page }, []);
    expect(chart?.title).toBe('Energy');
    expect(chart && drawnChart(chart, [])).toBeUndefined();
  });
});

describe('a chart of a workbook that was stored when places counted from the end of its table', () => {
  // Headings and five heads take the rows 1 to 6; one row is left free.
  const place = { row: 1, column: 0, rows: 10, columns: 4 };
  const wanted = { ...onTable(5), place: { ...place, row: 6 + 1 } };
  test('stands where it stood', () => {
    const { charts } = keptToday({ charts: [{ ...onTable(5), place }], page }, [heads(5)]);
    expect(charts).toEqual([wanted]);
  });
  test.each([
    ['column', 'column'],
    ['line', 'scatter'],
  ] as const)('names the cells of each series where it only named their heading: %s', (type, kind) => {
    const first = { ...COMMON, type, table: 'Heads', x: 'Head', series: ['Ws'], place };
    const { series, ...rest } = wanted;
    expect(keptToday({ charts: [first], page }, [heads(5)]).charts).toEqual([
      { ...rest, kind, series: [{ ...series[0], name: 'Ws' }] },
    ]);
  });
  test('of today is left as it is', () => {
    const today = { charts: [onTable(3)], places: 'sheet' as const, page };
    expect(keptToday(today, [heads(3)])).toEqual(today);
  });
});

describe('a chart of a file', () => {
  const at = (place: Area) => chartsInReach([{ ...onTable(3), place }], { rows: 40, columns: 6 })[0]?.place;
  test('stands where the file says, and the grid reaches that far', () => {
    const place = { row: 400, column: 60, rows: 12, columns: 8 };
    expect(at(place)).toEqual(place);
    expect(extentOf([{ ...onTable(3), place }])).toEqual({ rows: 412, columns: 68 });
  });
  test('comes near where it stands so far away that no grid is made for it', () => {
    expect(at({ row: 1_000_000, column: 16_000, rows: 12, columns: 8 })).toEqual({ row: 1028, column: 98, rows: 12, columns: 8 }); // prettier-ignore
    expect(at({ row: 0, column: 0, rows: 1_048_576, columns: 16_384 })).toEqual({ row: 0, column: 0, rows: 1040, columns: 106 }); // prettier-ignore
  });
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
