import { NAMESPACE, rowOf } from '../catalogue';
import { ownNames } from './calls';
import { lex, type Token, type TokenOf } from './lex';
import { NEWER_FUNCTIONS } from './newerFunctions';
import { isOurs, OURS } from './names';
import { Operands } from './operands';

/** Letters, as in every spreadsheet program. */
const LONGEST = 8192;
export const isTooLong = (formula: string): boolean => formula.length > LONGEST;

/** How a file spells an add-in's function: SWEEP.STOPDIFF is _xldudf_SWEEP_STOPDIFF. */
const ADD_IN = '_xldudf_';
const OURS_STORED = `${ADD_IN}${NAMESPACE}_`.toUpperCase();
/** Put before a function younger than the file format, and before a name that LET or LAMBDA gives. */
const MARKS = /^(?:_xlfn\.(?:_xlws\.)?|_xlws\.|_xlpm\.)/i;
/** A1# is spelt as a call in a file, and so is @A1:A5. */
const SPILL = '_xlfn.ANCHORARRAY(';
const ONE_CELL = '_xlfn.SINGLE(';

/** The function of ours that a name stands for in a file, as typed. */
const oursStored = (name: string): string | undefined =>
  name.toUpperCase().startsWith(OURS_STORED)
    ? OURS + name.slice(OURS_STORED.length).toUpperCase()
    : undefined;

/**
 * A name of a file as a person types it. Another add-in's function keeps the file's spelling: which of its lines stand for
 * dots is not known.
 */
const typedName = ({ raw, name }: TokenOf<'call' | 'name'>, after: string): string => {
  const ours = oursStored(name);
  return ours === undefined ? raw.replace(MARKS, '') : ours + after;
};

/** A formula of a file as a person types it, with its =. */
export function asTyped(text: string): string {
  return /_xl/i.test(text) ? `=${typedTokens(lex(text)).join('')}` : `=${text}`;
}

function typedTokens(tokens: readonly Token[]): string[] {
  const operands = new Operands(tokens);
  /** What takes the place of the brackets that are yet to close. */
  const closing: string[] = [];
  return tokens.map((token, at) => {
    if (token.kind === 'close') return closing.pop() ?? token.raw;
    if (token.kind === 'name') return typedName(token, '');
    if (token.kind === 'open') closing.push(')');
    if (token.kind !== 'call') return token.raw;
    const isSpill = token.raw.toUpperCase() === SPILL.toUpperCase();
    const isOne = token.raw.toUpperCase() === ONE_CELL.toUpperCase();
    const end = isSpill || isOne ? operands.end(at + 1) : undefined;
    const isAlone = end !== undefined && tokens[end]?.kind === 'close';
    closing.push(isAlone ? (isSpill ? '#' : '') : ')');
    if (isAlone) return isSpill ? '' : '@';
    return isOne ? '@(' : typedName(token, '(');
  });
}

/** A formula that a person typed as a file stores it, without its =. */
export function asStored(formula: string): string {
  const text = formula.replace(/^=/, '');
  return /[(#@]/.test(text) ? storedTokens(lex(text)).join('') : text;
}

function storedTokens(tokens: readonly Token[]): string[] {
  const own = ownNames(tokens);
  const stored = tokens.map((token) => {
    if (token.kind === 'call' && token.before === undefined)
      return own.has(token.name.toLowerCase()) ? `_xlpm.${token.raw}` : storedCall(token.raw);
    if (token.kind === 'name' && token.before === undefined)
      return own.has(token.name.toLowerCase()) ? `_xlpm.${token.raw}` : storedOurs(token.raw);
    return token.kind === 'cells' && token.spills ? `${SPILL}${token.raw.slice(0, -1)})` : token.raw;
  });
  const operands = new Operands(tokens);
  wrap(tokens, operands, stored, '#');
  wrap(tokens, operands, stored, '@');
  return stored;
}

/** Makes a call of each sign that a file has not, around the operand that it belongs to. */
function wrap(tokens: readonly Token[], operands: Operands, stored: string[], sign: '#' | '@'): void {
  for (const [at, { kind, raw }] of tokens.entries()) {
    if (kind !== 'sign' || raw !== sign) continue;
    const start = sign === '#' ? operands.start(at) : at + 1;
    const end = sign === '#' ? at : operands.end(at + 1);
    if (start === undefined || end === undefined) continue;
    stored[at] = stored[at]?.slice(sign.length) ?? '';
    stored[start] = (sign === '#' ? SPILL : ONE_CELL) + stored[start];
    stored[end - 1] += ')';
  }
}

const storedOurs = (name: string): string =>
  isOurs(name.toUpperCase()) ? ADD_IN + name.toUpperCase().replaceAll('.', '_') : name;

function storedCall(called: string): string {
  const name = called.slice(0, -1);
  const ours = storedOurs(name);
  return ours === name ? (NEWER_FUNCTIONS.get(name.toUpperCase()) ?? '') + called : `${ours}(`;
}

/**
 * A formula with our functions under the names that they are known by, or undefined where none is lost.
 *
 * Where Excel opens a workbook without the add-in, it keeps a function as `_xldudf_SWEEP_STOPDIFF`, at times with the place in
 * front that it believes the function to come from, and does not always find back.
 */
export function withNamesMended(formula: string): string | undefined {
  if (!formula.startsWith('=') || !formula.toUpperCase().includes(NAMESPACE)) return undefined;
  const mended = lex(formula)
    .map((token) => (token.kind === 'call' ? (lostName(token) ?? token.raw) : token.raw))
    .join('');
  return mended === formula ? undefined : mended;
}

/** The call as it is known, where it stands under another name and the catalogue has such a function. */
function lostName({ before, name }: TokenOf<'call'>): string | undefined {
  const ours = oursStored(name) ?? (before !== undefined && isOurs(name) ? name : undefined);
  return ours !== undefined && rowOf(ours.slice(OURS.length)) ? `${ours}(` : undefined;
}
