import { OUR_WORDS, type Words } from './ourWords';

/** Written with a capital wherever they stand. */
const NAMES: ReadonlySet<string> = new Set(['Excel', 'Univer', 'Ctrl', 'Unicode', 'True', 'False']);
const CAPITAL = /^\p{Lu}[\p{Ll}']+$/u;

/** A title with a capital on each word, as a sentence has it. */
export function inSentenceCase(text: string): string {
  let begins = true;
  return text.replaceAll(/[\p{L}\p{N}']+|[.?!:]/gu, (piece) => {
    const lower = !begins && CAPITAL.test(piece) && !NAMES.has(piece);
    begins = /^[.?!:]$/.test(piece);
    return lower ? piece.charAt(0).toLowerCase() + piece.slice(1) : piece;
  });
}

/** Names of functions, of typefaces, of countries and their money: they are not titles. */
const AS_THEY_ARE = /function|font|currency|locale|country/i;

const sentences = (words: Words): Words =>
  Object.fromEntries(
    Object.entries(words).map(([key, value]) => {
      if (AS_THEY_ARE.test(key)) return [key, value];
      if (typeof value === 'string') return [key, inSentenceCase(value)];
      return [key, Array.isArray(value) ? value : sentences(value as Words)];
    }),
  );

function merged(words: Words, more: Words): Words {
  const both: Record<string, Words[string]> = { ...words };
  for (const [key, value] of Object.entries(more)) {
    const old = both[key];
    both[key] =
      typeof value === 'object' && typeof old === 'object' ? merged(old as Words, value as Words) : value;
  }
  return both;
}

/** The grid's own words as the page around it writes: in sentence case, and in our words where we have better ones. */
export const inOurWords = <W extends object>(words: W): W =>
  merged(sentences(words as Words), OUR_WORDS) as W;
