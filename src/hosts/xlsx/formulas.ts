import { NAMESPACE } from '../../catalogue';
import { address, place } from '../../sheets/address';
import { NEWER_FUNCTIONS } from './newerFunctions';
import { MOST_COLUMNS, MOST_ROWS } from './refs';

/** How a file spells an add-in's function: SWEEP.STOPDIFF is _xldudf_SWEEP_STOPDIFF. */
const ADD_IN = '_xldudf_';
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
export function typed(text: string): string {
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
export function stored(formula: string): string {
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

const OUTSIDE = joined('g', TEXT, /(?<other>'(?:[^']|'')*\[(?:[^']|'')*'!|\[[^[\]]+\][\w.]*!)/, SHEET);

/** Whether a formula of a file, our functions turned back, looks into another file. */
export const looksOutside = (formula: string): boolean =>
  [...formula.matchAll(OUTSIDE)].some((match) => match.groups?.other !== undefined);

const ROW_OR_COLUMN =
  /(?<![\w.$])(?<from>\$?[A-Za-z]{1,3}|\$?\d{1,7}):(?<to>\$?[A-Za-z]{1,3}|\$?\d{1,7})(?![\w.(!$])/;
const CELL = /(?<![\w.$])(?<cell>\$?[A-Za-z]{1,3}\$?[1-9]\d{0,6})(?![\w.(!])/;
const REFERENCES = joined('g', TEXT, SHEET, BRACKETS, ROW_OR_COLUMN, CELL);

/** The formula of a cell as it reads so many rows down and columns to the right: files store alike formulas once. */
export function shifted(formula: string, rows: number, columns: number): string {
  if (rows === 0 && columns === 0) return formula;
  return formula.replace(REFERENCES, (piece, ...more) => {
    const { from, to, cell } = more.at(-1) as Record<string, string | undefined>;
    if (cell !== undefined) return shiftedCell(cell, rows, columns);
    if (from === undefined || to === undefined) return piece;
    const ends = [from, to].map((end) => shiftedEnd(end, rows, columns));
    return ends.includes('#REF!') ? '#REF!' : ends.join(':');
  });
}

function shiftedCell(cell: string, rows: number, columns: number): string {
  const [, columnFixed = '', , rowFixed = ''] = /^(\$?)([A-Za-z]+)(\$?)/.exec(cell) ?? [];
  const at = place(cell.replaceAll('$', '').toUpperCase());
  if (!at || at.row >= MOST_ROWS || at.column >= MOST_COLUMNS) return cell;
  const row = at.row + (rowFixed ? 0 : rows);
  const column = at.column + (columnFixed ? 0 : columns);
  if (row < 0 || row >= MOST_ROWS || column < 0 || column >= MOST_COLUMNS) return '#REF!';
  const [, letters = '', digits = ''] = /^([A-Z]+)(\d+)$/.exec(address({ row, column })) ?? [];
  return columnFixed + letters + rowFixed + digits;
}

/** One end of "A:C" or "2:4". */
function shiftedEnd(end: string, rows: number, columns: number): string {
  if (end.startsWith('$')) return end;
  const isColumn = /[A-Za-z]/.test(end);
  const whole = shiftedCell(isColumn ? `${end}1` : `A${end}`, isColumn ? 0 : rows, isColumn ? columns : 0);
  return whole === '#REF!' ? whole : whole.replace(isColumn ? /\d+$/ : /^A/, '');
}
