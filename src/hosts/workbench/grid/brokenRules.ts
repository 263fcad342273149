import { DataValidationErrorStyle, DataValidationStatus, type IRange, Rectangle } from '@univerjs/core';
import {
  DataValidatorRegistryService,
  SheetsDataValidationValidatorService,
} from '@univerjs/preset-sheets-data-validation';
import type { Grid } from './grid';
import { inside, unitId } from './inside';
import { inputRules } from './rules';

/** A cell that holds what its rule does not allow, and what the rule says to that. */
export interface BrokenRule {
  readonly row: number;
  readonly column: number;
  readonly reason: string;
}

/** Which cells of some areas hold what their rules refuse. Cells of a rule that only warns are not among them. */
export async function brokenRules(
  grid: Grid,
  subUnitId: string,
  areas: readonly IRange[],
): Promise<readonly BrokenRule[]> {
  const unit = unitId(grid);
  const validators = inside(grid).get(DataValidatorRegistryService);
  const judge = inside(grid).get(SheetsDataValidationValidatorService);
  const broken: BrokenRule[] = [];
  for (const rule of inputRules(grid, subUnitId)) {
    const validator = validators.getValidatorItem(rule.type);
    if (!validator || rule.errorStyle !== DataValidationErrorStyle.STOP) continue;
    const asked = areas.flatMap((area) =>
      rule.ranges.flatMap((range) => Rectangle.getIntersects(area, range) ?? []),
    );
    for (const { startRow, endRow, startColumn, endColumn } of Rectangle.mergeRanges(asked))
      for (let row = startRow; row <= endRow; row++)
        for (let column = startColumn; column <= endColumn; column++) {
          const status = await judge.validatorCell(unit, subUnitId, row, column);
          if (status === DataValidationStatus.VALID) continue;
          const place = { row, col: column, unitId: unit, subUnitId };
          broken.push({ row, column, reason: validator.getRuleFinalError(rule, place) });
        }
  }
  return broken.sort((a, b) => a.row - b.row || a.column - b.column);
}

/** What is said of cells that hold what their rules refuse: the reason of the first, and how many more there are. */
export function sayBroken([first, ...more]: readonly BrokenRule[]): string {
  const so =
    more.length === 0
      ? ''
      : more.length === 1
        ? ' So is one more of these cells.'
        : ` So are ${more.length} more of these cells.`;
  return first ? `${first.reason} It is marked.${so}` : '';
}
