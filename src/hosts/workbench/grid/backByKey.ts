import { Direction } from '@univerjs/core';
import {
  DeviceInputEventType,
  KeyCode,
  MoveSelectionEnterAndTabCommand,
  SetCellEditVisibleOperation,
} from '@univerjs/preset-sheets-core';
import { editingEnded } from './editingEnded';
import type { Grid } from './grid';
import { commands, unitId } from './inside';
import { isWriting } from './keyboard';
import { backwards } from './refusedInput';
import { takeKey } from './takeKey';

const BACK: Readonly<Record<string, readonly [keycode: KeyCode, direction: Direction]>> = {
  Enter: [KeyCode.ENTER, Direction.UP],
  Tab: [KeyCode.TAB, Direction.LEFT],
};

/** Shift+Enter and Shift+Tab end the writing in a cell and go to the one before: the grid lets them do so only where nobody writes. */
export function backByKey(grid: Grid): void {
  const isInGrid = (): boolean => document.activeElement?.closest('#grid') != null;
  takeKey(
    ({ key, shiftKey, ctrlKey, altKey, metaKey }) =>
      BACK[key] !== undefined && shiftKey && !ctrlKey && !altKey && !metaKey && isWriting(grid) && isInGrid(),
    ({ key }) => {
      const [keycode, direction] = BACK[key] ?? [];
      if (keycode === undefined || direction === undefined) return;
      commands(grid).syncExecuteCommand(SetCellEditVisibleOperation.id, {
        visible: false,
        eventType: DeviceInputEventType.Keyboard,
        keycode: backwards(keycode),
        unitId: unitId(grid),
      });
      void editingEnded(grid).then(() => {
        // a value that is not taken is open again
        if (!isWriting(grid))
          void commands(grid).executeCommand(MoveSelectionEnterAndTabCommand.id, { keycode, direction });
      });
    },
  );
}
