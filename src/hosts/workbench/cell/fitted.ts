const PLAIN = /^-?\d+\.(\d+)$/;

/** Half of the last digit goes away from zero, as spreadsheets round: by the digits that are shown, not by their binary form. */
export const rounded = (text: string, digits: number): string => {
  const size = Math.round(Number(`${text.replace('-', '')}e${digits}`));
  return (text.startsWith('-') ? '-' : '') + Number(`${size}e-${digits}`).toFixed(digits);
};

/**
 * What a cell shows of a number that may be wider than it: the number as far as its last digits are a matter of rounding, or
 * else signs that stand for no number. A format with a unit says how many digits it wants, so that none is left out.
 *
 * @param text - as its format has it.
 * @param width - pixels that it may take.
 */
export function fitted(text: string, width: number, widthOf: (text: string) => number): string {
  if (widthOf(text) <= width) return text;
  const decimals = PLAIN.exec(text)?.[1]?.length ?? 0;
  for (let digits = decimals - 1; digits >= 0; digits--) {
    const shorter = rounded(text, digits);
    // so many digits fewer that it would show 0 where it is not
    if (Number(shorter) === 0) break;
    if (widthOf(shorter) <= width) return shorter;
  }
  return '#'.repeat(Math.max(1, Math.floor(width / widthOf('#'))));
}
