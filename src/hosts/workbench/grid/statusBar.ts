import { FUNCTION_NAMES_MATH, FUNCTION_NAMES_STATISTICAL } from '@univerjs/engine-formula';
import { IStatusBarService, SheetsSelectionsService } from '@univerjs/preset-sheets-core';
import { summableUnits } from '../book/summable';
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

/** The number formats of the numbers among the chosen cells; undefined where these are too many. */
function formatsChosen(grid: Grid): readonly string[] | undefined {
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
  for (const { rows, columns } of areas)
    for (let row = rows[0]; row <= rows[1]; row++)
      for (let column = columns[0]; column <= columns[1]; column++)
        if (typeof shownValue(grid, sheet.getSheetId(), row, column) === 'number')
          formats.push(sheet.getRange(row, column).getNumberFormat());
  return formats;
}

/** Below the cells, sums only what can be summed: two numbers or more of one unit, and no f-numbers. How many there are is told always. */
export function sumWhatCanBeSummed(grid: Grid): void {
  const bar = inside(grid).get(IStatusBarService);
  const show = bar.setState.bind(bar);
  bar.setState = (state) => {
    const formats = state ? formatsChosen(grid) : undefined;
    if (!state || (formats && formats.length > 1 && summableUnits(formats))) return show(state);
    show({ ...state, values: state.values.filter(({ func }) => !OF_ONE_THING.has(String(func))) });
  };
}
