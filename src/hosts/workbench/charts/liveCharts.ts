import type { FWorksheet } from '@univerjs/sheets/facade';
import { type BookChart, type DrawnChart, drawnChart } from '../../../book/chart';
import type { Area } from '../../../formula/area';
import { keptCharts, keptWith } from '../book/keptWithSheet';
import type { LiveChart } from './liveChart';
import { kindOver, rowsDrawn } from './rowsDrawn';
import { tableShapes } from './tableShapes';

interface ReadCells {
  readonly values: readonly (number | string | null)[];
  readonly format: string;
}

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

/** A chart as its sheet keeps it, and as it shows now. */
export interface PlacedChart {
  readonly kept: BookChart;
  readonly live: LiveChart;
}

/** The charts of a sheet. A row without an x is left out. */
export function liveCharts(sheet: FWorksheet): readonly PlacedChart[] {
  const tables = tableShapes(sheet);
  return keptCharts(keptWith(sheet.getSheet().getConfig()), tables).map((kept) => {
    const drawn = drawnChart(kept, tables);
    return {
      kept,
      live: drawn ? liveChart(sheet, drawn) : nothingLeft(kept),
    };
  });
}

/** A chart whose cells are gone. */
const nothingLeft = ({ kind, title, xTitle, yTitle }: BookChart): LiveChart => ({
  kind,
  title,
  xTitle,
  yTitle,
  x: [],
  xFormat: 'General',
  series: [],
});

function liveChart(sheet: FWorksheet, { title, xTitle, yTitle, ...chart }: DrawnChart): LiveChart {
  const { values: xs, format: xFormat } = readCells(sheet, chart.x);
  const kind = kindOver(chart.kind, xs);
  const rows = rowsDrawn(kind, xs);
  const names = chart.names && readCells(sheet, chart.names).values;
  return {
    kind,
    title,
    xTitle,
    yTitle,
    x: rows.map((row) => xs[row] ?? ''),
    xFormat,
    ...(names ? { names: rows.map((row) => String(names[row] ?? '')) } : {}),
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
