const SIGNIFICANT = 6;

/** A number with as many figures as anybody reads: 13.4543. */
export const plainNumber = (value: number): string => String(Number(value.toPrecision(SIGNIFICANT)));

/** Keeps a number with its unit on one line: 80 cm. */
export const unbroken = (text: string): string =>
  text.replace(/([,;:.]?) /g, (space, mark: string) => (mark === '' ? '\u00a0' : space));

/** Pieces of a number format: a condition, quoted words, an escaped sign, a placeholder, or any other sign. */
const PIECE = /\[[^\]]*\]|"([^"]*)"|\\(.)|General|[\s\S]/g;
const CONDITION = /^\[(<=|>=|<>|<|>|=)(-?\d+(?:\.\d+)?)\]/;
const HOLDS: Readonly<Record<string, (a: number, b: number) => boolean>> = {
  '<': (a, b) => a < b,
  '<=': (a, b) => a <= b,
  '>': (a, b) => a > b,
  '>=': (a, b) => a >= b,
  '=': (a, b) => a === b,
  '<>': (a, b) => a !== b,
};

/** One section of a format, after its semicolon. It may be empty, and then shows nothing. */
const SECTION = /;((?:"[^"]*"|\\.|[^;])*)/g;

const DAY = /^yyyy-mm-dd(;@)?$/;
/** Spreadsheets count days from here; true of days from March 1900 on. */
const FIRST_DAY = Date.UTC(1899, 11, 30);
const isoDay = (value: number): string =>
  new Date(FIRST_DAY + Math.floor(value) * 86_400_000).toISOString().slice(0, 10);
const LAST_DAY = 2_958_465;

/**
 * A number as a cell shows it. Knows what the formats of sheets use: days, sections, conditions, words, 0, #, point and %.
 */
export function numberText(value: number, format: string): string {
  if (DAY.test(format)) return value >= 61 && value <= LAST_DAY ? isoDay(value) : plainNumber(value);
  const sections = [...`;${format || 'General'}`.matchAll(SECTION)].map(([, section = '']) => section);
  const conditional = sections.some((section) => CONDITION.test(section));
  if (conditional) {
    const chosen = sections.find((section) => holds(section, value)) ?? sections.at(-1) ?? 'General';
    return signed(value, chosen);
  }
  const [positive = 'General', negative, zero] = sections;
  if (value === 0) return sectionText(0, zero ?? positive);
  if (value > 0) return sectionText(value, positive);
  return negative === undefined ? signed(value, positive) : sectionText(-value, negative);
}

/** With a minus of its own, unless the figures shown are all nought. */
function signed(value: number, section: string): string {
  const text = sectionText(Math.abs(value), section);
  return value < 0 && text !== sectionText(0, section) ? `-${text}` : text;
}

function holds(section: string, value: number): boolean {
  const [, relation = '', limit = ''] = CONDITION.exec(section) ?? [];
  return HOLDS[relation]?.(value, Number(limit)) ?? true;
}

/** 0.0E+00: decimals, and a power of ten of two figures or more. */
const POWER_OF_TEN = /^0\.(0+)E\+00$/;

/** A number that is not negative, in one section of a format. */
function sectionText(value: number, section: string): string {
  const [, figures] = POWER_OF_TEN.exec(section) ?? [];
  if (figures !== undefined)
    return value
      .toExponential(figures.length)
      .replace(/e([+-])(\d)$/, 'e$10$2')
      .toUpperCase();
  const pieces = [...section.matchAll(PIECE)].map(([raw, words, escaped]) => ({
    raw,
    words: words ?? escaped ?? raw,
  }));
  const point = pieces.findIndex(({ raw }) => raw === '.');
  const isPlace = ({ raw }: { raw: string }): boolean => raw === '0' || raw === '#';
  const decimals = point < 0 ? [] : pieces.slice(point).filter(isPlace);
  const scaled = pieces.some(({ raw }) => raw === '%') ? value * 100 : value;
  const [whole = '', fraction = ''] = scaled.toFixed(decimals.length).split('.');

  const wholePlaces = pieces.filter((piece, i) => isPlace(piece) && (point < 0 || i < point)).length;
  const shown = trimmed(
    fraction,
    decimals.map(({ raw }) => raw),
  );
  let place = 0;
  return pieces
    .map(({ raw, words }, i) => {
      if (raw === 'General' || raw === '@') return plainNumber(value);
      if (raw === '.') return shown === '' ? '' : `.${shown}`;
      if (raw !== '0' && raw !== '#') return raw.startsWith('[') ? '' : words;
      if (point >= 0 && i > point) return '';
      return digits(whole, raw, place++, wholePlaces);
    })
    .join('')
    .trim();
}

/** What one place of the whole part shows; the first takes all figures that are left. */
function digits(whole: string, raw: string, place: number, places: number): string {
  const fromRight = places - place;
  if (whole.length < fromRight) return raw === '0' ? '0' : '';
  const end = whole.length - fromRight + 1;
  const text = place === 0 ? whole.slice(0, end) : whole.slice(end - 1, end);
  return raw === '#' && text === '0' && whole === '0' ? '' : text;
}

/** Decimals without the noughts at places that need not show one. */
function trimmed(fraction: string, places: readonly string[]): string {
  let length = fraction.length;
  while (length > 0 && places[length - 1] === '#' && fraction[length - 1] === '0') length--;
  return fraction.slice(0, length);
}
