import type { BookChart } from '../../../book/chart';
import type { InputRule, SheetPlan } from '../../../sheets/plan';
import { THEME } from '../../../sheets/theme';
import type { BookCell, BookRule, BookSheet } from '../../../book/book';
import { sheetFromPlan, styleOf } from '../../../sheets/sheetFromPlan';

/**
 * The grid judges what is typed by its own comparisons at once, but by a formula only after it is in the cell; it has
 * none for "above 0 and up to …", so that begins a hair above.
 */
const JUST_ABOVE = 1e-9;

function rule({ area, list, least, above, most, whole, message }: InputRule): BookRule {
  const common = { areas: [area], blank: true, refusal: message, strict: true };
  if (list) return { ...common, kind: 'list', bounds: [`"${list.join(',')}"`] };
  const kind = whole ? 'whole' : 'decimal';
  const from = above === undefined ? least : above + JUST_ABOVE;
  if (from !== undefined && most !== undefined)
    return { ...common, kind, compare: 'between', bounds: [String(from), String(most)] };
  if (from !== undefined) return { ...common, kind, compare: 'greaterThanOrEqual', bounds: [String(from)] };
  return { ...common, kind, compare: 'lessThanOrEqual', bounds: [String(most)] };
}

/** Where another host draws a chart: in the grid it would be an unexplained gap, in a file the chart covers it. */
const chartSign = ({ title, place: { row, column } }: BookChart): BookCell => ({
  row,
  column,
  value: `${title}: its chart is under “Charts” on the right.`,
  style: styleOf(THEME.remark),
});

/** The sheet of a plan, before anything is calculated, as the grid can hold it. */
export function sheetOfPlan(plan: SheetPlan): BookSheet {
  const sheet = sheetFromPlan(plan, () => null);
  return {
    ...sheet,
    cells: [...sheet.cells, ...plan.charts.map(chartSign)],
    rules: plan.rules.map(rule),
  };
}
