import { type AnyRow, type Arg, isChoice, isQuantity, isTruth } from '../catalogue/types';
import type { Quantity } from '../catalogue/quantities';
import { at } from '../exposure/core/at';
import { near, withUnit, worth } from './figures';

/** What an argument came to, for one cell of the answer: a value, the members of a list, or nothing. */
export interface Came {
  readonly arg: Arg;
  readonly quantity: Quantity | undefined;
  readonly value: number | string | boolean | readonly number[] | undefined;
}

/** One line of "where N = 11.31". */
export interface Where {
  readonly name: string;
  readonly value: string;
}

/** What a formula may hold beside numbers, signs and arguments, and still be one to calculate with. */
const KNOWN = new Set(['log2', 'log10', 'ln', 'sin', 'arcsin', 'e', 'π']);
const WORD = /m\/s²|\p{L}[\p{L}\d]*[₀-₉]*/gu;
const LABEL = /^([\p{L}, ]+): /u;

const argsOf = (row: AnyRow): readonly Arg[] => row.args;

/** What formulas call an argument, beside its name; members of a list have signs of their own. */
const signOf = ({ sign, kind, takes }: Arg): string | undefined =>
  takes === 'one' ? (sign ?? (isQuantity(kind) ? kind.sign : undefined)) : undefined;

/** What stands for an argument in the formula of its row: its sign, or its name; undefined where neither occurs. */
function wordFor(row: AnyRow, arg: Arg): string | undefined {
  const words = new Set(row.formula.match(WORD));
  const sign = signOf(arg);
  const isSaid = sign !== undefined && words.has(sign) && !definedIn(row.formula).has(sign);
  if (isSaid && argumentOf(row, sign) === arg.name) return sign;
  return words.has(arg.name) ? arg.name : undefined;
}

/** The argument that a word of the formula stands for. */
const argumentOf = (row: AnyRow, word: string): string | undefined =>
  (argsOf(row).find(({ name }) => name === word) ?? argsOf(row).find((arg) => signOf(arg) === word))?.name;

/** Signs that the formula says itself: h in "…, h = f² / (N · c)". */
const definedIn = (formula: string): ReadonlySet<string> =>
  new Set([...formula.matchAll(/(\p{L}[\p{L}\d]*) = /gu)].map((found) => at(found, 1)));

/** "apertures" is for aperture, "energies" for energy, "speeds" for the speed of film. */
const singular = (word: string): string => word.replace(/ies$/, 'y').replace(/s$/, '');
const isFor = (label: string, choice: string): boolean =>
  label
    .split(/, | and /)
    .some((word) => [word, singular(word)].includes(choice === 'iso' ? 'speed' : choice));

/** The part of the formula that holds for the words chosen; the whole where it has no such parts. */
function partFor(row: AnyRow, came: readonly Came[]): string | undefined {
  const parts = row.formula.split('; ');
  const choices = came.flatMap(({ arg, value }) => (isChoice(arg.kind) ? [String(value)] : []));
  const labels = parts.map((part) => LABEL.exec(part)?.[1]);
  if (labels.every((label) => label === undefined)) return row.formula;
  const chosen = labels.findIndex((label) => label !== undefined && choices.some((c) => isFor(label, c)));
  return parts[chosen]?.replace(LABEL, '');
}

/**
 * The formula with numbers in the place of its arguments: "2 · log2(11.31 / 8)".
 *
 * Only where nothing but numbers, known functions and signs is left, and every argument that was given stands in it.
 * Formulas that say something in words have no such form.
 */
export function formulaWithNumbers(row: AnyRow, came: readonly Came[]): string | undefined {
  const part = partFor(row, came);
  if (part === undefined) return undefined;
  const defined = definedIn(part);
  const used = new Set<string>();
  let isWhole = true;
  const text = part.replace(WORD, (word, offset: number) => {
    if (KNOWN.has(word) || defined.has(word) || word === 'm/s²') return word;
    const name = argumentOf(row, word);
    const found = came.find(({ arg }) => arg.name === name);
    if (name === undefined || typeof found?.value !== 'number') {
      isWhole = false;
      return word;
    }
    used.add(name);
    return numberText(found.value, found.quantity, /^[²³⁴⁵⁶^]/.test(part.slice(offset + word.length)));
  });
  const isAllUsed = came.every(
    ({ arg, value }) =>
      isChoice(arg.kind) ||
      isTruth(arg.kind) ||
      // also where neither is there
      value === arg.fallback ||
      used.has(arg.name),
  );
  return isWhole && isAllUsed && used.size > 0 ? text : undefined;
}

function numberText(value: number, quantity: Quantity | undefined, isRaised: boolean): string {
  const unit = quantity === undefined || quantity.plainInFormula ? '' : quantity.unit;
  const number = near(value).replace('-', '−');
  const text = withUnit(number, unit);
  return value < 0 || (isRaised && unit !== '') || number.includes('e') ? `(${text})` : text;
}

/**
 * What the signs and names of a formula came to: "N (aperture)" and "11.31". Arguments that the formula does not name, or
 * that are not given, have no line; a list has one always, as formulas speak of its members.
 */
export const whereLines = (row: AnyRow, came: readonly Came[]): readonly Where[] =>
  came.flatMap(({ arg, quantity, value }) => {
    const sign = wordFor(row, arg) ?? (arg.takes === 'one' ? undefined : arg.name);
    if (sign === undefined || value === undefined || quantity === undefined) return [];
    if (arg.optional && Array.isArray(value) && value.length === 0) return [];
    const name = sign === arg.name ? sign : `${sign} (${arg.name})`;
    return [{ name, value: valueText(value, quantity) }];
  });

const MEMBERS = 3;

function valueText(value: NonNullable<Came['value']>, quantity: Quantity): string {
  if (typeof value === 'number') return worth(value, quantity);
  if (typeof value !== 'object') return String(value);
  const more = value.length - MEMBERS;
  const shown = value.slice(0, MEMBERS).map((one) => worth(one, quantity));
  return `${shown.join('; ')}${more > 0 ? ` and ${more} more` : ''}`;
}
