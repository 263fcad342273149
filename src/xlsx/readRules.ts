import { address } from '../formula/address';
import type { Area } from '../formula/area';
import { type BookRule, type BookStyle, type BookWarning, COMPARISONS, RULE_KINDS } from '../book/book';
import { looksOutside } from '../formula/outside';
import { asTyped, isTooLong } from '../formula/spelling';
import { elementLeftOut, type LeftOut } from './leftOut';
import { unescaped } from './readTexts';
import { type XmlAttributes, type Handlers, isTrue } from './xml';

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

interface Open {
  readonly attributes: XmlAttributes;
  readonly areas: readonly Area[];
  readonly formulas: string[];
}
const cannotStay = (formula: string): boolean => isTooLong(formula) || looksOutside(asTyped(formula));
const plainFormula = (text: string): string => asTyped(text).slice(1);

/** Hears the elements of a sheet, and keeps what may be typed and what is marked. */
export class RuleReader implements Handlers {
  readonly rules: BookRule[] = [];
  private readonly looks: readonly BookStyle[];
  private readonly leftOut: LeftOut;
  private readonly areasOf: (text: string) => readonly Area[];
  private readonly marked: { readonly priority: number; readonly warning: BookWarning }[] = [];
  private areas: readonly Area[] = [];
  private current: Open | undefined;
  private words = '';

  constructor(looks: readonly BookStyle[], leftOut: LeftOut, areasOf: (text: string) => readonly Area[]) {
    this.areasOf = areasOf;
    this.looks = looks;
    this.leftOut = leftOut;
  }

  /** The first in the file's order of importance first. */
  get warnings(): BookWarning[] {
    return [...this.marked].sort((a, b) => a.priority - b.priority).map(({ warning }) => warning);
  }

  open(name: string, attributes: XmlAttributes): void {
    this.words = '';
    if (name === 'conditionalFormatting') this.areas = this.areasOf(attributes.sqref ?? '');
    if (name === 'dataValidation')
      this.current = { attributes, areas: this.areasOf(attributes.sqref ?? ''), formulas: [] };
    if (name === 'cfRule') this.current = { attributes, areas: this.areas, formulas: [] };
  }
  text(more: string): void {
    if (this.current) this.words += more;
  }
  close(name: string): void {
    if (name === 'formula' || name === 'formula1' || name === 'formula2')
      this.current?.formulas.push(this.words);
    if (this.current && name === 'dataValidation') this.rule(this.current);
    if (this.current && name === 'cfRule') this.mark(this.current);
    if (name === 'dataValidation' || name === 'cfRule') this.current = undefined;
  }

  private rule({ attributes: a, areas, formulas }: Open): void {
    const kind = RULE_KINDS.find((known) => known === (a.type ?? 'any'));
    if (areas.length === 0) return;
    if (kind === undefined || formulas.some(cannotStay)) {
      this.leftOut.say('Some rules on what may be typed into cells are left out.');
      return;
    }
    const compare = COMPARISONS.find((known) => known === (a.operator ?? 'between'));
    const compared = kind !== 'list' && kind !== 'custom' && kind !== 'any' && compare !== undefined;
    this.rules.push({
      areas,
      kind,
      ...(compared ? { compare } : {}),
      bounds: formulas.slice(0, compared && compare.endsWith('etween') ? 2 : 1).map(plainFormula),
      blank: isTrue(a.allowBlank),
      strict: isTrue(a.showErrorMessage) && (a.errorStyle ?? 'stop') === 'stop',
      ...(a.error ? { refusal: unescaped(a.error) } : {}),
      ...(a.prompt ? { prompt: unescaped(a.prompt) } : {}),
    });
  }

  private mark({ attributes: a, areas, formulas }: Open): void {
    const type = a.type ?? '';
    const [first] = areas;
    const stays = first !== undefined && !formulas.some(cannotStay);
    const formula = stays ? condition(a, address(first), formulas.map(plainFormula)) : undefined;
    const look = this.looks[Number(a.dxfId)];
    if (formula === undefined || look === undefined) {
      if (elementLeftOut(type) === undefined && first)
        this.leftOut.say('Some conditional formats are left out.');
      return;
    }
    this.marked.push({ priority: Number(a.priority ?? 0), warning: { areas, formula, look } });
  }
}

/** When a conditional format holds, as a formula for its first cell. */
function condition(
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
