import { Direction } from '@univerjs/core';
import { KeyCode, MoveSelectionEnterAndTabCommand } from '@univerjs/preset-sheets-core';

/** Asks before Tab goes on to the next cell; whether something else was done instead. */
export function beforeTab(isDone: () => boolean): void {
  const move = MoveSelectionEnterAndTabCommand.handler;
  MoveSelectionEnterAndTabCommand.handler = (accessor, params) => {
    const isTab = params?.keycode === KeyCode.TAB && params.direction === Direction.RIGHT;
    return (isTab && isDone()) || move(accessor, params);
  };
}
