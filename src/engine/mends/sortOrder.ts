import type { BaseValueObject, ErrorValueObject } from '@univerjs/engine-formula';
import { at } from '../../exposure/core/at';
import { fifteen, isSame } from './digits';

/** What a cell holds; null where it is empty. */
export type Plain = number | string | boolean | null;
export type Cell = Plain | ErrorValueObject;

export function cellOf(value: BaseValueObject): Cell {
  if (value.isError()) return value as ErrorValueObject;
  return value.isNull() ? null : value.getValue();
}

/** Every language of the page has one order of letters; the one of this machine would give others other answers. */
const { compare: orderOfTexts } = new Intl.Collator('en', { sensitivity: 'accent' });
const folded = (text: string): string => text.toLowerCase();

/** Numbers come before texts, and texts before truths. */
const KINDS = ['number', 'string', 'boolean'];
const kindOf = (value: Plain): number => KINDS.indexOf(typeof value);
const EMPTY: readonly Plain[] = [0, '', false];
/** An empty cell is what it is compared with: 0, an empty text or FALSE. */
const inKindOf = (value: Plain, other: Plain): Plain => value ?? at(EMPTY, kindOf(other));

function ofOneKind(one: Exclude<Plain, null>, other: Exclude<Plain, null>): number {
  if (typeof one === 'number' && typeof other === 'number')
    return isSame(one, other) ? 0 : Math.sign(one - other);
  if (typeof one === 'string' && typeof other === 'string')
    return folded(one) === folded(other) ? 0 : orderOfTexts(one, other);
  return Number(one) - Number(other);
}

/** Below 0 where the one comes before the other, 0 where they are the same, above 0 behind it. */
export function order(one: Plain, other: Plain): number {
  if (one === null && other === null) return 0;
  const [left, right] = [inKindOf(one, other), inKindOf(other, one)];
  if (typeof left !== typeof right) return kindOf(left) - kindOf(right);
  return ofOneKind(left as Exclude<Plain, null>, right as Exclude<Plain, null>);
}

/** The same for two values that are the same, and for no others: a text and a number never are. An empty cell is only itself. */
export type Key = Plain;
export function keyOf(value: Plain): Key {
  if (typeof value === 'number') return fifteen(value);
  return typeof value === 'string' ? folded(value) : value;
}

export const isOfOneKind = (one: Plain, other: Plain): boolean => typeof one === typeof other;
