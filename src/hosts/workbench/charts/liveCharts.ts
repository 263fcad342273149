import { TableManager } from '@univerjs/preset-sheets-table';
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { TableShape } from '../../../book/chart';
import type { Area } from '../../../formula/area';
import type { LiveChart } from '../../../pane/host';
import { areaOfGridRange } from '../book/snapshotSheet';
import type { Grid } from '../grid/grid';
import { drawnChart, keptCharts, keptWith } from './keptWithSheet';
import { rowsDrawn } from './rowsDrawn';

interface ReadCells {
  readonly values: readonly (number | string | null)[];
  readonly format: string;
}

const tablesOn = ({ univer, api }: Grid, sheet: FWorksheet): readonly TableShape[] =>
  univer
    .__getInjector()
    .get(TableManager)
    .getTablesBySubunitId(api.getActiveWorkbook()?.getId() ?? '', sheet.getSheetId())
    .map((table) => {
      const { name, columns, range } = table.getTableInfo();
      return {
        name,
        area: areaOfGridRange(range),
        columns: columns.map(({ displayName }) => ({ name: displayName })),
      };
    });

/** What the cells of a chart hold. A file may name whole columns: there is nothing below the last row of the grid. */
function readCells(sheet: FWorksheet, { row, column, rows, columns }: Area): ReadCells {
  const [height, width] = [
    Math.min(rows, sheet.getMaxRows() - row),
    Math.min(columns, sheet.getMaxColumns() - column),
  ];
  if (height < 1 || width < 1) return { values: [], format: 'General' };
  const range = sheet.getRange(row, column, height, width);
  return {
    values: range.getCellDatas().flatMap((line) =>
      line.map((cell) => {
        const value = cell?.v;
        return typeof value === 'number' || typeof value === 'string' ? value : null;
      }),
    ),
    format: range.getCellStyleData()?.n?.pattern ?? 'General',
  };
}

const asNumber = (value: number | string | null): number | null => (typeof value === 'number' ? value : null);

/** The charts of the sheet in view with the numbers it holds now. A row without an x is left out. */
export function liveCharts(grid: Grid): readonly LiveChart[] {
  const sheet = grid.api.getActiveWorkbook()?.getActiveSheet();
  if (!sheet) return [];
  const tables = tablesOn(grid, sheet);
  return keptCharts(keptWith(sheet.getSheet().getConfig()), tables).flatMap((kept) => {
    const chart = drawnChart(kept, tables);
    if (!chart) return [];
    const { type, title, xTitle, yTitle } = chart;
    const xs = readCells(sheet, chart.x).values;
    const rows = rowsDrawn(type, xs);
    return [
      {
        type,
        title,
        xTitle,
        yTitle,
        x: rows.map((row) => xs[row] ?? ''),
        series: chart.series.map(({ name, values: cells }) => {
          const { values, format } = readCells(sheet, cells);
          return { name, values: rows.map((row) => asNumber(values[row] ?? null)), format };
        }),
      },
    ];
  });
}
