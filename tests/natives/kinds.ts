import { parseArea } from '../../src/formula/areaText';
import { address } from '../../src/formula/address';
import { type Piece, readFormula } from '../../src/formula/tree';
import type { TestCell } from '../engine/book';
import { cellAt } from './sheet';

/** What a piece of a formula may be; a call may give anything but a truth value unless its name says so. */
export type Kind = 'number' | 'text' | 'truth' | 'empty' | 'error' | 'any';

const TRUTHS = new Set(['AND', 'OR', 'NOT', 'XOR', 'EXACT', 'TRUE', 'FALSE']);
const COMPARISONS = new Set(['=', '<>', '<', '>', '<=', '>=']);
/** Calls that hand on what some of their arguments are. */
const HANDS_ON: Readonly<Record<string, (args: readonly Piece[]) => readonly Piece[]>> = {
  IF: (args) => args.slice(1),
  IFERROR: (args) => args,
  IFNA: (args) => args,
  CHOOSE: (args) => args.slice(1),
  INDEX: (args) => args.slice(0, 1),
};

function kindOfCell(cell: TestCell): Kind {
  if (cell === null) return 'empty';
  if (typeof cell === 'boolean') return 'truth';
  if (typeof cell === 'number') return 'number';
  if (cell === '=1/0' || cell === '=NA()') return 'error';
  return 'text';
}

/** The cells that a reference names. */
export function cellsOf(reference: string): string[] {
  const area = parseArea(reference);
  if (!area) return [];
  return Array.from({ length: area.rows * area.columns }, (_, i) =>
    address({ row: area.row + Math.floor(i / area.columns), column: area.column + (i % area.columns) }),
  );
}

const merged = (pieces: readonly Piece[]): Set<Kind> =>
  new Set(pieces.flatMap((piece) => [...kindsOf(piece)]));

/** The arguments that a call may give as they are. */
export const handedOn = ({ name, args }: Piece & { readonly kind: 'call' }): readonly Piece[] =>
  HANDS_ON[name.toUpperCase()]?.(args) ?? [];

/** All that a piece may be, by what is written in it and what the sheet holds. */
export function kindsOf(piece: Piece): ReadonlySet<Kind> {
  switch (piece.kind) {
    case 'value':
      return new Set([typeof piece.value === 'object' ? 'error' : kindOfCell(piece.value)]);
    case 'list':
      return new Set(
        piece.rows.flat().map((value) => (typeof value === 'object' ? 'error' : kindOfCell(value))),
      );
    case 'reference':
      return new Set(cellsOf(piece.text).map((a1) => kindOfCell(cellAt(a1))));
    case 'call': {
      const name = piece.name.toUpperCase();
      if (TRUTHS.has(name) || name.startsWith('IS')) return new Set(['truth']);
      return merged(handedOn(piece)).add('any');
    }
    case 'calculation':
      if (COMPARISONS.has(piece.sign ?? '')) return new Set(['truth']);
      return new Set([piece.sign === '&' ? 'text' : 'number']);
    default:
      return new Set(['empty']);
  }
}

export const mayBe = (piece: Piece | undefined, kind: Kind): boolean =>
  piece !== undefined && kindsOf(piece).has(kind);

/** Every piece of a formula, itself first. */
export function piecesOf(formula: string): Piece[] {
  const found: Piece[] = [];
  const look = (piece: Piece): void => {
    found.push(piece);
    if (piece.kind === 'call') piece.args.forEach(look);
    if (piece.kind === 'calculation') piece.parts.forEach(look);
  };
  const whole = readFormula(formula);
  if (whole) look(whole);
  return found;
}
