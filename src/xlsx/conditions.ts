import type { ConditionalFormattingRule } from '@cj-tech-master/excelts';
import type { BookCondition } from '../book/book';
import { address } from '../formula/address';
import type { Area } from '../formula/area';
import { asStored } from '../formula/spelling';
import type { LeftOut } from './leftOut';
import { cannotStay, plainFormula } from './readRules';
import type { Styles } from './readStyles';
import { differenceOf } from './writeStyles';
import type { Handlers, XmlAttributes } from './xml';

/** What marks cells, as a file keeps it. */
export const fileCondition = (
  { formula, look }: BookCondition,
  priority: number,
): ConditionalFormattingRule => ({
  type: 'expression',
  priority,
  formulae: [asStored(formula)],
  style: differenceOf(look),
});

const OPERATORS: Readonly<Record<string, string>> = {
  equal: '=',
  notEqual: '<>',
  greaterThan: '>',
  lessThan: '<',
  greaterThanOrEqual: '>=',
  lessThanOrEqual: '<=',
};
/** Conditions that a file spells out as a formula as well. */
const SPELT_OUT = ['expression', 'containsText', 'notContainsText', 'beginsWith', 'endsWith', 'containsBlanks', 'notContainsBlanks', 'containsErrors', 'notContainsErrors', 'timePeriod']; // prettier-ignore

/** Elements of conditions that are left alone. */
const LEFT_OUT: Readonly<Record<string, string>> = {
  colorScale: 'Colour scales are left out.',
  dataBar: 'Bars within cells are left out.',
  iconSet: 'Icons within cells are left out.',
};

interface Open {
  readonly attributes: XmlAttributes;
  readonly formulas: string[];
}

/** Hears the elements of a sheet, and keeps what marks its cells. */
export class ConditionReader implements Handlers {
  private readonly styles: Styles;
  private readonly leftOut: LeftOut;
  private readonly areasOf: (text: string) => readonly Area[];
  private readonly found: { readonly priority: number; readonly condition: BookCondition }[] = [];
  private areas: readonly Area[] = [];
  private current: Open | undefined;
  private words = '';

  constructor(styles: Styles, leftOut: LeftOut, areasOf: (text: string) => readonly Area[]) {
    this.styles = styles;
    this.leftOut = leftOut;
    this.areasOf = areasOf;
  }

  /** The first in the file's order of importance first. */
  get conditions(): BookCondition[] {
    return [...this.found].sort((a, b) => a.priority - b.priority).map(({ condition }) => condition);
  }

  open(name: string, attributes: XmlAttributes): void {
    this.words = '';
    if (Object.hasOwn(LEFT_OUT, name)) this.leftOut.say(LEFT_OUT[name] as string);
    if (name === 'conditionalFormatting') this.areas = this.areasOf(attributes.sqref ?? '');
    if (name === 'cfRule') this.current = { attributes, formulas: [] };
  }
  text(more: string): void {
    if (this.current) this.words += more;
  }
  close(name: string): void {
    if (name === 'formula') this.current?.formulas.push(this.words);
    if (name !== 'cfRule' || !this.current) return;
    this.keep(this.current);
    this.current = undefined;
  }

  private keep({ attributes: a, formulas }: Open): void {
    const [first] = this.areas;
    const stays = first !== undefined && !formulas.some(cannotStay);
    const formula = stays ? whenHolds(a, address(first), formulas.map(plainFormula)) : undefined;
    const look = this.styles.differences[Number(a.dxfId)];
    if (formula !== undefined && look !== undefined)
      this.found.push({
        priority: Number(a.priority ?? 0),
        condition: { areas: this.areas, formula, look },
      });
    else if (first && !Object.hasOwn(LEFT_OUT, a.type ?? ''))
      this.leftOut.say('Some conditional formats are left out.');
  }
}

/** When a conditional format holds, as a formula for its first cell. */
function whenHolds(
  { type = '', operator = '' }: XmlAttributes,
  cell: string,
  [low, high]: readonly string[],
): string | undefined {
  if (low === undefined) return undefined;
  if (SPELT_OUT.includes(type)) return `=${low}`;
  if (type !== 'cellIs') return undefined;
  const sign = Object.hasOwn(OPERATORS, operator) ? OPERATORS[operator] : undefined;
  if (sign !== undefined) return `=${cell}${sign}(${low})`;
  if (high === undefined) return undefined;
  if (operator === 'between') return `=AND(${cell}>=(${low}),${cell}<=(${high}))`;
  return operator === 'notBetween' ? `=OR(${cell}<(${low}),${cell}>(${high}))` : undefined;
}
