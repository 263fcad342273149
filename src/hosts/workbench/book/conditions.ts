import { generateRandomId } from '@univerjs/core';
import {
  CFRuleType,
  CFSubRuleType,
  CFValueType,
  type IColorScale,
  type IConditionFormattingRule,
  type IFormulaHighlightCell,
  type IHighlightCell,
} from '@univerjs/preset-sheets-conditional-formatting';
import type { BookCondition, ConditionOf } from '../../../book/book';
import { conditionFormula } from './conditionFormula';
import type { NotWritten } from './notWritten';
import { areaOfGridRange, gridRange } from '../../../engine/gridRange';
import { bookStyle, gridStyle } from './styles';

const markWhere = ({ formula, look }: ConditionOf<'formula'>): IFormulaHighlightCell => ({
  type: CFRuleType.highlightCell,
  subType: CFSubRuleType.formula,
  value: formula.startsWith('=') ? formula : `=${formula}`,
  style: gridStyle(look),
});

const colourScale = ({ low, high }: ConditionOf<'scale'>): IColorScale => ({
  type: CFRuleType.colorScale,
  config: [
    { index: 0, color: low, value: { type: CFValueType.min } },
    { index: 1, color: high, value: { type: CFValueType.max } },
  ],
});

/** What gives cells a look that follows their values, as the grid keeps it. */
export const gridCondition = (condition: BookCondition): IConditionFormattingRule => ({
  cfId: generateRandomId(8),
  ranges: condition.areas.map(gridRange),
  stopIfTrue: false,
  rule: condition.kind === 'formula' ? markWhere(condition) : colourScale(condition),
});

/** The same back again; nothing where a file has no place for it. */
export function bookCondition(
  { ranges, rule }: IConditionFormattingRule,
  sheet: string,
  notWritten: NotWritten,
): BookCondition[] {
  const areas = ranges.map(areaOfGridRange);
  if (rule.type === CFRuleType.highlightCell && rule.subType === CFSubRuleType.formula) {
    const { value, style } = rule as IFormulaHighlightCell;
    return [{ kind: 'formula', areas, formula: value.replace(/^=?/, '='), look: bookStyle(style) }];
  }
  if (rule.type !== CFRuleType.colorScale) {
    const formula = conditionFormula(rule, areas);
    if (formula !== undefined)
      return [{ kind: 'formula', areas, formula, look: bookStyle((rule as IHighlightCell).style) }];
    notWritten.note('Looks by value for which a file has no formula', sheet);
    return [];
  }
  const { config } = rule as IColorScale;
  const [low, high, more] = config;
  if (!more && low?.value.type === CFValueType.min && high?.value.type === CFValueType.max)
    return [{ kind: 'scale', areas, low: low.color, high: high.color }];
  notWritten.note('Colour scales of three colours, or with ends other than the least and the most', sheet);
  return [];
}
