import { Q, type Quantity } from '../catalogue/quantities';
import { BLANK, readQuantity } from '../cells/quantityReader';
import { isFail } from '../exposure/core/result';
import { isCellError } from '../formula/errors';

const MINUS = /^\s*[-−]\s*/;

/**
 * A length from its datum, which may lie on either side of it: 0.4, −40 cm; undefined where nothing stands, a sentence where it cannot
 * be read.
 *
 * @param name - says in the sentence which cell it is.
 */
export function readPlace(value: unknown, name: string, quantity = Q.distance): number | undefined | string {
  if (typeof value === 'number') return value;
  // a nought is a place like any other
  if (typeof value === 'string' && /^\s*[-−]?\s*0(?:[.,]0*)?\s*(?:m|cm|mm|ft|in|['’′"”″])?\s*$/i.test(value))
    return 0;
  if (typeof value === 'string' && MINUS.test(value)) {
    const read = readLength(value.replace(MINUS, ''), quantity, name);
    return typeof read === 'number' ? -read : read;
  }
  return readLength(value, quantity, name);
}

/** The same for a length of its own. One of 0 is 0. */
export function readLength(value: unknown, quantity: Quantity, name: string): number | undefined | string {
  return value === 0 ? 0 : readCell(value, quantity, name);
}

/** What a cell says of any quantity; undefined where nothing stands, a sentence where it cannot be read. */
export function readCell(value: unknown, quantity: Quantity, name: string): number | undefined | string {
  if (value === '' || value === null || value === undefined) return undefined;
  if (isCellError(value)) return `${name} holds the error ${value.error}.`;
  const read = readQuantity(value, quantity, name);
  if (read === BLANK) return undefined;
  return isFail(read) ? read.message : read;
}
