import { generateRandomId } from '@univerjs/core';
import {
  CFRuleType,
  CFSubRuleType,
  type IConditionFormattingRule,
  type IFormulaHighlightCell,
} from '@univerjs/preset-sheets-conditional-formatting';
import type { BookCondition } from '../../../book/book';
import type { NotWritten } from './notWritten';
import { areaOfGridRange, gridRange } from './snapshotSheet';
import { bookStyle, gridStyle } from './styles';

/** What marks cells, as the grid keeps it. */
export const gridCondition = ({ areas, formula, look }: BookCondition): IConditionFormattingRule => ({
  cfId: generateRandomId(8),
  ranges: areas.map(gridRange),
  stopIfTrue: false,
  rule: {
    type: CFRuleType.highlightCell,
    subType: CFSubRuleType.formula,
    value: formula.startsWith('=') ? formula : `=${formula}`,
    style: gridStyle(look),
  },
});

/** The same back again; nothing where a file has no place for it. */
export function bookCondition(
  { ranges, rule }: IConditionFormattingRule,
  sheet: string,
  notWritten: NotWritten,
): BookCondition[] {
  if (rule.type !== CFRuleType.highlightCell || rule.subType !== CFSubRuleType.formula) {
    notWritten.note('Conditional colours that follow no formula', sheet);
    return [];
  }
  const { value, style } = rule as IFormulaHighlightCell;
  return [{ areas: ranges.map(areaOfGridRange), formula: value.replace(/^=?/, '='), look: bookStyle(style) }];
}
