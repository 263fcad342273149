import type { IRange } from '@univerjs/core';
import {
  AutoFillCommand,
  MoveRangeCommand,
  RefillCommand,
  SheetsSelectionsService,
} from '@univerjs/preset-sheets-core';
import { NOTHING } from '../tables/newTableRows';
import type { Grid } from './grid';
import { clipboard, commands, inside } from './inside';

/** What fills cells that are chosen afterwards. */
const FILLS: readonly string[] = [AutoFillCommand.id, RefillCommand.id, MoveRangeCommand.id];

/** Calls when cells have been filled otherwise than by typing: pasted, drawn out or moved. They are the chosen ones then. */
export function onPutIn(grid: Grid, id: string, look: (areas: readonly IRange[]) => void): void {
  const lookAtChosen = (): void =>
    look(
      inside(grid)
        .get(SheetsSelectionsService)
        .getCurrentSelections()
        .map(({ range }) => range),
    );
  clipboard(grid).addClipboardHook({
    id,
    onAfterPaste(success) {
      if (success) lookAtChosen();
    },
    // one text is pasted right behind this, and nobody is told when
    onPastePlainText() {
      setTimeout(lookAtChosen);
      return NOTHING;
    },
  });
  commands(grid).onCommandExecuted((command) => {
    if (FILLS.includes(command.id)) lookAtChosen();
  });
}
