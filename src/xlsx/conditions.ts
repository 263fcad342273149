import type { ConditionalFormattingRule } from '@cj-tech-master/excelts';
import type { BookCondition, ConditionOf } from '../book/book';
import { address } from '../formula/address';
import type { Area } from '../formula/area';
import { asStored } from '../formula/spelling';
import type { LeftOut } from './notKept';
import { cannotStay, plainFormula } from './readRules';
import type { Styles } from './readStyles';
import { argb, differenceOf } from './writeStyles';
import type { Handlers, XmlAttributes } from './xml';

/** What gives cells a look that follows their values, as a file keeps it. */
export const fileCondition = (condition: BookCondition, priority: number): ConditionalFormattingRule =>
  condition.kind === 'formula'
    ? {
        type: 'expression',
        priority,
        formulae: [asStored(condition.formula)],
        style: differenceOf(condition.look),
      }
    : {
        type: 'colorScale',
        priority,
        cfvo: [{ type: 'min' }, { type: 'max' }],
        color: [argb(condition.low), argb(condition.high)],
      };

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
const LEFT_OUT: ReadonlyMap<string, string> = new Map([
  ['dataBar', 'Bars within cells are left out.'],
  ['iconSet', 'Icons within cells are left out.'],
]);
const OTHER_SCALE =
  'Colour scales of three colours, or with ends other than the least and the most, are left out.';

/** A condition that is being read. */
interface Open {
  readonly attributes: XmlAttributes;
  readonly formulas: string[];
  /** What a scale of colours counts from and to, and its colours; empty for any other condition. */
  readonly ends: (string | undefined)[];
  readonly colours: (string | undefined)[];
}

/** Hears the elements of a sheet, and keeps what gives its cells a look that follows their values. */
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
    const leftOut = LEFT_OUT.get(name);
    if (leftOut !== undefined) this.leftOut.say(leftOut);
    if (name === 'conditionalFormatting') this.areas = this.areasOf(attributes.sqref ?? '');
    if (name === 'cfRule') this.current = { attributes, formulas: [], ends: [], colours: [] };
    if (name === 'cfvo') this.current?.ends.push(attributes.type);
    if (name === 'color') this.current?.colours.push(this.styles.colourOf(attributes));
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

  private keep(open: Open): void {
    const [first] = this.areas;
    const type = open.attributes.type ?? '';
    const found = first && (type === 'colorScale' ? scale(open) : this.mark(open, first));
    if (found) {
      const condition = { ...found, areas: this.areas };
      this.found.push({ priority: Number(open.attributes.priority ?? 0), condition });
    } else if (type === 'colorScale') this.leftOut.say(OTHER_SCALE);
    else if (first && !LEFT_OUT.has(type)) this.leftOut.say('Some conditional formats are left out.');
  }

  private mark({ attributes: a, formulas }: Open, first: Area): Found<'formula'> | undefined {
    const look = this.styles.differences[Number(a.dxfId)];
    if (!look || formulas.some(cannotStay)) return undefined;
    const formula = whenHolds(a, address(first), formulas.map(plainFormula));
    return formula === undefined ? undefined : { kind: 'formula', formula, look };
  }
}

type Found<K extends BookCondition['kind']> = Omit<ConditionOf<K>, 'areas'>;

function scale({ ends, colours }: Open): Found<'scale'> | undefined {
  const [low, high] = colours;
  return ends.join() === 'min,max' && low && high ? { kind: 'scale', low, high } : undefined;
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
