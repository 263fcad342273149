import type { BookCell, BookRule, BookSheet } from '../../book/book';
import { wordsOf } from '../../book/listWords';
import { excelRange } from './ranges';

/** Excel does not cut a title off: it refuses what is longer. */
const LONGEST_TITLE = 32;

const REFUSED = 'This cell takes something else';

const EXCEL_COMPARISONS = {
  between: 'Between',
  notBetween: 'NotBetween',
  equal: 'EqualTo',
  notEqual: 'NotEqualTo',
  greaterThan: 'GreaterThan',
  lessThan: 'LessThan',
  greaterThanOrEqual: 'GreaterThanOrEqualTo',
  lessThanOrEqual: 'LessThanOrEqualTo',
} as const satisfies Record<NonNullable<BookRule['compare']>, Excel.BasicDataValidation['operator']>;

function compared({ compare = 'between', bounds }: BookRule): Excel.BasicDataValidation {
  const [from = 0, to] = bounds.map(Number);
  return {
    formula1: from,
    ...(to === undefined ? {} : { formula2: to }),
    operator: EXCEL_COMPARISONS[compare],
  };
}

/** A template makes no other rules than these, with numbers and words for bounds. */
function accepted(rule: BookRule): Excel.DataValidationRule {
  const source = wordsOf(rule.bounds[0] ?? '');
  if (rule.kind === 'list' && source !== undefined) return { list: { inCellDropDown: true, source } };
  if (rule.kind === 'whole') return { wholeNumber: compared(rule) };
  if (rule.kind === 'decimal') return { decimal: compared(rule) };
  throw new Error(`There is no way to draw a rule of the kind “${rule.kind}”.`);
}

/** The words that name a cell: its own where it is a heading, otherwise the label to its left. */
function nameOf(cell: BookCell, labels: readonly BookCell[]): string {
  const label = labels
    .filter(({ row, column }) => row === cell.row && column < cell.column)
    .sort((a, b) => b.column - a.column)[0];
  const named = cell.part === 'heading' ? cell : label;
  return String(named?.value ?? '').slice(0, LONGEST_TITLE);
}

/**
 * What cells take, and their notes. Excel has notes of their own only at a later level, so a note is the message that
 * shows when its cell is selected. Excel refuses a rule on an area where some cells have a message: rules go in first.
 */
export function drawInputs(sheet: Excel.Worksheet, planned: BookSheet): void {
  for (const rule of planned.rules)
    for (const area of rule.areas) {
      const { dataValidation } = excelRange(sheet, area);
      dataValidation.rule = accepted(rule);
      dataValidation.errorAlert = {
        showAlert: true,
        style: 'Stop',
        title: REFUSED,
        message: rule.refusal ?? '',
      };
    }
  const labels = planned.cells.filter(({ part }) => part === 'label');
  for (const cell of planned.cells) {
    if (cell.note === undefined) continue;
    const { dataValidation } = sheet.getRangeByIndexes(cell.row, cell.column, 1, 1);
    dataValidation.prompt = { showPrompt: true, title: nameOf(cell, labels), message: cell.note };
  }
}
