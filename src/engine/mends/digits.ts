/**
 * Spreadsheets calculate in binary and compare, round and write in decimal: two numbers whose fifteen significant digits
 * agree are the same number. Microsoft's "Floating-point arithmetic may give inaccurate results in Excel" says so.
 */
const DIGITS = 15;

/** A number as its fifteen significant digits tell it; 0 has no sign. */
export function fifteen(number: number): number {
  if (Number.isInteger(number) && Math.abs(number) < 1e15) return number + 0;
  return Number(number.toPrecision(DIGITS));
}

/**
 * Numbers so close side by side are one result, come by on two ways: 2^1.5*.5 and SQRT(2) lie on either side of the half where
 * the fifteenth digit turns. No two numbers of fifteen digits are as close.
 */
const ONE_RESULT = 2 * Number.EPSILON;

export function isSame(one: number, other: number): boolean {
  if (one === other) return true;
  const apart = Math.abs(one - other) / Math.max(Math.abs(one), Math.abs(other));
  return apart <= ONE_RESULT || (apart <= 1e-14 && fifteen(one) === fifteen(other));
}

/** Powers of ten between which a number is written out. */
const WRITTEN_OUT = { least: -20, most: 20 };

/** The text that a number becomes where a text is asked for: fifteen digits at most, and 1E+21 beyond what is written out. */
export function numberText(number: number): string {
  if (number === 0) return '0';
  const [mantissa = '', power = ''] = number.toExponential(DIGITS - 1).split('e');
  const exponent = Number(power);
  const digits = mantissa.replace(/^-/, '').replace('.', '').replace(/0+$/, '');
  const sign = number < 0 ? '-' : '';
  const isShort = exponent >= 0 || digits.length - 1 - exponent <= -WRITTEN_OUT.least;
  if (exponent > WRITTEN_OUT.most || !isShort)
    return `${sign}${[digits.slice(0, 1), digits.slice(1)].filter(Boolean).join('.')}E${exponent < 0 ? '-' : '+'}${String(Math.abs(exponent)).padStart(2, '0')}`;
  if (exponent < 0) return `${sign}0.${'0'.repeat(-exponent - 1)}${digits}`;
  const whole = digits.slice(0, exponent + 1).padEnd(exponent + 1, '0');
  return sign + [whole, digits.slice(exponent + 1)].filter(Boolean).join('.');
}

/** A number at so many places, halves away from 0, by its decimal digits: 1.005 to two is 1.01. */
export function toPlaces(number: number, places: number): number {
  const decimal = fifteen(number);
  const [mantissa = '0', power = '0'] = String(Math.abs(decimal)).split('e');
  const shifted = Math.round(Number(`${mantissa}e${Number(power) + places}`));
  const [digits = '0', more = '0'] = String(shifted).split('e');
  return Math.sign(decimal) * Number(`${digits}e${Number(more) - places}`);
}
