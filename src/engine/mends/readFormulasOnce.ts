/**
 * A column of formulas says one thing for each of its rows, =A1*2, =A2*2, =A3*2 …, and the engine (0.25.1) reads each of them
 * anew, twice for every calculation: of a hundred thousand rows that is half of the time. It can take one formula as another
 * that is moved, as it does where a file says so, and here it is told of all that are. The place is where it notes what formula a
 * cell has; it is reached no other way. A formula with anything but cells, values, signs and functions is read for itself.
 */
import { FormulaDependencyGenerator } from '@univerjs/engine-formula';
import { parseAddress } from '../../formula/address';
import { replaceMethod } from './replaceMethod';

interface Noted {
  formula: string;
  row: number;
  column: number;
  refOffsetX: number;
  refOffsetY: number;
}
/** Which cells these name is found out before all else, by a way of its own. */
const OWN_WAY = /^(?:OFFSET|INDIRECT|INDEX)$/i;
const PIECE =
  /"(?:[^"]|"")*"|\$?[A-Za-z]{1,3}\$?\d+(?![\w.(])|[A-Za-z_][\w.]*\(?|\d+\.?\d*(?:[eE][+-]?\d+)?|\.\d+|[\s=<>+\-*/^&%,():]|[^]/g;
const CELL = /^(\$?)([A-Za-z]{1,3})(\$?)(\d+)$/;
const PLAIN = /^(?:"[^]*"|\d.*|\.\d+|[\s=<>+\-*/^&%,():]|TRUE|FALSE)$/i;

/** A formula as it is seen from its cell: two that are alike so are one formula, moved. Undefined where that is not sure. */
export function seenFromCell(formula: string, row: number, column: number): string | undefined {
  let seen = '';
  let before = { isCell: false, isFixed: false };
  let isRange = false;
  for (const [piece] of formula.matchAll(PIECE)) {
    const cell = CELL.exec(piece);
    if (!cell) {
      const isFunction = piece.endsWith('(') && piece.length > 1 && !OWN_WAY.test(piece.slice(0, -1));
      if (!isFunction && !PLAIN.test(piece)) return undefined;
      if (piece === ':' && !before.isCell) return undefined;
      isRange = piece === ':';
      seen += piece;
      if (!isRange) before = { isCell: false, isFixed: false };
      continue;
    }
    const [, columnSign, letters = '', rowSign, digits = ''] = cell;
    const place = parseAddress(letters.toUpperCase() + digits);
    if (!place || columnSign !== rowSign) return undefined;
    const isFixed = columnSign === '$';
    if (isRange && before.isFixed !== isFixed) return undefined;
    seen += isFixed ? piece : `[${place.row - row},${place.column - column}]`;
    before = { isCell: true, isFixed };
    isRange = false;
  }
  return seen;
}

/** By what is seen from their cells, the first formulas of this calculation. */
const firsts = new Map<string, { readonly formula: string; readonly row: number; readonly column: number }>();

const prototype = FormulaDependencyGenerator.prototype;
replaceMethod<unknown[], void>(
  prototype,
  '_registerFormulas',
  (register) =>
    function (...args) {
      firsts.clear();
      register.apply(this, args);
      firsts.clear();
    },
);
replaceMethod<unknown[], Noted>(
  prototype,
  '_createFDtree',
  (create) =>
    function (...args) {
      const noted = create.apply(this, args);
      const { formula, row, column } = noted;
      const seen = seenFromCell(formula, row, column);
      if (seen === undefined) return noted;
      const first = firsts.get(seen);
      if (!first) firsts.set(seen, { formula, row, column });
      else
        Object.assign(noted, {
          formula: first.formula,
          refOffsetX: column - first.column,
          refOffsetY: row - first.row,
        });
      return noted;
    },
);
