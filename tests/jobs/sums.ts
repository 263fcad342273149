/** A sum as it is written out: what was worked, and what comes of it. */
export interface Sum {
  readonly line: string;
  readonly worked: string;
  readonly result: string;
}

/** A minus is the printed one, with nothing between it and the figures. */
const NUMBER = /−?\d+(?:\.\d+)?/;

/** "Open: 18 × (1.6 + 0.4) = 36 s" is a sum; words and letters that stand for numbers are none. */
export function sumOf(line: string): Sum | undefined {
  const at = line.lastIndexOf(' = ');
  const result = new RegExp(`^${NUMBER.source}`).exec(line.slice(at + 3))?.[0];
  if (at < 0 || result === undefined) return undefined;
  const worked = line.slice(0, at).split(': ').at(-1) as string;
  const pieces = piecesOf(worked);
  return pieces === undefined ? undefined : { line, worked, result };
}

/** Every number of a text. */
export const numbersIn = (text: string): number[] =>
  (text.match(new RegExp(NUMBER, 'g')) ?? []).map((figures) => Number(figures.replace('−', '-')));

const PIECE =
  /\s*(round to cents|round to units|nearest whole|log10|log2|ln|exp|arctan|π|\d+(?:\.\d+)?|[-+−×·/^()√⌈⌉⌊⌋])\s*/y;

function piecesOf(text: string): string[] | undefined {
  const pieces: string[] = [];
  PIECE.lastIndex = 0;
  while (PIECE.lastIndex < text.length) {
    const piece = PIECE.exec(text)?.[1];
    if (piece === undefined) return undefined;
    pieces.push(piece);
  }
  return pieces.length > 0 ? pieces : undefined;
}

const FUNCTIONS: Readonly<Record<string, (x: number) => number>> = {
  '√': Math.sqrt,
  log2: Math.log2,
  log10: Math.log10,
  ln: Math.log,
  exp: Math.exp,
  arctan: Math.atan,
  'round to cents': (x) => Math.round(100 * x) / 100,
  'round to units': Math.round,
  'nearest whole': Math.round,
};
const CLOSED: Readonly<Record<string, { readonly by: string; readonly gives: (x: number) => number }>> = {
  '(': { by: ')', gives: (x) => x },
  '⌈': { by: '⌉', gives: Math.ceil },
  '⌊': { by: '⌋', gives: Math.floor },
};

/** Works a sum as a pocket calculator does: powers first, then × and /, then + and −. `figures` reads its numbers. */
function calculate(pieces: readonly string[], figures: (piece: string, at: number) => number): number {
  let at = 0;
  const next = (...wanted: string[]): string | undefined =>
    wanted.includes(pieces[at] as string) ? pieces[at++] : undefined;

  function single(): number {
    const place = at;
    const piece = pieces[at++] as string;
    if (piece === '−' || piece === '-') return -power();
    if (piece === 'π') return Math.PI;
    const known = FUNCTIONS[piece];
    if (known) return known(single());
    const closed = CLOSED[piece];
    if (!closed) return figures(piece, place);
    const inside = closed.gives(terms());
    if (next(closed.by) === undefined) throw new Error(`${closed.by} is missing in ${pieces.join(' ')}.`);
    return inside;
  }
  function power(): number {
    const base = single();
    return next('^') ? base ** power() : base;
  }
  function factors(): number {
    let product = power();
    for (let sign = next('×', '·', '/'); sign; sign = next('×', '·', '/'))
      product = sign === '/' ? product / power() : product * power();
    return product;
  }
  function terms(): number {
    let sum = factors();
    for (let sign = next('+', '−', '-'); sign; sign = next('+', '−', '-'))
      sum += sign === '+' ? factors() : -factors();
    return sum;
  }
  const all = terms();
  if (at < pieces.length || Number.isNaN(all)) throw new Error(`"${pieces.join(' ')}" is no sum.`);
  return all;
}

/** What a number with a decimal point may be off: half of its seventh figure, where it shows six or more. */
function rest(figures: string): number {
  const [whole = '', decimals = ''] = figures.split('.');
  const digits = (whole + decimals).replace(/^0+/, '').length;
  return decimals === '' || digits < 6 ? 0 : 0.5 * 10 ** (digits - 7 - decimals.length);
}

/** How far a sum's result lies from what is written, and how far it may: figures are shown to seven, and carried on in full. */
export function errorOf({ worked: text, result }: Sum): { readonly off: number; readonly may: number } {
  const pieces = piecesOf(text) as string[];
  const exact = calculate(pieces, Number);
  const shaken = pieces.map((piece, i) =>
    /^\d/.test(piece)
      ? Math.abs(calculate(pieces, (each, at) => Number(each) + (at === i ? rest(piece) : 0)) - exact)
      : 0,
  );
  const shown = Number(result.replace('−', '-'));
  const last = 0.5 * 10 ** (Math.floor(Math.log10(Math.abs(shown) || 1)) - 6);
  return { off: Math.abs(exact - shown), may: 1.01 * (last + shaken.reduce((a, b) => a + b, 0)) + 1e-12 };
}
