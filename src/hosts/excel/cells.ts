import type { Area } from '../../formula/area';
import type { PlanCell, SheetPlan } from '../../sheets/plan';

/** Everything from A1 to the last cell that holds something. */
export const usedArea = ({ cells }: SheetPlan): Area => ({
  row: 0,
  column: 0,
  rows: Math.max(...cells.map(({ row }) => row)) + 1,
  columns: Math.max(...cells.map(({ column }) => column)) + 1,
});

/** One array for the whole area; Excel leaves a cell as it is where the array says null. */
function block<T>(plan: SheetPlan, content: (cell: PlanCell) => T | null): (T | null)[][] {
  const { rows, columns } = usedArea(plan);
  const lines = Array.from({ length: rows }, () => Array<T | null>(columns).fill(null));
  for (const cell of plan.cells) (lines[cell.row] as (T | null)[])[cell.column] = content(cell);
  return lines;
}

/** Words that begin like a formula are marked as words, except in cells that take everything as text anyway. */
const typed = ({ value, text }: PlanCell): string | number | null =>
  !text && typeof value === 'string' && /^[=+\-@']/.test(value) ? `'${value}` : (value ?? null);

export const numberFormats = (plan: SheetPlan): (string | null)[][] =>
  block(plan, ({ format }) => (format === 'General' ? null : format));
export const values = (plan: SheetPlan): (string | number | null)[][] => block(plan, typed);
export const formulas = (plan: SheetPlan): (string | null)[][] =>
  block(plan, ({ formula }) => formula ?? null);
