import { columnName, parseAddress } from './address';
import { MOST_COLUMNS, MOST_ROWS } from './areaText';
import { lex, type TokenOf } from './lex';

/** Says how something reads so many rows down and columns to the right. */
export type Shift = (rows: number, columns: number) => string;

/** A formula that files store once for many cells, taken apart once: it may be asked for very many of them. */
export function shifter(formula: string): Shift {
  const pieces = lex(formula).map((token) => {
    if (token.kind === 'cells') return ofCells(token);
    return token.kind === 'lines' ? ofLines(token) : token.raw;
  });
  return (rows, columns) =>
    rows === 0 && columns === 0
      ? formula
      : pieces.map((piece) => (typeof piece === 'string' ? piece : piece(rows, columns))).join('');
}

function ofCells({ before = '', from, to, spills }: TokenOf<'cells'>): Shift {
  const ends = [from, ...(to === undefined ? [] : [to])].map(ofCell);
  const after = spills ? '#' : '';
  return (rows, columns) => before + ends.map((end) => end(rows, columns)).join(':') + after;
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

function ofLines({ before = '', from, to }: TokenOf<'lines'>): Shift {
  const ends = [from, to].map(ofEnd);
  return (rows, columns) => {
    const both = ends.map((end) => end(rows, columns));
    return before + (both.includes('#REF!') ? '#REF!' : both.join(':'));
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
