import { Q, type Quantity } from '../../catalogue/quantities';
import { BLANK, readingOf } from '../../cells/quantityReader';
import { type CellError, isCellError } from '../../formula/errors';
import { fail, type Fail, isFail, type Result } from '../../exposure/core/result';

/** A meter's full stop with its small figure behind it: 11 3. */
const WITH_TENTHS = /^(?:f ?\/ ?)?(\d+(?:\.\d+)?) (\d)$/i;
/** The same without the space, or an aperture smaller than meters show: 113. */
const RUN_TOGETHER = /^(11|16|22|32|45|64|90)(\d)$/;
/** A number that may be a full stop and tenths, or that number. */
const ONE_DECIMAL = /^\d+[.,]\d$/;

const errorText = ({ error, message }: CellError): string => `holds the error ${error}${message ? `: ${message}` : ''}`; // prettier-ignore

/** A cell as a quantity; BLANK where nothing stands in it. `name` says in a refusal which cell it is. */
export function readAs(value: unknown, quantity: Quantity, name: string): Result<number> | typeof BLANK {
  if (isCellError(value)) return fail('unreadable', `${name} ${errorText(value)}.`);
  if (value === '' || value === null || value === undefined) return BLANK;
  const reading = readingOf(value, quantity, name);
  if ('refused' in reading) return withWayOut(reading.refused, value);
  if (!('missing' in reading)) return reading.value;
  // a 0 that somebody typed is not a cell that was left blank
  return reading.missing === 'zero' ? fail('domain', `${name} must be above 0.`) : BLANK;
}

/** Three digits behind a point may part thousands. In a cell that takes all as text a number cannot say which. */
const withWayOut = (refused: Fail, value: unknown): Fail =>
  typeof value === 'string' && /^\d+\.\d{3}$/.test(value.trim())
    ? fail(refused.fail, `${refused.message} As text: ${value.trim()}0 for the second.`)
    : refused;

/** What a meter showed: an f-number; that it shows less than it can read; or that no light was there to read. */
export type MeterRead = { readonly reads: number } | { readonly below: number } | 'none';

/** The least that a meter reads, behind <: in any form of a reading. */
function readBelow(text: string, name: string, floor: number): MeterRead | Fail | typeof BLANK {
  const read = readMeter(text, name, floor);
  if (read === BLANK || isFail(read)) return read;
  if (read !== 'none' && 'reads' in read) return { below: read.reads };
  return fail('unreadable', `${name}: behind < stands the least that the meter reads, such as <1.4.`);
}

/**
 * What stands in the cell of a reading: 11, 11 3, f/11+0.3, 11³; E where the meter shows that there is too little light, or
 * `<1.4` with the least that it reads; none.
 *
 * Numbers such as 11.3 and 113 are refused: they may be f/11 and three tenths, or f/11.3 and f/113.
 *
 * @param floor - the least f-number that the meter reads, for E.
 */
export function readMeter(value: unknown, name: string, floor: number): MeterRead | Fail | typeof BLANK {
  const text =
    typeof value === 'number' ? String(value) : typeof value === 'string' ? value.trim() : undefined;
  if (text === undefined || text === '') return asReading(value, name);
  if (/^none$/i.test(text)) return 'none';
  if (/^e$/i.test(text)) return { below: floor };
  if (text.startsWith('<')) return readBelow(text.slice(1), name, floor);
  const tenths = WITH_TENTHS.exec(text);
  if (tenths) return asReading(`f/${tenths[1]}+0.${tenths[2]}`, name);
  const together = RUN_TOGETHER.exec(text);
  if (together) return twoWays(name, text, together[1], together[2], `f/${text}`);
  if (ONE_DECIMAL.test(text) && !isMark(text)) {
    const [whole, part] = text.split(/[.,]/);
    return twoWays(name, text, whole, part, `${text} exact`);
  }
  return asReading(value, name);
}

const twoWays = (name: string, text: string, whole = '', part = '', other: string): Fail =>
  fail(
    'unreadable',
    `${name}: ${text} can be read two ways: write ${whole} ${part} for f/${whole} and ${part} tenths, or ${other}.`,
  );

function isMark(text: string): boolean {
  const reading = readingOf(text, Q.aperture, '');
  return 'reason' in reading && reading.reason.by === 'mark';
}

function asReading(value: unknown, name: string): MeterRead | Fail | typeof BLANK {
  const read = readAs(value, Q.aperture, name);
  if (read === BLANK || isFail(read)) return read;
  return read > 0 ? { reads: read } : fail('domain', `${name} must be above 0.`);
}

/** Yes or no; no where nothing stands. */
export function readYes(value: unknown, name: string): boolean | Fail {
  if (isCellError(value)) return fail('unreadable', `${name} ${errorText(value)}.`);
  if (typeof value === 'boolean') return value;
  const word = String(value ?? '').trim().toLowerCase(); // prettier-ignore
  if (['', 'no', 'false'].includes(word)) return false;
  if (['yes', 'true'].includes(word)) return true;
  return fail('unreadable', `${name} must be yes or no.`);
}

/** One of a few words; the first of them where nothing stands. */
export function readWord<Word extends string>(
  value: unknown,
  words: readonly [Word, ...Word[]],
  name: string,
): Word | Fail {
  if (isCellError(value)) return fail('unreadable', `${name} ${errorText(value)}.`);
  const given = String(value ?? '').trim().toLowerCase(); // prettier-ignore
  const found = given === '' ? words[0] : words.find((word) => word === given);
  return found ?? fail('unreadable', `${name} must be one of: ${words.join(', ')}.`);
}
