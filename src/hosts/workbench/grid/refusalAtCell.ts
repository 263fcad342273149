import { DOCS_NORMAL_EDITOR_UNIT_ID_KEY } from '@univerjs/core';
import {
  CellAlertManagerService,
  CellAlertType,
  DeviceInputEventType,
  IDialogService,
  IEditorBridgeService,
  IEditorService,
  SetCellEditVisibleOperation,
} from '@univerjs/preset-sheets-core';
import { createElement } from 'react';
import { filter, take } from 'rxjs';
import type { Grid } from './grid';
import { commands, inside, unitId } from './inside';

/** What the grid calls the dialog that says why a cell does not take what was typed. */
const REFUSAL = 'reject-input-dialog';
const KEY = 'sweeptable-refusal';
/** Room the grid keeps free beside the cell when it places the tip. */
const SIZE = { width: 320, height: 112 };
/** The grid puts the former value back after it has asked for its dialog. */
const AFTER_THAT = 0;

interface Refused {
  readonly row: number;
  readonly column: number;
  readonly sheetId: string;
  readonly typed: string;
}

const typedNow = (grid: Grid): string => {
  const document = inside(grid)
    .get(IEditorService)
    .getEditor(DOCS_NORMAL_EDITOR_UNIT_ID_KEY)
    ?.getDocumentData();
  return (document?.body?.dataStream ?? '').replace(/\r\n$/, '').replaceAll('\r', '\n');
};

/** Gives the cell that was left last, with what was typed into it: by the time that it is refused the grid knows it no more. */
function watchLeft(grid: Grid): () => Refused | undefined {
  const bridge = inside(grid).get(IEditorBridgeService);
  let left: Refused | undefined;
  let written: Omit<Refused, 'typed'> | undefined;
  bridge.visible$.subscribe(({ visible }) => {
    const place = bridge.getEditLocation();
    if (place) written = { row: place.row, column: place.column, sheetId: place.sheetId };
    left = !visible && written ? { ...written, typed: typedNow(grid) } : undefined;
  });
  return () => left;
}

/** Whether a cell is the chosen one: a key has left its editor, and not a press on another cell. */
function isChosen(grid: Grid, { row, column, sheetId }: Refused): boolean {
  const workbook = grid.api.getActiveWorkbook();
  const chosen = workbook?.getActiveRange();
  return (
    workbook?.getActiveSheet().getSheetId() === sheetId &&
    chosen?.getRow() === row &&
    chosen.getColumn() === column
  );
}

/** Opens the cell for writing again, with what was typed. */
function openAgain(grid: Grid, typed: string): void {
  commands(grid).syncExecuteCommand(SetCellEditVisibleOperation.id, {
    visible: true,
    eventType: DeviceInputEventType.Dblclick,
    unitId: unitId(grid),
  });
  inside(grid).get(IEditorService).getEditor(DOCS_NORMAL_EDITOR_UNIT_ID_KEY)?.replaceText(typed);
}

function tellAt(grid: Grid, { row, column, sheetId, typed }: Refused, why: string): void {
  const workbook = grid.api.getActiveWorkbook()?.getWorkbook();
  if (!workbook) return;
  const alerts = inside(grid).get(CellAlertManagerService);
  alerts.showAlert({
    ...SIZE,
    type: CellAlertType.ERROR,
    title: `Not taken: ${typed}`,
    message: createElement('span', { className: 'tip', role: 'alert' }, why),
    location: { row, col: column, unitId: workbook.getUnitId(), subUnitId: sheetId },
    key: KEY,
  });
  const { visible$ } = inside(grid).get(IEditorBridgeService);
  const close = (): void => alerts.removeAlert(KEY);
  visible$
    .pipe(
      filter(({ visible }) => !visible),
      take(1),
    )
    .subscribe(close);
  const chosen = grid.api.addEvent(grid.api.Event.SelectionChanged, () => {
    chosen.dispose();
    close();
  });
}

/**
 * Says at the cell why it does not take what was typed, and keeps that there to be mended: Escape gives it up. The grid's own
 * way is a dialog over the page, behind which it is lost. Call it once a workbook is open.
 */
export function refuseAtCell(grid: Grid): void {
  const left = watchLeft(grid);
  const dialogs = inside(grid).get(IDialogService);
  const open = dialogs.open.bind(dialogs);
  dialogs.open = (dialog) => {
    const refused = dialog.id === REFUSAL ? left() : undefined;
    if (!refused) return open(dialog);
    const why = String(dialog.children?.title ?? '');
    setTimeout(() => {
      if (isChosen(grid, refused)) openAgain(grid, refused.typed);
      tellAt(grid, refused, why);
    }, AFTER_THAT);
    return { dispose: () => inside(grid).get(CellAlertManagerService).removeAlert(KEY) };
  };
}
