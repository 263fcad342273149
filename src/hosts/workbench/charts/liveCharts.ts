import type { FWorksheet } from '@univerjs/sheets/facade';
import { type DrawnChart, drawnChart, type TableShape } from '../../../book/chart';
import type { Area } from '../../../formula/area';
import type { LiveChart } from '../../../pane/host';
import { areaOfGridRange } from '../book/snapshotSheet';
import type { Grid } from '../grid/grid';
import { keptCharts, keptWith } from '../book/keptWithSheet';
import { plainCellsNote } from './plainCells';
import { kindOver, rowsDrawn } from './rowsDrawn';

interface ReadCells {
  readonly values: readonly (number | string | null)[];
  readonly format: string;
}

const tableShapes = (sheet: FWorksheet): readonly TableShape[] =>
  sheet.getSubTableInfos().map(({ name, columns, range }) => ({
    name,
    area: areaOfGridRange(range),
    columns: columns.map(({ displayName }) => ({ name: displayName })),
  }));

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
  const tables = tableShapes(sheet);
  return keptCharts(keptWith(sheet.getSheet().getConfig()), tables).flatMap((kept) => {
    const chart = drawnChart(kept, tables);
    if (!chart) return [];
    const note = plainCellsNote(kept);
    return [{ ...liveChart(sheet, chart), ...(note === undefined ? {} : { note }) }];
  });
}

function liveChart(sheet: FWorksheet, { title, xTitle, yTitle, ...chart }: DrawnChart): LiveChart {
  const xs = readCells(sheet, chart.x).values;
  const kind = kindOver(chart.kind, xs);
  const rows = rowsDrawn(kind, xs);
  return {
    kind,
    title,
    xTitle,
    yTitle,
    x: rows.map((row) => xs[row] ?? ''),
    series: chart.series.map((each) => {
      const { values, format } = readCells(sheet, each.values);
      const numbers = (of: readonly number[]) => of.map((row) => asNumber(values[row] ?? null));
      const { name, role } = each;
      const common = { name, format, ...(role ? { role } : {}) };
      if (each.x === chart.x) return { ...common, values: numbers(rows) };
      const own = readCells(sheet, each.x).values;
      const ownRows = rowsDrawn('scatter', own);
      return { ...common, x: ownRows.map((row) => own[row] as number), values: numbers(ownRows) };
    }),
  };
}
