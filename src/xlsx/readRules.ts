import type { Area } from '../formula/area';
import { type BookRule, COMPARISONS, RULE_KINDS } from '../book/book';
import { looksOutside } from '../formula/looksOutside';
import { asTyped, isTooLong } from '../formula/spelling';
import type { LeftOut } from './notKept';
import { unescaped } from './readTexts';
import { type XmlAttributes, type Handlers, isTrue } from './xml';

interface Open {
  readonly attributes: XmlAttributes;
  readonly areas: readonly Area[];
  readonly formulas: string[];
}
export const cannotStay = (formula: string): boolean => isTooLong(formula) || looksOutside(asTyped(formula));
export const plainFormula = (text: string): string => asTyped(text).slice(1);

/** Hears the elements of a sheet, and keeps what may be typed. */
export class RuleReader implements Handlers {
  readonly rules: BookRule[] = [];
  private readonly leftOut: LeftOut;
  private readonly areasOf: (text: string) => readonly Area[];
  private current: Open | undefined;
  private words = '';

  constructor(leftOut: LeftOut, areasOf: (text: string) => readonly Area[]) {
    this.areasOf = areasOf;
    this.leftOut = leftOut;
  }

  open(name: string, attributes: XmlAttributes): void {
    this.words = '';
    if (name === 'dataValidation')
      this.current = { attributes, areas: this.areasOf(attributes.sqref ?? ''), formulas: [] };
  }
  text(more: string): void {
    if (this.current) this.words += more;
  }
  close(name: string): void {
    if (name === 'formula1' || name === 'formula2') this.current?.formulas.push(this.words);
    if (name !== 'dataValidation' || !this.current) return;
    this.rule(this.current);
    this.current = undefined;
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
}
