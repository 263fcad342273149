import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { beforeAll, describe, expect, test } from 'vitest';
import { drawnCharts } from '../../src/book/chart';
import type { BookSheet } from '../../src/book/book';
import { withValues } from '../../src/book/cells';
import { drawCharts } from '../../src/hosts/excel/chart';
import { keep, keptCharts, keptWith } from '../../src/hosts/workbench/book/keptWithSheet';
import type { Template } from '../../src/sheets/template';
import { readXlsx } from '../../src/xlsx/read';
import { writeXlsx } from '../../src/xlsx/write';
import { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import { loadOffice } from '../hosts/excel/support/office-host';
import { calculated } from './support';

const { readTemplate } = createRequire(import.meta.url)('../../src/build/templates.cjs') as {
  readTemplate: (file: string, text: string) => Template;
};
const template = readTemplate('chart.json', readFileSync('tests/sheets/kinds/chart.json', 'utf8'));

let made: Awaited<ReturnType<typeof calculated>>;
let sheet: BookSheet;
beforeAll(async () => {
  made = await calculated(template);
  sheet = withValues(made.plan, made.values);
});
const shapeOf = ({ charts }: Pick<BookSheet, 'charts'>) =>
  charts.map(({ kind, series }) => [kind, ...series.map(({ name, role }) => role ?? name)]);
const WANTED = [
  ['scatter', 'At the film', 'limit', 'point'],
  ['line', 'Reading', 'limit'],
  ['column', 'Reading', 'limit'],
];

describe('a chart with a constant line and a marked point', () => {
  test('draws the cells that hold them', () => {
    expect(made.errors).toEqual([]);
    expect(shapeOf(sheet)).toEqual(WANTED);
    const [steps] = drawnCharts(sheet);
    const valuesOf = (name: string, along: 'x' | 'values') => {
      const area = steps?.series.find((series) => series.name === name)?.[along];
      if (!area) throw new Error(`no ${name}`);
      return Array.from({ length: area.rows }, (_, row) => made.values(area.row + row, area.column));
    };
    expect(valuesOf('At the film', 'x')).toEqual([1, 2, 4, 8, 16]);
    expect(valuesOf('Wanted', 'values')).toEqual([45, 45, 45, 45, 45]);
    // f/16 and six pops: 16 · √6 = 39.19.
    expect(valuesOf('Now', 'x')).toEqual([6]);
    expect(valuesOf('Now', 'values')).toEqual([expect.closeTo(39.19, 2)]);
  });
  test('is the same after it was written to a file and read', async () => {
    const { book, notUnderstood } = await readXlsx(await writeXlsx({ sheets: [sheet], names: [] }));
    expect(notUnderstood).toEqual([]);
    expect(book.sheets[0]?.charts).toEqual(sheet.charts);
  });
  test('is the same after the workbench kept it with its sheet', () =>
    expect(keptCharts(keptWith({ custom: keep(sheet) }), sheet.tables)).toEqual(sheet.charts));
  test('is drawn by Excel itself', async () => {
    const workbook = new FakeWorkbook(sheet.name);
    const { Excel } = loadOffice(workbook, { excelApi: '1.9' });
    await Excel.run(async (context) => {
      drawCharts(context.workbook.worksheets.getItem(sheet.name), made.plan);
      await context.sync();
    });
    const series = workbook.find(sheet.name)?.charts.map(
      (chart) => [chart.properties.Type, ...(chart.children.get('Series')?.members ?? []).map(({ properties }) => properties.ChartType ?? properties.MarkerStyle)],
    ); // prettier-ignore
    expect(series).toEqual([
      ['XYScatterLines', undefined, 'None', 'Diamond'],
      ['Line', undefined, 'None'],
      ['ColumnClustered', undefined, 'Line'],
    ]);
  });
});
