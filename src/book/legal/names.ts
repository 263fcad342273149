import { parseAddress } from '../../formula/address';
import { MOST_COLUMNS, MOST_ROWS } from '../../formula/areaText';

/** What a name of a file may be, and what it becomes where it is something else. */
export interface Naming {
  /** Letters. */
  readonly most: number;
  /** Why a name may not be, in words that follow a colon; undefined where it may. */
  wrong(name: string): string | undefined;
  /** A name that may be, near to this one. */
  near(name: string): string;
  /** The same name with a number, for where it is taken. */
  numbered(name: string, number: number): string;
}

/** The beginning of a text, with no letter of two halves cut through. */
export const cut = (text: string, most: number): string =>
  text.slice(0, most).replace(/[\uD800-\uDBFF]$/u, '');

const NOT_IN_SHEETS = /[/?*[\]:\\\p{Cc}]/u;
const LONGEST_SHEET = 31;
/** Names a sheet of its own, where a program keeps track of changes. */
const RESERVED = 'history';

export const OF_SHEETS: Naming = {
  most: LONGEST_SHEET,
  wrong(name) {
    if (name.trim() === '') return 'it must have a name';
    if (NOT_IN_SHEETS.test(name)) return 'the name of a sheet may have none of / ? * [ ] : \\ in it';
    if (/^'|'$/.test(name)) return 'the name of a sheet may not begin or end with an apostrophe';
    if (name.length > LONGEST_SHEET) return `the name of a sheet has at most ${LONGEST_SHEET} letters`;
    return name.toLowerCase() === RESERVED ? 'that name is reserved' : undefined;
  },
  near(name) {
    const plain = name
      .replaceAll(new RegExp(NOT_IN_SHEETS, 'gu'), '-')
      .replaceAll(/^'+|'+$/g, '')
      .trim();
    const short = cut(plain || 'Sheet', LONGEST_SHEET).replace(/[\s']+$/, '');
    return short.toLowerCase() === RESERVED ? `${short} 1` : short;
  },
  numbered: (name, number) => `${name} (${number})`,
};

const LONGEST_NAME = 255;
const isAddress = (name: string): boolean => {
  const at = parseAddress(name.toUpperCase());
  return at !== undefined && at.row < MOST_ROWS && at.column < MOST_COLUMNS;
};
/** C, R, R1, C3 and R1C1 are addresses in the other way to count. */
const isCounted = (name: string): boolean => /^(?:r\d*)?(?:c\d*)?$/i.test(name);
const readsLikeAddress = (name: string): boolean => isAddress(name) || isCounted(name);
const readsLikeTruth = (name: string): boolean => /^(?:true|false)$/i.test(name);

/** Names for cells and formulas, and those of tables, which stand beside them. */
export const OF_NAMES: Naming = {
  most: LONGEST_NAME,
  wrong(name) {
    if (name === '') return 'it must have a name';
    if (readsLikeAddress(name)) return 'such a name reads like the address of a cell';
    if (readsLikeTruth(name)) return 'such a name reads like TRUE or FALSE';
    if (!/^[\p{L}_\\][\p{L}\p{M}\p{N}_.]*$/u.test(name))
      return 'such a name begins with a letter, and has letters, digits, _ and . in it alone';
    return name.length > LONGEST_NAME ? `such a name has at most ${LONGEST_NAME} letters` : undefined;
  },
  near(name) {
    const plain = cut(name.replaceAll(/[^\p{L}\p{M}\p{N}_.]/gu, '_'), LONGEST_NAME - 1);
    const begun = /^[\p{L}_]/u.test(plain) ? plain : `_${plain}`;
    return readsLikeAddress(begun) || readsLikeTruth(begun) ? `_${begun}` : begun;
  },
  numbered: (name, number) => `${name}_${number}`,
};

const LONGEST_COLUMN = 255;
/** Headings of a table. */
export const OF_COLUMNS: Naming = {
  most: LONGEST_COLUMN,
  wrong(name) {
    if (name.trim() === '') return 'a column must have a heading';
    return name.length > LONGEST_COLUMN ? `a heading has at most ${LONGEST_COLUMN} letters` : undefined;
  },
  near: (name) => (name.trim() === '' ? 'Column' : cut(name, LONGEST_COLUMN)),
  numbered: (name, number) => `${name}${number}`,
};

const TAKEN = 'capitals alone do not tell two apart';

/** A name for each of those that stand beside one another, and why where it is another one. */
export interface Named {
  readonly name: string;
  readonly why?: string;
}

/** Gives each a name that may be and that no other has. What may keep its own does, the first of several alike. */
export function legalNames(names: readonly string[], naming: Naming): readonly Named[] {
  const taken = new Set<string>();
  const keeps = names.map((name) => {
    const isFree = naming.wrong(name) === undefined && !taken.has(name.toLowerCase());
    if (isFree) taken.add(name.toLowerCase());
    return isFree;
  });
  return names.map((name, i) => {
    if (keeps[i]) return { name };
    const free = freeName(naming.near(name), naming, taken);
    taken.add(free.toLowerCase());
    return { name: free, why: naming.wrong(name) ?? TAKEN };
  });
}

function freeName(name: string, naming: Naming, taken: ReadonlySet<string>): string {
  let free = name;
  for (let number = 2; taken.has(free.toLowerCase()); number++) {
    const room = naming.most - naming.numbered('', number).length;
    free = naming.numbered(cut(name, room).trimEnd(), number);
  }
  return free;
}
