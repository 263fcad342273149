import type { FWorksheet } from '@univerjs/sheets/facade';
import { columnName } from '../../../formula/address';
import { errorFromText } from '../../../formula/errors';
import type { SheetAsRead } from '../../../set/sheetAsRead';
import { tableShapes } from '../charts/tableShapes';

/** More rows and columns than this are no sheet of a set. */
const MOST = { rows: 2000, columns: 200 } as const;
const BEYOND = `Of this sheet only ${MOST.rows} rows and the columns up to ${columnName(MOST.columns - 1)} are read: what stands beyond them is not in the picture.`;

/** A sheet with what its cells show. */
export function sheetAsRead(sheet: FWorksheet): SheetAsRead {
  const used = { rows: sheet.getLastRow() + 1, columns: sheet.getLastColumn() + 1 };
  const rows = Math.min(used.rows, MOST.rows);
  const columns = Math.min(used.columns, MOST.columns);
  const cells =
    rows < 1 || columns < 1
      ? []
      : sheet
          .getRange(0, 0, rows, columns)
          .getCellDatas()
          .map((line) => line.map((cell) => errorFromText(cell?.v ?? '')));
  const isCut = used.rows > rows || used.columns > columns;
  return {
    name: sheet.getSheetName(),
    cells,
    tables: tableShapes(sheet).map(({ area }) => area),
    ...(isCut ? { unread: BEYOND } : {}),
  };
}
