import { FUNCTION_NAMES_MATH, FUNCTION_NAMES_STATISTICAL } from '@univerjs/engine-formula';
import { IStatusBarService, SheetsSelectionsService } from '@univerjs/preset-sheets-core';
import { isLikeNumber, summableUnits } from '../book/summable';
import type { Grid } from './grid';
import { inside } from './inside';
import { shownValue } from './shownValue';

/** Which have no meaning where the chosen cells hold different things. */
const OF_ONE_THING: ReadonlySet<string> = new Set([
  FUNCTION_NAMES_MATH.SUM,
  FUNCTION_NAMES_STATISTICAL.AVERAGE,
  FUNCTION_NAMES_STATISTICAL.MIN,
  FUNCTION_NAMES_STATISTICAL.MAX,
]);
/** More cells than a person chooses to add up: reading them would hold up the page. */
const MOST = 5000;

/** What is known of the chosen cells: the number formats of their numbers, and whether one has a text in place of a number. */
interface Chosen {
  readonly formats: readonly string[];
  readonly hasText: boolean;
}

/** Undefined where these are too many. */
function chosenCells(grid: Grid): Chosen | undefined {
  const sheet = grid.api.getActiveWorkbook()?.getActiveSheet();
  if (!sheet) return undefined;
  // What is chosen may reach below the last row for a moment, where rows were just taken away.
  const areas = inside(grid)
    .get(SheetsSelectionsService)
    .getCurrentSelections()
    .map(({ range }) => ({
      rows: [Math.max(range.startRow, 0), Math.min(range.endRow, sheet.getMaxRows() - 1)] as const,
      columns: [
        Math.max(range.startColumn, 0),
        Math.min(range.endColumn, sheet.getMaxColumns() - 1),
      ] as const,
    }));
  const cells = ({ rows, columns }: (typeof areas)[number]): number =>
    (rows[1] - rows[0] + 1) * (columns[1] - columns[0] + 1);
  if (areas.reduce((sum, area) => sum + cells(area), 0) > MOST) return undefined;
  const formats: string[] = [];
  let hasText = false;
  for (const { rows, columns } of areas)
    for (let row = rows[0]; row <= rows[1]; row++)
      for (let column = columns[0]; column <= columns[1]; column++) {
        const value = shownValue(grid, sheet.getSheetId(), row, column);
        if (typeof value === 'number') formats.push(sheet.getRange(row, column).getNumberFormat());
        else hasText ||= typeof value === 'string' && isLikeNumber(value);
      }
  return { formats, hasText };
}

/**
 * Below the cells, sums only what can be summed: two numbers or more of one unit, no f-numbers, and nothing that a sum would pass
 * over. How many there are is told always.
 */
export function sumWhatCanBeSummed(grid: Grid): void {
  const bar = inside(grid).get(IStatusBarService);
  const show = bar.setState.bind(bar);
  bar.setState = (state) => {
    const { formats, hasText } = (state && chosenCells(grid)) ?? { formats: [], hasText: true };
    if (!state) return show(state);
    if (!hasText && formats.length > 1 && summableUnits(formats))
      // the grid takes the format of the first cell, which may be another thing, or empty
      return show({ ...state, pattern: formats[0] ?? null });
    show({ ...state, values: state.values.filter(({ func }) => !OF_ONE_THING.has(String(func))) });
  };
}
