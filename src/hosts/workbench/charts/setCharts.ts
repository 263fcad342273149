import type { CustomData, IMutationInfo } from '@univerjs/core';
import type { BookChart } from '../../../book/chart';
import type { Grid } from '../grid/grid';
import { settingSheetData } from '../grid/sheetData';
import { KEY, type Kept, keptWith } from '../book/keptWithSheet';

/** How what is kept with a sheet becomes something else, and how that is undone. */
export interface KeptChange {
  readonly redo: IMutationInfo;
  readonly undo: IMutationInfo;
}

/** Changes what is kept with a sheet; nothing where it keeps nothing, or that stays as it is. */
export function keptChange(
  grid: Grid,
  sheetId: string,
  change: (kept: Kept) => Kept,
): KeptChange | undefined {
  const config = grid.api.getActiveWorkbook()?.getSheetBySheetId(sheetId)?.getSheet().getConfig();
  const kept = config && keptWith(config);
  if (!kept) return undefined;
  const now = change(kept);
  if (JSON.stringify(now) === JSON.stringify(kept)) return undefined;
  const custom: CustomData = { ...config.custom };
  return {
    redo: settingSheetData(grid, sheetId, { ...custom, [KEY]: now }),
    undo: settingSheetData(grid, sheetId, custom),
  };
}

/** Changes each chart of a sheet; nothing where it has none, or they stay as they are. */
export const chartChange = (
  grid: Grid,
  sheetId: string,
  change: (chart: BookChart, index: number) => BookChart,
): KeptChange | undefined =>
  keptChange(grid, sheetId, (kept) => ({ ...kept, charts: kept.charts.map(change) }));
