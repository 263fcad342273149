/** * is any text, ? any sign, and ~ takes the meaning from the one that follows it: from these two and from ~ itself. */
const PIECE = /~[*?~]|[*?]|[^*?~]+|~/g;
const literal = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');

function piecePattern(piece: string): string {
  if (piece === '*') return '[^]*';
  if (piece === '?') return '[^]';
  return literal(/^~[*?~]$/.test(piece) ? piece.slice(1) : piece);
}

/** Whether a text asks for more than itself. */
export const hasWildcards = (text: string): boolean => /[*?~]/.test(text);
const source = (text: string): string => (text.match(PIECE) ?? []).map(piecePattern).join('');
/** For a text as a whole, whatever its letters' case. */
export const wholePattern = (text: string): RegExp => new RegExp(`^${source(text)}$`, 'iu');
/** For a text within another. */
export const partPattern = (text: string): RegExp => new RegExp(source(text), 'giu');
