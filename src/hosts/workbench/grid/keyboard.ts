import type { IDisposable } from '@univerjs/core';
import { ILayoutService, IShortcutService } from '@univerjs/preset-sheets-core';
import type { Grid } from './grid';
import { inside } from './inside';

/** Gives the grid the keyboard: what is typed next goes into the chosen cell. */
export const takeKeyboard = (grid: Grid): void => inside(grid).get(ILayoutService).focus();

/** Lets the grid's own keys rest, until that is taken back. */
export const restKeys = (grid: Grid): IDisposable => inside(grid).get(IShortcutService).forceEscape();
