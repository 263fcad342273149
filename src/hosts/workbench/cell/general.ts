import { rounded } from './fitted';

/** As many characters as spreadsheets give a number without a format, its sign not counted. From experience. */
const MOST = 11;
/** Below it digits would be lost behind zeros. */
const SMALL = 1e-4;
const LARGE = 1e11;

const withoutZeros = (text: string): string => (text.includes('.') ? text.replace(/\.?0+$/, '') : text);

/** So many digits of a number are meant; those behind them come of its binary form. */
const MEANT = 15;

/** A number as other spreadsheets show it that has no format: rounded to as many digits as they have room for. */
export function general(value: number): string {
  const size = Math.abs(value);
  const plain = String(value);
  if (size === 0 || (size >= 1 && Number.isInteger(value) && size < LARGE)) return plain;
  if (size < SMALL || size >= LARGE) {
    if (size < SMALL && /^-?0\.\d+$/.test(plain) && plain.replace('-', '').length <= MOST) return plain;
    const [digits = '', exponent = ''] = value.toExponential(5).split('e');
    return `${withoutZeros(digits)}E${exponent.replace(/^([+-])(\d)$/, '$10$2')}`;
  }
  const whole = Math.trunc(size).toString().length;
  return withoutZeros(rounded(String(Number(value.toPrecision(MEANT))), Math.max(0, MOST - 1 - whole)));
}
