import type { CustomData, IMutationInfo } from '@univerjs/core';
import type { BookPicture } from '../../../book/picture';
import type { Grid } from '../grid/grid';
import { settingSheetData } from '../grid/sheetData';
import { KEY, type Kept, keptWith } from '../book/keptWithSheet';
import { pageOfOwn } from '../book/printedPage';

/** How what is kept with a sheet becomes something else, and how that is undone. */
export interface KeptChange {
  readonly redo: IMutationInfo;
  readonly undo: IMutationInfo;
}

/** What a sheet keeps where nothing was kept with it yet. */
const nothingKept = (name: string): Kept => ({
  charts: [],
  places: 'sheet',
  page: pageOfOwn(name),
});

/** Has pictures stand on a sheet in the place of those that do; nothing where the same stand there. */
export const pictureChange = (
  grid: Grid,
  sheetId: string,
  pictures: readonly BookPicture[],
): KeptChange | undefined => changeOf(grid, sheetId, nothingKept, (kept) => ({ ...kept, pictures }));

/** Changes what is kept with a sheet; nothing where it keeps nothing, or that stays as it is. */
export function keptChange(
  grid: Grid,
  sheetId: string,
  change: (kept: Kept) => Kept,
): KeptChange | undefined {
  return changeOf(grid, sheetId, () => undefined, change);
}

function changeOf(
  grid: Grid,
  sheetId: string,
  orElse: (name: string) => Kept | undefined,
  change: (kept: Kept) => Kept,
): KeptChange | undefined {
  const config = grid.api.getActiveWorkbook()?.getSheetBySheetId(sheetId)?.getSheet().getConfig();
  const kept = config && (keptWith(config) ?? orElse(config.name));
  if (!kept) return undefined;
  const now = change(kept);
  if (JSON.stringify(now) === JSON.stringify(kept)) return undefined;
  const custom: CustomData = { ...config.custom };
  return {
    redo: settingSheetData(grid, sheetId, { ...custom, [KEY]: now }),
    undo: settingSheetData(grid, sheetId, custom),
  };
}
