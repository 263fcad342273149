import type { BookCondition, BookSheet } from '../../book/book';
import { excelRange } from './ranges';

function mark(range: Excel.Range, { formula, look }: BookCondition): void {
  const { rule, format } = range.conditionalFormats.add('Custom').custom;
  rule.formula = formula;
  if (look.ink) format.font.color = look.ink;
  if (look.bold) format.font.bold = true;
  if (look.fill) format.fill.color = look.fill;
}

/** What marks cells. */
export function drawConditions(sheet: Excel.Worksheet, { conditions }: BookSheet): void {
  for (const condition of conditions)
    for (const area of condition.areas) mark(excelRange(sheet, area), condition);
}
