import type { InputRule, PlanCell, SheetPlan } from '../../sheets/plan';
import { excelRange } from './ranges';

/** Excel does not cut a title off: it refuses what is longer. */
const LONGEST_TITLE = 32;

const REFUSED = 'This cell takes something else';
/** Excel knows "from … to" only: above 0 begins a hair above it. */
const JUST_ABOVE = 1e-9;

function bounds({ least, above, most }: InputRule): Excel.BasicDataValidation {
  const from = above === undefined ? least : above + JUST_ABOVE;
  if (from === undefined) return { formula1: most ?? 0, operator: 'LessThanOrEqualTo' };
  if (most === undefined) return { formula1: from, operator: 'GreaterThanOrEqualTo' };
  return { formula1: from, formula2: most, operator: 'Between' };
}

function accepted(rule: InputRule): Excel.DataValidationRule {
  if (rule.list) return { list: { inCellDropDown: true, source: rule.list.join(',') } };
  return rule.whole ? { wholeNumber: bounds(rule) } : { decimal: bounds(rule) };
}

/** The words that name a cell: its own where it is a heading, otherwise the label to its left. */
function nameOf(cell: PlanCell, { cells }: SheetPlan): string {
  const label = cells
    .filter(({ row, column, part }) => part === 'label' && row === cell.row && column < cell.column)
    .sort((a, b) => b.column - a.column)[0];
  return String((cell.part === 'heading' ? cell.value : label?.value) ?? '').slice(0, LONGEST_TITLE);
}

/**
 * What cells take, and their notes. Excel has notes of their own only at a later level, so a note is the message that
 * shows when its cell is selected. Excel refuses a rule on an area where some cells have a message: rules go in first.
 */
export function drawInputs(sheet: Excel.Worksheet, plan: SheetPlan): void {
  for (const rule of plan.rules) {
    const { dataValidation } = excelRange(sheet, rule.area);
    dataValidation.rule = accepted(rule);
    dataValidation.errorAlert = { showAlert: true, style: 'Stop', title: REFUSED, message: rule.message };
  }
  for (const cell of plan.cells) {
    if (cell.note === undefined) continue;
    const { dataValidation } = sheet.getRangeByIndexes(cell.row, cell.column, 1, 1);
    dataValidation.prompt = { showPrompt: true, title: nameOf(cell, plan), message: cell.note };
  }
}
