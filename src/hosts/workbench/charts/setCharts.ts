import type { CustomData, IMutationInfo } from '@univerjs/core';
import type { BookChart } from '../../../book/chart';
import type { Grid } from '../grid/grid';
import { settingSheetData } from '../grid/sheetData';
import { KEY, keptWith } from '../book/keptWithSheet';

/** How the charts of a sheet become others, and how that is undone. */
export interface ChartChange {
  readonly redo: IMutationInfo;
  readonly undo: IMutationInfo;
}

/** Changes each chart of a sheet; nothing where it has none, or they stay as they are. */
export function chartChange(
  grid: Grid,
  sheetId: string,
  change: (chart: BookChart, index: number) => BookChart,
): ChartChange | undefined {
  const config = grid.api.getActiveWorkbook()?.getSheetBySheetId(sheetId)?.getSheet().getConfig();
  const kept = config && keptWith(config);
  if (!kept || kept.charts.length === 0) return undefined;
  const charts = kept.charts.map(change);
  if (JSON.stringify(charts) === JSON.stringify(kept.charts)) return undefined;
  const custom: CustomData = { ...config.custom };
  return {
    redo: settingSheetData(grid, sheetId, { ...custom, [KEY]: { ...kept, charts } }),
    undo: settingSheetData(grid, sheetId, custom),
  };
}
