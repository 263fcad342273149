import { type Arg, type Chosen, isChoice, isChosen, isTruth } from '../catalogue/types';
import type { Quantity } from '../catalogue/quantities';
import { fail, type Fail } from '../exposure/core/result';
import { withMark } from './markNames';
import { type Blank, BLANK, describe, quickNumber, readingOf, valueOf } from './quantityReader';
import { meaning, type Reading } from './reason';
import { normalise, orList } from './textParts';

/** What an argument became: a value for the function, undefined where it may be absent, or blank where it may not. */
export type ArgumentValue = number | string | boolean | undefined;
export type ArgumentRead = ArgumentValue | Blank | Fail;

const NOTHING = { missing: 'nothing' } as const;

const isBlankCell = (cell: unknown): boolean =>
  cell === null || cell === undefined || (typeof cell === 'string' && normalise(cell) === '');

function readChoice(cell: unknown, choices: readonly string[], name: string): Reading<string> {
  if (isBlankCell(cell) || cell === 0) return NOTHING;
  const word = typeof cell === 'string' ? normalise(cell).toLowerCase() : undefined;
  const known = choices.find((choice) => choice === word);
  if (known !== undefined) return meaning(known, 'choice');
  const wanted = choices.map((c) => `"${c}"`);
  return { refused: fail('unreadable', `${name} must be ${orList(wanted)}, not ${describe(cell)}.`) };
}

const TRUTHS: ReadonlyMap<string, boolean> = new Map([
  ['true', true],
  ['yes', true],
  ['1', true],
  ['false', false],
  ['no', false],
  ['0', false],
]);

/** An empty cell may arrive as 0, so that 0 is nothing where nothing is TRUE; there 1 is refused, as 0 beside it means no. */
function readTruth(cell: unknown, name: string, isTrueByDefault: boolean): Reading<boolean> {
  if (typeof cell === 'boolean') return meaning(cell, 'choice');
  if (isBlankCell(cell) || (cell === 0 && isTrueByDefault)) return NOTHING;
  if (typeof cell === 'number' && isTrueByDefault)
    return {
      refused: fail('unreadable', `${name} must be TRUE or FALSE, not a number: 0 is an empty cell.`),
    };
  const word =
    typeof cell === 'number' || typeof cell === 'string' ? normalise(String(cell)).toLowerCase() : '';
  const truth = TRUTHS.get(word);
  return truth === undefined
    ? { refused: fail('unreadable', `${name} must be TRUE or FALSE.`) }
    : meaning(truth, 'choice');
}

const saysNone = (cell: unknown): boolean =>
  typeof cell === 'string' && normalise(cell).toLowerCase() === 'none';

/** The quantity that another argument decides. `other` is that argument as it was read. */
export function chosenQuantity(kind: Chosen, other: ArgumentRead): Quantity | undefined {
  if ('given' in kind) return other === undefined || other === BLANK || other === 0 ? kind.no : kind.yes;
  return kind.of[String(other)];
}

/** The argument whose value decides this one's quantity. */
export const dependsOn = (arg: Arg): string | undefined =>
  isChosen(arg.kind) ? ('by' in arg.kind ? arg.kind.by : arg.kind.given) : undefined;

/** What is there where somebody wrote "none", and the quantity has no such word of its own: the first of the words, no, or zero; nothing where the argument may be absent. */
function forNone({ fallback, kind }: Arg): ArgumentValue {
  if (fallback === undefined) return undefined;
  if (isTruth(kind)) return false;
  return isChoice(kind) ? (fallback as ArgumentValue) : 0;
}

/**
 * Reads one cell as an argument, and says why it is read so.
 *
 * @param quantity - the quantity to read, for arguments that are one; settled by the caller where another argument decides.
 * @returns the value, which is the fallback (or undefined) for a blank optional argument; `missing` for a blank required one.
 */
export function readWithReason(
  cell: unknown,
  arg: Arg,
  quantity: Quantity | undefined,
  exact = false,
): Reading<ArgumentValue> {
  const { kind, name, optional } = arg;
  if (optional && saysNone(cell) && quantity?.words?.['none'] === undefined)
    return meaning(forNone(arg), 'none');
  if (arg.emptyText === 'gap' && cell !== null && cell !== undefined && isBlankCell(cell)) return NOTHING;
  const reading: Reading<ArgumentValue> = isChoice(kind)
    ? readChoice(cell, kind.choices, name)
    : isTruth(kind)
      ? readTruth(cell, name, arg.fallback === true)
      : quantity === undefined
        ? NOTHING
        : readingOf(cell, quantity, name, exact);
  return optional && 'missing' in reading ? meaning(arg.fallback as ArgumentValue, reading.missing) : reading;
}

/** The same, with the mark that a number is the exact value of: for people, as it takes longer. */
export const readWithMark = (
  cell: unknown,
  arg: Arg,
  quantity: Quantity | undefined,
  exact = false,
): Reading<ArgumentValue> => withMark(readWithReason(cell, arg, quantity, exact), quantity);

/** The same value as that of `readWithReason`, without the reason and in less time; `BLANK` where it is missing. */
export function readArgument(
  cell: unknown,
  arg: Arg,
  quantity: Quantity | undefined,
  exact = false,
): ArgumentRead {
  const quick = quantity === undefined ? NaN : quickNumber(cell, quantity, exact);
  return Number.isNaN(quick) ? valueOf(readWithReason(cell, arg, quantity, exact)) : quick;
}
