import { TableManager } from '@univerjs/preset-sheets-table';
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { LiveChart } from '../../../pane/host';
import type { Grid } from '../grid/grid';
import { type KeptChart, keptWith } from './keptWithSheet';

interface Column {
  readonly values: readonly (number | string | null)[];
  readonly format: string;
}

/** The columns of the table that a chart was made for: by its name, or where that was changed by its headings. */
function columnsOf(
  { univer, api }: Grid,
  sheet: FWorksheet,
  chart: KeptChart,
): ReadonlyMap<string, Column> | undefined {
  const unitId = api.getActiveWorkbook()?.getId() ?? '';
  const wanted = [chart.x, ...chart.series];
  const tables = univer
    .__getInjector()
    .get(TableManager)
    .getTablesBySubunitId(unitId, sheet.getSheetId())
    .map((table) => table.getTableInfo())
    .filter(({ columns }) => wanted.every((name) => columns.some(({ displayName }) => displayName === name)));
  const table = tables.find(({ name }) => name === chart.table) ?? tables[0];
  if (!table) return undefined;
  const { startRow, endRow, startColumn } = table.range;
  const read = (name: string): Column => {
    const column = startColumn + table.columns.findIndex(({ displayName }) => displayName === name);
    const range = sheet.getRange(startRow + 1, column, Math.max(1, endRow - startRow), 1);
    const cells = range.getCellDatas();
    return {
      values: cells.map(([cell]) => {
        const value = cell?.v;
        return typeof value === 'number' || typeof value === 'string' ? value : null;
      }),
      format: range.getCellStyleData()?.n?.pattern ?? 'General',
    };
  };
  return new Map(wanted.map((name) => [name, read(name)]));
}

const asNumber = (value: number | string | null): number | null => (typeof value === 'number' ? value : null);

/** The charts of the sheet in view with the numbers it holds now. A row without an x is left out. */
export function liveCharts(grid: Grid): readonly LiveChart[] {
  const sheet = grid.api.getActiveWorkbook()?.getActiveSheet();
  if (!sheet) return [];
  const kept = keptWith(sheet.getSheet().getConfig());
  return (kept?.charts ?? []).flatMap((chart) => {
    const columns = columnsOf(grid, sheet, chart);
    const xs = columns?.get(chart.x)?.values;
    if (!columns || !xs) return [];
    const rows = xs.flatMap((x, row) =>
      (chart.type === 'line' ? typeof x === 'number' : x !== null && x !== '') ? [row] : [],
    );
    const { type, title, xTitle, yTitle } = chart;
    return [
      {
        type,
        title,
        xTitle,
        yTitle,
        x: rows.map((row) => xs[row] ?? ''),
        series: chart.series.map((name) => {
          const { values, format } = columns.get(name) ?? { values: [], format: 'General' };
          return { name, values: rows.map((row) => asNumber(values[row] ?? null)), format };
        }),
      },
    ];
  });
}
