import type { BookCondition, BookSheet, ConditionOf } from '../../book/book';
import { excelRange } from './ranges';

function markWhere(range: Excel.Range, { formula, look }: ConditionOf<'formula'>): void {
  const { rule, format } = range.conditionalFormats.add('Custom').custom;
  rule.formula = formula;
  if (look.ink) format.font.color = look.ink;
  if (look.bold) format.font.bold = true;
  if (look.fill) format.fill.color = look.fill;
}

function colour(range: Excel.Range, { low, high }: ConditionOf<'scale'>): void {
  range.conditionalFormats.add('ColorScale').colorScale.criteria = {
    minimum: { type: 'LowestValue', color: low },
    maximum: { type: 'HighestValue', color: high },
  };
}

function draw(range: Excel.Range, condition: BookCondition): void {
  if (condition.kind === 'formula') markWhere(range, condition);
  else colour(range, condition);
}

/** What gives cells a look that follows their values. */
export function drawConditions(sheet: Excel.Worksheet, { conditions }: BookSheet): void {
  for (const condition of conditions)
    for (const area of condition.areas) draw(excelRange(sheet, area), condition);
}
