import { type CellError, cellError } from '../../../src/formula/errors';
import type { Input } from './inputs';

/** What a cell may hold that nobody planned. A text that begins with = is a formula. */
export type Slip = number | string | boolean | null | CellError;

/**
 * What a slip is to its cell. `blank`: as good as nothing, or nothing. `legal`: a value, which in plain notation is `plain`.
 * `wrong`: nothing that the cell can mean. `any`: it is a name, whatever it says.
 */
export type Meaning =
  { readonly is: 'blank' | 'wrong' | 'any' } | { readonly is: 'legal'; readonly plain: number };

export interface Mishap {
  readonly name: string;
  /** What is typed into an input; undefined where that is no mishap there. */
  readonly slip: (input: Input) => Slip | undefined;
  readonly meaning: (input: Input) => Meaning;
}

const BLANK: Meaning = { is: 'blank' };
const WRONG: Meaning = { is: 'wrong' };
const ANY: Meaning = { is: 'any' };

const isWord = ({ quantity, accepts }: Input): boolean =>
  quantity === 'text' || quantity === 'words' || accepts?.list !== undefined;

/** What may be below 0 without a rule that says so: what an instrument records, and the instants of it. */
const SIGNED: readonly string[] = ['number', 'sampleTime'];

/** Whether a bare number is refused wherever its unit is typed: "How cells are read" in the help of the functions. */
function unbelievable({ unit, quantity }: Input, n: number): boolean {
  if (SIGNED.includes(quantity)) return false;
  if (n < 0) return true;
  if (unit === 'f-number') return n > 1000;
  // A spreadsheet makes a date of 1/60.
  return ['s', 'stops', ''].includes(unit) && Number.isInteger(n) && n >= 10_000;
}

function outside(input: Input, n: number): boolean {
  const { accepts } = input;
  if (!accepts) return unbelievable(input, n);
  const { least = -Infinity, most = Infinity, above = -Infinity, whole } = accepts;
  return n < least || n > most || n <= above || (whole === true && !Number.isInteger(n));
}

/** Where a bare 0 is a value: where the sheet takes it, and for stops lost and what an instrument records. */
function takesZero({ accepts, quantity }: Input): boolean {
  if (accepts) return accepts.least !== undefined && accepts.least <= 0;
  return quantity === 'filterStops' || SIGNED.includes(quantity);
}

function numberMeans(input: Input, n: number): Meaning {
  const list = input.accepts?.list;
  if (list) return list.includes(String(n)) ? ANY : WRONG;
  if (isWord(input)) return ANY;
  if (n === 0 && !takesZero(input)) return BLANK;
  return outside(input, n) ? WRONG : { is: 'legal', plain: n };
}

/** A text of a number, or of a number with its unit, where that is read; elsewhere it is nonsense. */
function textMeans(input: Input, plain: number | undefined): Meaning {
  if (isWord(input) && !input.accepts?.list) return ANY;
  return plain === undefined ? WRONG : numberMeans(input, plain);
}

const always = (name: string, slip: Slip, meaning: (input: Input) => Meaning): Mishap => ({
  name,
  slip: () => slip,
  meaning,
});
const typed = (n: number): Mishap => always(String(n), n, (input) => numberMeans(input, n));
/** A text that is read by its unit as these numbers, and nowhere else. */
const unitText = (text: string, plain: Readonly<Record<string, number>>): Mishap =>
  always(text, text, (input) => textMeans(input, plain[input.unit]));

const nothing = (name: string, slip: Slip): Mishap => always(name, slip, () => BLANK);

/** The demo's number, or one that would do as well in an empty cell or in one of a text. */
const usual = ({ value, accepts }: Input): number =>
  typeof value === 'number' ? value : (accepts?.least ?? accepts?.above ?? 0) + 1;

/** The demo's number in another spelling. */
const spelt = (name: string, spelling: (n: number) => string): Mishap => ({
  name,
  slip: (input) => (isWord(input) ? undefined : spelling(usual(input))),
  meaning: (input) => textMeans(input, usual(input)),
});

/** Another number near the demo's. */
const another = (name: string, of: (n: number) => number): Mishap => ({
  name,
  slip: (input) => (isWord(input) ? undefined : of(usual(input))),
  meaning: (input) => numberMeans(input, of(usual(input))),
});

/** In a cell that counts: too many for a tenth, and none that can be counted. */
const counted = (n: number): Mishap => ({
  ...typed(n),
  slip: ({ accepts }) => (accepts?.whole ? n : undefined),
});

/** The number and half of one, with the comma of half the world. */
const COMMA: Mishap = {
  name: 'a decimal comma',
  slip: (input) => (isWord(input) ? undefined : String(usual(input) + 0.5).replace('.', ',')),
  // A comma before three digits may part thousands, unless the number starts with 0: that is refused, not guessed.
  meaning: (input) => {
    const n = usual(input) + 0.5;
    return textMeans(input, n > 1 && /\.\d{3}$/.test(String(n)) ? undefined : n);
  },
};

export const MISHAPS: readonly Mishap[] = [
  nothing('a blank', null),
  nothing('a formula that gives nothing', '=""'),
  nothing('spaces', '   '),
  typed(0),
  typed(-5),
  typed(1e9),
  // The serial number of a day in 2026.
  always('a date', 46_329, (input) => numberMeans(input, 46_329)),
  unitText('80 cm', { mm: 800, m: 0.8, µm: 800_000 }),
  unitText('400 W', {}),
  unitText('1/60', { s: 1 / 60, '': 1 / 60 }),
  unitText('f/11', { 'f-number': 11 }),
  unitText('abc', {}),
  always('an error', cellError('#N/A'), (input) => (isWord(input) && !input.accepts ? ANY : WRONG)),
  always('TRUE', true, (input) => (isWord(input) && !input.accepts ? ANY : WRONG)),
  COMMA,
  spelt('a number as text', String),
  // Calculated numbers may look like a time of day: (151 − 120)/120 is 6 h 12 min of a day.
  another('one more', (n) => n + 1),
  another('a third more', (n) => (n * 4) / 3),
  spelt('spaces around it', (n) => ` ${n} `),
  counted(13),
  counted(0.3),
];

/** Other values that an input may as well have: where none of them changes a thing, nobody reads the cell. */
export function otherValues(input: Input): Slip[] {
  const { accepts, value } = input;
  if (isWord(input)) return (accepts?.list ?? ['other']).filter((word) => word !== value);
  const n = usual(input);
  return [n + 1, n * 10, n / 10].filter((each) => each !== n && numberMeans(input, each).is === 'legal');
}
