import { type ISheetDataValidationRule, Rectangle } from '@univerjs/core';
import {
  AddSheetDataValidationCommand,
  type IAddSheetDataValidationCommandParams,
} from '@univerjs/preset-sheets-data-validation';
import type { Grid } from './grid';
import { commands } from './inside';
import { inputRules } from './rules';
import { undoKey } from './undoKey';

function sentence([first, ...more]: readonly ISheetDataValidationRule[]): string | undefined {
  if (!first) return undefined;
  const rule = first.error ? `, “${first.error}”` : '';
  return more.length === 0
    ? `A rule stood in these cells${rule}. The new one takes its place there; ${undoKey()} in the cells brings it back.`
    : `${more.length + 1} rules stood in these cells. The new one takes their place there; ${undoKey()} in the cells brings them back.`;
}

/** A cell has one rule: where another is added, the grid takes the one that was there away, and this tells of it. */
export function tellReplacedRules(grid: Grid, say: (words: string) => void): void {
  let had: readonly ISheetDataValidationRule[] = [];
  commands(grid).beforeCommandExecuted(({ id, params }) => {
    if (id !== AddSheetDataValidationCommand.id) return;
    const { subUnitId, rule } = params as IAddSheetDataValidationCommandParams;
    had = inputRules(grid, subUnitId).filter(({ ranges }) =>
      ranges.some((range) => rule.ranges.some((taken) => Rectangle.intersects(range, taken))),
    );
  });
  commands(grid).onCommandExecuted(({ id }) => {
    const words = id === AddSheetDataValidationCommand.id ? sentence(had) : undefined;
    if (words !== undefined) say(words);
  });
}
