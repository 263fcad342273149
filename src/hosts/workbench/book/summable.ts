import { GUIDE_NUMBERS } from '../../../sheets/formats';

/** What stands beside the figures of a number format: its quoted words and plain letters, in the part for numbers above 0. */
const unitOf = (format: string): string => {
  const [above = ''] = format.replaceAll(/\[[^\]]*\]/g, '').split(';');
  return above
    .replaceAll(/_.|\*./g, '')
    .replaceAll(/General/gi, '')
    .replaceAll(/[#0?.,+\-()"\\\s]/g, '')
    .toLowerCase();
};
/** How many figures stand behind the point; of a plain number nobody says. */
const digitsOf = (format: string): number | undefined =>
  format === '' || /^General$/i.test(format) ? undefined : (/\.([#0?]+)/.exec(format)?.[1]?.length ?? 0);

/** Marks of a scale: two of f/8 are not f/16. */
const OF_A_SCALE = ['f/', '1/'];
/** Of what two are not twice as much: ratios, shares, speeds of film, temperatures of colour, turns, waves. */
const NO_SUM: ReadonlySet<string> = new Set([':1', '%', 'iso', 'k', 'rpm', 'm/s', 'nm', 'v']);
/** Dates and times of day: letters that are no words. */
const isDate = (format: string): boolean =>
  /[ymdhs]/i.test(format.replaceAll(/"[^"]*"|\[[^\]]*\]|\\.|General/gi, ''));

/**
 * Whether numbers of these formats may be added up: all of one unit, and none a mark of a scale, a ratio, a share or a date. Without
 * a unit all have as many digits: 2 heads and a rate of 38.00 are no sum.
 */
export function summableUnits(formats: readonly string[]): boolean {
  const units = new Set(formats.map(unitOf));
  const [unit = ''] = units;
  const digits = new Set(formats.map(digitsOf).filter((each) => each !== undefined));
  if (units.size > 1 || (unit === '' && digits.size > 1)) return false;
  if (NO_SUM.has(unit) || OF_A_SCALE.some((mark) => unit.startsWith(mark))) return false;
  return !formats.some((format) => isDate(format) || format === GUIDE_NUMBERS);
}

const FIGURES = /^\s*(?:=\s*)?(?:f\s*\/?|iso|nd|x)?\s*[-+−±]?\s*[.,]?\d/i;

/** Whether a text begins like a number, as 1/60 and f/11 do: a sum of the numbers beside it would leave it out. */
export const isLikeNumber = (text: string): boolean => FIGURES.test(text);
