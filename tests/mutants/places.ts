/** A part of a text, by its characters from 0. */
export interface Range {
  readonly start: number;
  readonly end: number;
}

export const inOneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();

/** The formatter puts a comma before a bracket that stands on a line of its own. */
const LAST_COMMA = /,(?=\s*[)\]}])/g;

/** Code without all that the formatter decides when a line is moved: its indentation, its breaks, its last commas. */
export const canonical = (code: string): string =>
  inOneLine(code.replace(LAST_COMMA, '')).replace(/(?<=[([{]) | (?=[)\]}.])/g, '');

const isWord = (sign: string): boolean => /[\w$]/.test(sign);
const escaped = (text: string): string => text.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&');

/** Where some code stands in a source, however its lines are broken there; words only as a whole. */
export function placesOf(source: string, code: string): Range[] {
  const signs = code.replace(LAST_COMMA, '').match(/[\w$]+|[^\s\w$]/g) ?? [];
  const pattern = signs.map((sign, i) => {
    const before = signs[i - 1];
    if (before === undefined) return escaped(sign);
    const gap = isWord(before) && isWord(sign) ? '\\s+' : '\\s*';
    return `${gap}${/[)\]}]/.test(sign) ? '(?:,\\s*)?' : ''}${escaped(sign)}`;
  });
  if (isWord(signs[0] ?? '')) pattern.unshift('(?<![\\w$])');
  if (isWord(signs.at(-1) ?? '')) pattern.push('(?![\\w$])');
  return [...source.matchAll(new RegExp(pattern.join(''), 'g'))].map(({ index, 0: { length } }) => ({
    start: index,
    end: index + length,
  }));
}
