import type { FWorksheet } from '@univerjs/sheets/facade';
import { errorFromText } from '../../../formula/errors';
import type { SheetAsRead } from '../../../set/sheetAsRead';
import { tableShapes } from '../charts/tableShapes';

/** More rows and columns than this are no sheet of a set. */
const MOST = { rows: 2000, columns: 200 } as const;

/** A sheet with what its cells show. */
export function sheetAsRead(sheet: FWorksheet): SheetAsRead {
  const rows = Math.min(sheet.getLastRow() + 1, MOST.rows);
  const columns = Math.min(sheet.getLastColumn() + 1, MOST.columns);
  const cells =
    rows < 1 || columns < 1
      ? []
      : sheet
          .getRange(0, 0, rows, columns)
          .getCellDatas()
          .map((line) => line.map((cell) => errorFromText(cell?.v ?? '')));
  return { name: sheet.getSheetName(), cells, tables: tableShapes(sheet).map(({ area }) => area) };
}
