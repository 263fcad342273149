import { ILayoutService } from '@univerjs/preset-sheets-core';
import type { Grid } from './grid';
import { inside } from './inside';

/** Gives the grid the keyboard: what is typed next goes into the chosen cell. */
export const takeKeyboard = (grid: Grid): void => inside(grid).get(ILayoutService).focus();
