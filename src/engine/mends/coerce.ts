import {
  type BaseValueObject,
  ErrorType,
  type ErrorValueObject,
  StringValueObject,
} from '@univerjs/engine-formula';
import { numberText } from './digits';
import { failed } from './nativeFunction';

/** A number as a person may write it: 1.50, .5, 007, 1E3. */
const NUMBER = /^\s*[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?\s*$/i;
export const isNumberText = (text: string): boolean => NUMBER.test(text);

/** A whole number and a fraction: 1 1/2. Without the whole number it is a date. */
const MIXED = /^\s*([+-]?)(\d+) +(\d+)\/(\d+)\s*$/;
export function mixedNumber(text: string): number | undefined {
  const [, sign, whole, part, of] = MIXED.exec(text) ?? [];
  if (whole === undefined || Number(of) === 0) return undefined;
  return (sign === '-' ? -1 : 1) * (Number(whole) + Number(part) / Number(of));
}

/** The number that a text stands for, dates, times, money and percents among them. */
export function numberInText(text: string): number | undefined {
  if (isNumberText(text)) return Number(text);
  const mixed = mixedNumber(text);
  if (mixed !== undefined) return mixed;
  // Most texts are words: the engine takes its time to find no date in them.
  if (!/\d/.test(text)) return undefined;
  // The engine's own would take 0x10.
  if (!Number.isNaN(Number(text))) return undefined;
  const read = StringValueObject.create(text).convertToNumberObjectValue();
  return read.isNumber() ? (read.getValue() as number) : undefined;
}

/** A value where a number is asked for: nothing is 0, a truth 1 or 0, and a text what it stands for. */
export function toNumber(value: BaseValueObject): number | ErrorValueObject {
  if (value.isError()) return value as ErrorValueObject;
  if (value.isNull()) return 0;
  const raw = value.getValue();
  if (value.isNumber()) return raw as number;
  if (value.isBoolean()) return raw === true ? 1 : 0;
  const read = value.isString() ? numberInText(raw as string) : undefined;
  return read ?? failed(ErrorType.VALUE);
}

/** A value where a text is asked for: nothing is an empty text. */
export function toText(value: BaseValueObject): string {
  if (value.isNull()) return '';
  const raw = value.getValue();
  if (typeof raw === 'number') return numberText(raw);
  return typeof raw === 'boolean' ? String(raw).toUpperCase() : raw;
}

/** A value where a truth is asked for: of the texts only TRUE and FALSE are one. */
export function toTruth(value: BaseValueObject): boolean | ErrorValueObject {
  if (value.isError()) return value as ErrorValueObject;
  if (value.isNull()) return false;
  const raw = value.getValue();
  if (typeof raw !== 'string') return Boolean(raw);
  const word = raw.trim().toUpperCase();
  return word === 'TRUE' || word === 'FALSE' ? word === 'TRUE' : failed(ErrorType.VALUE);
}
