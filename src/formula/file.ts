import { NAMESPACE } from '../catalogue';
import { columnName, parseAddress } from './address';
import { NEWER_FUNCTIONS } from './newerFunctions';
import { MOST_COLUMNS, MOST_ROWS } from './areas';

/** How a file spells an add-in's function: SWEEP.STOPDIFF is _xldudf_SWEEP_STOPDIFF. */
const ADD_IN = '_xldudf_';
/** Letters, as in every spreadsheet program. */
const LONGEST = 8192;
export const isTooLong = (formula: string): boolean => formula.length > LONGEST;

const TEXT = /"(?:[^"]|"")*"/;
const SHEET = /'(?:[^']|'')*'/;
const BRACKETS = /\[(?:[^[\]]|\[[^[\]]*\])*\]/;

const joined = (flags: string, ...pieces: readonly RegExp[]): RegExp =>
  new RegExp(pieces.map((piece) => piece.source).join('|'), flags);

const AS_STORED = joined(
  'gi',
  TEXT,
  /(?:\[\d+\]!|'[^']*'!)?_xldudf_(?<name>\w+)/,
  SHEET,
  /_xlfn\.ANCHORARRAY\((?<spill>[^()]*)\)/,
  /_xlfn\.SINGLE\((?<single>[^()]*)\)/,
  /_xlfn\.(?:_xlws\.)?|_xlws\.|_xlpm\./,
);

