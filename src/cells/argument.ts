import { type Arg, type Chosen, isChoice, isChosen, isTruth } from '../catalogue/types';
import type { Quantity } from '../catalogue/quantities';
import { fail, type Fail, type Result } from '../exposure/core/result';
import { type Blank, BLANK, describe, readQuantity } from './quantity';
import { normalise, orList } from './text';

/** What an argument became: a value for the function, undefined where it may be absent, or blank where it may not. */
export type ArgumentValue = number | string | boolean | undefined;
export type ArgumentRead = ArgumentValue | Blank | Fail;

const isBlankCell = (cell: unknown): boolean =>
  cell === null || cell === undefined || (typeof cell === 'string' && normalise(cell) === '');

function readChoice(cell: unknown, choices: readonly string[], name: string): Result<string> | Blank {
  if (isBlankCell(cell) || cell === 0) return BLANK;
  const word = typeof cell === 'string' ? normalise(cell).toLowerCase() : undefined;
  const known = choices.find((choice) => choice === word);
  if (known !== undefined) return known;
  const wanted = choices.map((c) => `"${c}"`);
  return fail('unreadable', `${name} must be ${orList(wanted)}, not ${describe(cell)}.`);
}

const TRUTHS: Readonly<Record<string, boolean>> = {
  true: true,
  yes: true,
  '1': true,
  false: false,
  no: false,
  '0': false,
};

function readTruth(cell: unknown, name: string): Result<boolean> | Blank {
  if (typeof cell === 'boolean') return cell;
  if (isBlankCell(cell)) return BLANK;
  const word =
    typeof cell === 'number' || typeof cell === 'string' ? normalise(String(cell)).toLowerCase() : '';
  return Object.hasOwn(TRUTHS, word)
    ? (TRUTHS[word] as boolean)
    : fail('unreadable', `${name} must be TRUE or FALSE.`);
}

const saysNone = (cell: unknown): boolean =>
  typeof cell === 'string' && normalise(cell).toLowerCase() === 'none';

/** The quantity that another argument decides. `other` is that argument as it was read. */
export function chosenQuantity(kind: Chosen, other: ArgumentRead): Quantity | undefined {
  if ('given' in kind) return other === undefined || other === BLANK ? kind.no : kind.yes;
  return kind.of[String(other)];
}

/** The argument whose value decides this one's quantity. */
export const dependsOn = (arg: Arg): string | undefined =>
  isChosen(arg.kind) ? ('by' in arg.kind ? arg.kind.by : arg.kind.given) : undefined;

/**
 * Reads one cell as an argument.
 *
 * @param quantity - the quantity to read, for arguments that are one; settled by the caller where another argument decides.
 * @returns the value; the fallback (or undefined) for a blank optional argument; `BLANK` for a blank required one.
 */
export function readArgument(
  cell: unknown,
  arg: Arg,
  quantity: Quantity | undefined,
  exact = false,
): ArgumentRead {
  const { kind, name } = arg;
  if (arg.optional && saysNone(cell))
    return arg.fallback === undefined
      ? undefined
      : isChoice(kind) || isTruth(kind)
        ? (arg.fallback as ArgumentValue)
        : 0;
  const read = isChoice(kind)
    ? readChoice(cell, kind.choices, name)
    : isTruth(kind)
      ? readTruth(cell, name)
      : quantity === undefined
        ? BLANK
        : readQuantity(cell, quantity, name, exact);
  return read === BLANK && arg.optional ? (arg.fallback as ArgumentValue) : read;
}
