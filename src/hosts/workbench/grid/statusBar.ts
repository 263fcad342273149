import { FUNCTION_NAMES_MATH, FUNCTION_NAMES_STATISTICAL } from '@univerjs/engine-formula';
import { IStatusBarService } from '@univerjs/preset-sheets-core';
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
  const ranges = sheet?.getSelection()?.getActiveRangeList() ?? [];
  if (!sheet || ranges.reduce((sum, range) => sum + range.getHeight() * range.getWidth(), 0) > MOST)
    return undefined;
  const formats: string[] = [];
  for (const range of ranges)
    for (let row = range.getRow(); row <= range.getLastRow(); row++)
      for (let column = range.getColumn(); column <= range.getLastColumn(); column++)
        if (typeof shownValue(grid, sheet.getSheetId(), row, column) === 'number')
          formats.push(sheet.getRange(row, column).getNumberFormat());
  return formats;
}

/** Below the cells, sums only what can be summed: numbers of one unit, and no f-numbers. How many there are is told always. */
export function sumWhatCanBeSummed(grid: Grid): void {
  const bar = inside(grid).get(IStatusBarService);
  const show = bar.setState.bind(bar);
  bar.setState = (state) => {
    const formats = state ? formatsChosen(grid) : undefined;
    if (!state || (formats && summableUnits(formats))) return show(state);
    show({ ...state, values: state.values.filter(({ func }) => !OF_ONE_THING.has(String(func))) });
  };
}