/** A formula of a file as a person types it, with its =. */
export function asTyped(text: string): string {
  const plain = text.replace(AS_STORED, (piece, ...more) => {
    const { name, spill, single } = more.at(-1) as Record<string, string | undefined>;
    if (name !== undefined) return typedName(piece, name);
    if (spill !== undefined) return `${spill}#`;
    if (single !== undefined) return `@${single}`;
    return /^["']/.test(piece) ? piece : '';
  });
  return `=${plain}`;
}

/** Another add-in's function keeps the file's spelling: which of its lines stand for dots is not known. */
function typedName(piece: string, name: string): string {
  const ours = `${NAMESPACE}_`;
  return name.toUpperCase().startsWith(ours)
    ? `${NAMESPACE}.${name.slice(ours.length).toUpperCase()}`
    : piece;
}

const CALL = /(?<![\w.])(?<called>[A-Za-z][\w.]*)(?=\()/;
const SPILL_REFERENCE = /(?<![\w.])(?<anchor>\$?[A-Za-z]{1,3}\$?\d{1,7})#/;
const WORD = /(?<![\w.$])(?<word>[A-Za-z_]\w*)(?![\w.(!$])/;
const AS_TYPED = joined('g', TEXT, SHEET, BRACKETS, CALL, SPILL_REFERENCE, WORD);

/** A formula that a person typed as a file stores it, without its =. */
export function asStored(formula: string): string {
  const text = formula.replace(/^=/, '');
  const own = ownNames(text);
  return text.replace(AS_TYPED, (piece, ...more) => {
    const { called, anchor, word } = more.at(-1) as Record<string, string | undefined>;
    if (called !== undefined) return storedCall(called);
    if (anchor !== undefined) return `_xlfn.ANCHORARRAY(${anchor})`;
    return word !== undefined && own.has(word.toLowerCase()) ? `_xlpm.${word}` : piece;
  });
}

function storedCall(name: string): string {
  const upper = name.toUpperCase();
  if (upper.startsWith(`${NAMESPACE}.`)) return ADD_IN + upper.replaceAll('.', '_');
  return (NEWER_FUNCTIONS.get(upper) ?? '') + name;
}

/** Names that the LET and LAMBDA of a formula give to values, in small letters. */
function ownNames(text: string): ReadonlySet<string> {
  const found = new Set<string>();
  if (!/\b(?:LET|LAMBDA)\(/i.test(text)) return found;
  const open: { call: string; argument: number; pieces: string[] }[] = [];
  const PIECES = joined(
    'g',
    TEXT,
    SHEET,
    BRACKETS,
    /(?<called>[A-Za-z_][\w.]*)?(?<open>[({])/,
    /[)},]/,
    /[\w.]+/,
    /\S/,
  );
  for (const match of text.matchAll(PIECES)) {
    const [piece] = match;
    const inner = open.at(-1);
    if (match.groups?.open !== undefined) {
      open.push({ call: (match.groups.called ?? '').toUpperCase(), argument: 0, pieces: [] });
      inner?.pieces.push('(');
    } else if (piece === ')' || piece === '}') open.pop();
    else if (piece === ',' && inner) {
      const [name, more] = inner.pieces;
      const names = inner.call === 'LAMBDA' || (inner.call === 'LET' && inner.argument % 2 === 0);
      if (names && name !== undefined && more === undefined && /^[A-Za-z_]\w*$/.test(name))
        found.add(name.toLowerCase());
      inner.argument++;
      inner.pieces.length = 0;
    } else inner?.pieces.push(piece);
  }
  return found;
}

const OTHER_FILE = /(?<file>'(?:[^']|'')*\[(?:[^']|'')*'!|\[[^[\]]+\][\w.]*!)/;
/** The sign between another program and what it is asked for; it has no other meaning in a formula. */
const OTHER_PROGRAM = /(?<program>\|)/;
const OUTSIDE = joined('g', TEXT, OTHER_FILE, SHEET, BRACKETS, OTHER_PROGRAM);

/** Whether a formula of a file, our functions turned back, looks into another file or program. */
export const looksOutside = (formula: string): boolean =>
  [...formula.matchAll(OUTSIDE)].some(
    ({ groups }) => groups?.file !== undefined || groups?.program !== undefined,
  );

const ROW_OR_COLUMN =
  /(?<![\w.$])(?<from>\$?[A-Za-z]{1,3}|\$?\d{1,7}):(?<to>\$?[A-Za-z]{1,3}|\$?\d{1,7})(?![\w.(!$])/;
const CELL = /(?<![\w.$])(?<cell>\$?[A-Za-z]{1,3}\$?[1-9]\d{0,6})(?![\w.(!])/;
const REFERENCES = joined('g', TEXT, SHEET, BRACKETS, ROW_OR_COLUMN, CELL);

/** Says how something reads so many rows down and columns to the right. */
export type Shift = (rows: number, columns: number) => string;

/** A formula that files store once for many cells, taken apart once: it may be asked for very many of them. */
export function shifter(formula: string): Shift {
  const pieces: (string | Shift)[] = [];
  let end = 0;
  for (const { 0: piece, index, groups: { from, to, cell } = {} } of formula.matchAll(REFERENCES)) {
    const shift =
      cell !== undefined
        ? ofCell(cell)
        : from !== undefined && to !== undefined
          ? ofEnds(from, to)
          : undefined;
    if (!shift) continue;
    pieces.push(formula.slice(end, index), shift);
    end = index + piece.length;
  }
  pieces.push(formula.slice(end));
  return (rows, columns) =>
    rows === 0 && columns === 0
      ? formula
      : pieces.map((piece) => (typeof piece === 'string' ? piece : piece(rows, columns))).join('');
}

function ofCell(cell: string): Shift {
  const [, columnFixed = '', , rowFixed = ''] = /^(\$?)([A-Za-z]+)(\$?)/.exec(cell) ?? [];
  const at = parseAddress(cell.replaceAll('$', '').toUpperCase());
  if (!at || at.row >= MOST_ROWS || at.column >= MOST_COLUMNS) return () => cell;
  return (rows, columns) => {
    const row = at.row + (rowFixed ? 0 : rows);
    const column = at.column + (columnFixed ? 0 : columns);
    if (row < 0 || row >= MOST_ROWS || column < 0 || column >= MOST_COLUMNS) return '#REF!';
    return columnFixed + columnName(column) + rowFixed + String(row + 1);
  };
}

function ofEnds(from: string, to: string): Shift {
  const ends = [from, to].map(ofEnd);
  return (rows, columns) => {
    const both = ends.map((end) => end(rows, columns));
    return both.includes('#REF!') ? '#REF!' : both.join(':');
  };
}

/** One end of "A:C" or "2:4". */
function ofEnd(end: string): Shift {
  if (end.startsWith('$')) return () => end;
  const isColumn = /[A-Za-z]/.test(end);
  const whole = ofCell(isColumn ? `${end}1` : `A${end}`);
  return (rows, columns) => {
    const cell = isColumn ? whole(0, columns) : whole(rows, 0);
    return cell === '#REF!' ? cell : cell.replace(isColumn ? /\d+$/ : /^A/, '');
  };
}
