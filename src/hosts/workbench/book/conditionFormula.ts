import {
  CFNumberOperator,
  CFRuleType,
  CFSubRuleType,
  CFTextOperator,
  type IAverageHighlightCell,
  type IConditionFormattingRule,
  type INumberHighlightCell,
  type IRankHighlightCell,
  type ITextHighlightCell,
} from '@univerjs/preset-sheets-conditional-formatting';
import { address, fixedAddress } from '../../../formula/address';
import type { Area } from '../../../formula/area';
import { quotedText } from '../../../formula/quotedText';

type Rule = IConditionFormattingRule['rule'];

const SIGNS: Readonly<Partial<Record<CFNumberOperator, string>>> = {
  [CFNumberOperator.greaterThan]: '>',
  [CFNumberOperator.greaterThanOrEqual]: '>=',
  [CFNumberOperator.lessThan]: '<',
  [CFNumberOperator.lessThanOrEqual]: '<=',
  [CFNumberOperator.equal]: '=',
  [CFNumberOperator.notEqual]: '<>',
};

/** What a number is compared with is so of numbers alone, unless it is a difference. */
const ofNumbers = (cell: string, so: string, otherwise = 'FALSE'): string =>
  `=IF(ISNUMBER(${cell}),${so},${otherwise})`;

function numberFormula(cell: string, rule: INumberHighlightCell): string | undefined {
  const { operator, value } = rule;
  if (Array.isArray(value)) {
    const within = `AND(${cell}>=${Math.min(...value)},${cell}<=${Math.max(...value)})`;
    return operator === CFNumberOperator.between
      ? ofNumbers(cell, within)
      : ofNumbers(cell, `NOT(${within})`, 'TRUE');
  }
  const sign = SIGNS[operator];
  const otherwise = operator === CFNumberOperator.notEqual ? 'TRUE' : 'FALSE';
  return sign && ofNumbers(cell, `${cell}${sign}${value ?? 0}`, otherwise);
}

const TEXTS: Readonly<Record<CFTextOperator, (cell: string, text: string) => string>> = {
  [CFTextOperator.beginsWith]: (cell, text) => `=EXACT(LEFT(${cell},LEN(${text})),${text})`,
  [CFTextOperator.endsWith]: (cell, text) => `=EXACT(RIGHT(${cell},LEN(${text})),${text})`,
  [CFTextOperator.containsText]: (cell, text) => `=ISNUMBER(FIND(${text},${cell}))`,
  [CFTextOperator.notContainsText]: (cell, text) => `=NOT(ISNUMBER(FIND(${text},${cell})))`,
  [CFTextOperator.equal]: (cell, text) => `=EXACT(${cell},${text})`,
  [CFTextOperator.notEqual]: (cell, text) => `=NOT(EXACT(${cell},${text}))`,
  [CFTextOperator.containsBlanks]: (cell) => `=TRIM(${cell})=""`,
  [CFTextOperator.notContainsBlanks]: (cell) => `=TRIM(${cell})<>""`,
  [CFTextOperator.containsErrors]: (cell) => `=ISERROR(${cell})`,
  [CFTextOperator.notContainsErrors]: (cell) => `=NOT(ISERROR(${cell}))`,
};

/** What compares each cell with all of an area. */
function formulaOverArea(cell: string, all: string, rule: Rule): string | undefined {
  switch ('subType' in rule ? rule.subType : undefined) {
    case CFSubRuleType.average: {
      const { operator } = rule as IAverageHighlightCell;
      const otherwise = operator === CFNumberOperator.notEqual ? 'TRUE' : 'FALSE';
      const sign = SIGNS[operator];
      return sign && ofNumbers(cell, `${cell}${sign}AVERAGE(${all})`, otherwise);
    }
    case CFSubRuleType.rank: {
      const { isBottom, isPercent, value } = rule as IRankHighlightCell;
      const most = Math.max(1, Math.floor(value));
      const place = isPercent
        ? `MAX(1,INT(${Math.min(Math.max(value, 0), 100)}*COUNT(${all})/100))`
        : `MIN(${most},COUNT(${all}))`;
      return ofNumbers(
        cell,
        isBottom ? `${cell}<=SMALL(${all},${place})` : `${cell}>=LARGE(${all},${place})`,
      );
    }
    case CFSubRuleType.duplicateValues:
      return `=IF(ISBLANK(${cell}),FALSE,SUMPRODUCT(--EXACT(${all},${cell}))>1)`;
    case CFSubRuleType.uniqueValues:
      return `=IF(ISBLANK(${cell}),FALSE,SUMPRODUCT(--EXACT(${all},${cell}))=1)`;
    default:
      return undefined;
  }
}

/**
 * A formula, written for the first cell of the first area, that is true where the grid gives cells a look by a rule without one.
 * Undefined where there is none: for bars, signs, days that move on, and areas apart that are compared.
 */
export function conditionFormula(rule: Rule, areas: readonly Area[]): string | undefined {
  const [first] = areas;
  if (rule.type !== CFRuleType.highlightCell || !first || !('subType' in rule)) return undefined;
  const cell = address(first);
  if (rule.subType === CFSubRuleType.number) return numberFormula(cell, rule as INumberHighlightCell);
  if (rule.subType === CFSubRuleType.text) {
    const { operator, value = '' } = rule as ITextHighlightCell;
    return TEXTS[operator]?.(cell, quotedText(value));
  }
  if (areas.length > 1) return undefined;
  const last = { row: first.row + first.rows - 1, column: first.column + first.columns - 1 };
  return formulaOverArea(cell, `${fixedAddress(first)}:${fixedAddress(last)}`, rule);
}
