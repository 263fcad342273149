import type { Grid } from '../grid/grid';

/** Columns of a sheet, from 0, that somebody has hidden. A book of it shows them. */
export function hiddenColumns({ api }: Pick<Grid, 'api'>, name: string): number[] {
  const sheet = api.getActiveWorkbook()?.getSheetByName(name)?.getSheet();
  if (!sheet) return [];
  return Array.from({ length: sheet.getColumnCount() }, (_, column) => column).filter(
    (column) => !sheet.getColVisible(column),
  );
}
