import {
  Direction,
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
  MoveSelectionCommand,
  MoveSelectionEnterAndTabCommand,
  SetCellEditVisibleOperation,
  SetRangeValuesMutation,
  SheetsSelectionsService,
  VALIDATE_CELL,
} from '@univerjs/preset-sheets-core';
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { Place } from '../../../formula/address';
import { brokenRules } from './brokenRules';
import { editingEnded } from './editingEnded';
import type { Grid } from './grid';
import { commands, inside, interceptors, unitId } from './inside';
import { isWriting } from './keyboard';
import { oneStepDone } from './oneStep';
import { type Step, stepsBefore } from './undoSteps';

export type SheetPlace = Place & { readonly sheetId: string };

export const isAt = (a: SheetPlace, b: SheetPlace): boolean =>
  a.sheetId === b.sheetId && a.row === b.row && a.column === b.column;

/** What was typed into a cell that does not allow it, and why it does not. */
export interface RefusedInput extends SheetPlace {
  readonly typed: string;
  readonly reason: string;
  /** Goes where the key or the click led that ended the typing, if it led anywhere. */
  readonly goOn: (() => void) | undefined;
}

/** Before the grid's own way to refuse, which is a dialog. */
const FIRST = 1;
/** The keys that write into all cells that are chosen. */
const INTO_ALL: ReadonlySet<number> = new Set(
  [MetaKeys.CTRL_COMMAND, MetaKeys.MAC_CTRL].map((meta) => meta | KeyCode.ENTER),
);
/** A key with Shift. */
export const backwards = (keycode: KeyCode): number => keycode | MetaKeys.SHIFT;
/** Where the keys that end the typing lead. */
const DIRECTIONS: ReadonlyMap<number, Direction> = new Map<number, Direction>([
  [KeyCode.ENTER, Direction.DOWN],
  [KeyCode.TAB, Direction.RIGHT],
  [backwards(KeyCode.ENTER), Direction.UP],
  [backwards(KeyCode.TAB), Direction.LEFT],
  [KeyCode.ARROW_DOWN, Direction.DOWN],
  [KeyCode.ARROW_RIGHT, Direction.RIGHT],
  [KeyCode.ARROW_UP, Direction.UP],
  [KeyCode.ARROW_LEFT, Direction.LEFT],
]);

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

/** The chosen cell of the sheet in view. */
export function chosenPlace({ api }: Grid): SheetPlace | undefined {
  const workbook = api.getActiveWorkbook();
  const cell = workbook?.getActiveCell();
  if (!workbook || !cell) return undefined;
  return { sheetId: workbook.getActiveSheet().getSheetId(), row: cell.getRow(), column: cell.getColumn() };
}

function contentsChosen(grid: Grid): CellContents | undefined {
  const place = chosenPlace(grid);
  const sheet = place && grid.api.getActiveWorkbook()?.getSheetBySheetId(place.sheetId);
  return place && contentsOf(sheet, place.row, place.column);
}

/**
 * The grid takes out again what a rule refuses, but only while that is the last step. Where another has come meanwhile, such as
 * a sheet that was inserted, the refused value would stay.
 */
function putBack(grid: Grid, { sheetId, row, column }: SheetPlace, former: CellContents | undefined): void {
  const sheet = grid.api.getActiveWorkbook()?.getSheetBySheetId(sheetId);
  const now = contentsOf(sheet, row, column);
  if (!former || !sheet || (now.v === former.v && now.f === former.f && now.si === former.si)) return;
  commands(grid).syncExecuteCommand(SetRangeValuesMutation.id, {
    unitId: unitId(grid),
    subUnitId: sheetId,
    cellValue: { [row]: { [column]: former } },
  });
}

/** Chooses a cell, and shows its sheet. */
export function goTo(grid: Grid, { sheetId, row, column }: SheetPlace): void {
  const workbook = grid.api.getActiveWorkbook();
  const sheet = workbook?.getSheetBySheetId(sheetId);
  if (!workbook || !sheet) return;
  const at = chosenPlace(grid);
  if (at?.sheetId !== sheetId) workbook.setActiveSheet(sheet);
  if (at?.sheetId !== sheetId || at.row !== row || at.column !== column)
    sheet.getRange(row, column).activate();
}

function wayBy(grid: Grid, keycode: number): (() => void) | undefined {
  const direction = DIRECTIONS.get(keycode);
  if (direction === undefined) return undefined;
  const key = keycode & ~MetaKeys.SHIFT;
  return key === KeyCode.ENTER || key === KeyCode.TAB
    ? () =>
        void commands(grid).executeCommand(MoveSelectionEnterAndTabCommand.id, { direction, keycode: key })
    : () => void commands(grid).executeCommand(MoveSelectionCommand.id, { direction });
}

/** The cells take what was typed; where rules do not allow it the grid takes it out again, and this tells it. */
export function onRefusedInput(grid: Grid, refused: (input: RefusedInput) => void): void {
  let former: CellContents | undefined;
  let last = { typed: '', keycode: 0, steps: undefined as Step | undefined };
  onWriting(grid, ({ visible, keycode = 0 }) => {
    if (visible) former = contentsChosen(grid);
    else last = { typed: wordsInEditor(grid), keycode, steps: stepsBefore(grid) };
  });
  const chosen = () =>
    inside(grid)
      .get(SheetsSelectionsService)
      .getCurrentSelections()
      .map(({ range }) => range);
  interceptors(grid).writeCellInterceptor.intercept(VALIDATE_CELL, {
    priority: FIRST,
    handler: async (before, { subUnitId: sheetId, row, col: column }) => {
      const { typed, keycode, steps } = last;
      const [place, held] = [{ sheetId, row, column }, former];
      const cell = { startRow: row, endRow: row, startColumn: column, endColumn: column };
      const written = INTO_ALL.has(keycode) ? [cell, ...chosen()] : [cell];
      steps?.see();
      if (before && !(await before)) return false;
      const [broken] = await brokenRules(grid, sheetId, written);
      if (broken)
        void editingEnded(grid).then(async () => {
          putBack(grid, place, held);
          steps?.forget();
          const at = chosenPlace(grid);
          // a cell that is open again would be closed by a sheet that comes in, and its refusal take out all of the step
          await oneStepDone();
          const isElsewhere = at && (at.sheetId !== sheetId || at.row !== row || at.column !== column);
          const goOn = isElsewhere ? () => goTo(grid, at) : wayBy(grid, keycode);
          refused({ ...place, typed, reason: broken.reason, goOn });
        });
      return !broken;
    },
  });
}

/** Opens a cell to be written into, with words that are not in it: all of them chosen, so that others can be typed over them. */
export function writeAgain(grid: Grid, { typed, ...place }: SheetPlace & Pick<RefusedInput, 'typed'>): void {
  if (!grid.api.getActiveWorkbook()?.getSheetBySheetId(place.sheetId)) return;
  goTo(grid, place);
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
  if (!isWriting(grid)) return;
  commands(grid).syncExecuteCommand(SetCellEditVisibleOperation.id, {
    visible: false,
    eventType: DeviceInputEventType.Keyboard,
    keycode: KeyCode.ESC,
    unitId: unitId(grid),
  });
};
