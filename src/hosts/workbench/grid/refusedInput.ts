import {
  DOCS_FORMULA_BAR_EDITOR_UNIT_ID_KEY,
  DOCS_NORMAL_EDITOR_UNIT_ID_KEY,
  type DocumentDataModel,
  type ICellData,
  IUniverInstanceService,
} from '@univerjs/core';
import {
  DeviceInputEventType,
  IEditorService,
  KeyCode,
  MetaKeys,
  SetCellEditVisibleOperation,
  SetRangeValuesMutation,
  SheetsSelectionsService,
  VALIDATE_CELL,
} from '@univerjs/preset-sheets-core';
import type { FWorksheet } from '@univerjs/sheets/facade';
import { brokenRules } from './brokenRules';
import type { Grid } from './grid';
import { commands, inside, interceptors, unitId } from './inside';
import { isWriting } from './keyboard';

/** What was typed into a cell that does not allow it, and why it does not. */
export interface RefusedInput {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
  readonly typed: string;
  readonly reason: string;
}

/** Before the grid's own way to refuse, which is a dialog. */
const FIRST = 1;
/** The keys that write into all cells that are chosen. */
const INTO_ALL: ReadonlySet<number> = new Set(
  [MetaKeys.CTRL_COMMAND, MetaKeys.MAC_CTRL].map((meta) => meta | KeyCode.ENTER),
);

interface EditEnd {
  readonly visible: boolean;
  readonly keycode?: number;
}

/** Tells when somebody begins to write into a cell, or ends it. */
export const onWriting = (grid: Grid, tell: (end: EditEnd) => void) =>
  commands(grid).beforeCommandExecuted(({ id, params }) => {
    if (id === SetCellEditVisibleOperation.id) tell(params as EditEnd);
  });

function wordsInEditor(grid: Grid): string {
  const editor = inside(grid)
    .get(IUniverInstanceService)
    .getUnit<DocumentDataModel>(DOCS_NORMAL_EDITOR_UNIT_ID_KEY);
  return editor?.getBody()?.dataStream.replace(/\r\n$/, '') ?? '';
}

/** What a cell holds, and nothing of its look. */
type CellContents = Pick<ICellData, 'v' | 'f' | 'si' | 'p' | 't'>;

const contentsOf = (sheet: FWorksheet | null | undefined, row: number, column: number): CellContents => {
  const data = sheet?.getSheet().getCellRaw(row, column);
  return {
    v: data?.v ?? null,
    f: data?.f ?? null,
    si: data?.si ?? null,
    p: data?.p ?? null,
    t: data?.t ?? null,
  };
};

function contentsChosen({ api }: Grid): CellContents | undefined {
  const workbook = api.getActiveWorkbook();
  const cell = workbook?.getActiveCell();
  return cell ? contentsOf(workbook?.getActiveSheet(), cell.getRow(), cell.getColumn()) : undefined;
}

/**
 * The grid takes out again what a rule refuses, but only while that is the last step. Where another has come meanwhile, such as
 * a sheet that was inserted, the refused value would stay.
 */
function putBack(
  grid: Grid,
  { sheetId, row, column }: Pick<RefusedInput, 'sheetId' | 'row' | 'column'>,
  former: CellContents | undefined,
): void {
  const sheet = grid.api.getActiveWorkbook()?.getSheetBySheetId(sheetId);
  const now = contentsOf(sheet, row, column);
  if (!former || !sheet || (now.v === former.v && now.f === former.f && now.si === former.si)) return;
  commands(grid).syncExecuteCommand(SetRangeValuesMutation.id, {
    unitId: unitId(grid),
    subUnitId: sheetId,
    cellValue: { [row]: { [column]: former } },
  });
}

/** The cells take what was typed; where rules do not allow it the grid takes it out again, and this tells it. */
export function onRefusedInput(grid: Grid, refused: (input: RefusedInput) => void): void {
  let former: CellContents | undefined;
  let last = { typed: '', isForAll: false };
  onWriting(grid, ({ visible, keycode }) => {
    if (visible) former = contentsChosen(grid);
    else last = { typed: wordsInEditor(grid), isForAll: INTO_ALL.has(keycode ?? 0) };
  });
  const chosen = () =>
    inside(grid)
      .get(SheetsSelectionsService)
      .getCurrentSelections()
      .map(({ range }) => range);
  interceptors(grid).writeCellInterceptor.intercept(VALIDATE_CELL, {
    priority: FIRST,
    handler: async (before, { subUnitId: sheetId, row, col: column }) => {
      const { typed, isForAll } = last;
      const cell = { startRow: row, endRow: row, startColumn: column, endColumn: column };
      const written = isForAll ? [cell, ...chosen()] : [cell];
      if (before && !(await before)) return false;
      const [broken] = await brokenRules(grid, sheetId, written);
      // once the grid has taken it out and closed its editor
      if (broken)
        setTimeout(() => {
          putBack(grid, { sheetId, row, column }, former);
          refused({ sheetId, row, column, typed, reason: broken.reason });
        });
      return !broken;
    },
  });
}

/** Opens a cell to be written into, with words that are not in it: all of them chosen, so that others can be typed over them. */
export function writeAgain(grid: Grid, { sheetId, row, column, typed }: RefusedInput): void {
  // Somebody who types fast may have begun anew.
  if (isWriting(grid)) return;
  const workbook = grid.api.getActiveWorkbook();
  const sheet = workbook?.getSheetBySheetId(sheetId);
  if (!workbook || !sheet) return;
  if (workbook.getActiveSheet().getSheetId() !== sheetId) workbook.setActiveSheet(sheet);
  const active = workbook.getActiveCell();
  if (active?.getRow() !== row || active.getColumn() !== column) sheet.getRange(row, column).activate();
  commands(grid).syncExecuteCommand(SetCellEditVisibleOperation.id, {
    visible: true,
    eventType: DeviceInputEventType.Dblclick,
    unitId: unitId(grid),
  });
  const editors = inside(grid).get(IEditorService);
  // the line above the cells shows the same
  editors.getEditor(DOCS_FORMULA_BAR_EDITOR_UNIT_ID_KEY)?.replaceText(typed, false);
  editors
    .getEditor(DOCS_NORMAL_EDITOR_UNIT_ID_KEY)
    ?.replaceText(typed, [{ startOffset: 0, endOffset: typed.length, collapsed: false }]);
}

/** Gives up what is being written: the cell keeps what it had. */
export const giveUpWriting = (grid: Grid): void => {
  commands(grid).syncExecuteCommand(SetCellEditVisibleOperation.id, {
    visible: false,
    eventType: DeviceInputEventType.Keyboard,
    keycode: KeyCode.ESC,
    unitId: unitId(grid),
  });
};
