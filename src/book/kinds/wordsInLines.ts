import type { Part } from '../book';
import type { Check, Kind } from './kind';

export interface WordsInLinesWish {
  /** Words that are too long for their column go on in more lines; of results the row's height is not known before. */
  readonly wrap?: true;
}

/** Points of words that go on in more lines: a long table takes fewer pages. */
export const WRAPPED_SIZE = 9;
/** What is typed in keeps its size. */
const SMALLER: ReadonlySet<Part> = new Set(['held', 'result']);

export const wordsInLines: Kind = {
  look: ({ wrap }, part) =>
    wrap ? { wrap: true, ...(SMALLER.has(part) ? { size: WRAPPED_SIZE } : {}) } : {},
};

export const wordsInLinesCheck: Check = {
  property: 'wrap',
  of: ['column'],
  shape: { const: true, description: 'Words that are too long for their column go on in more lines.' },
};
