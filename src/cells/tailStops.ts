const TAIL = /^([+-]?) ?(?:(0?\.\d+|0,\d+|0\.)|(?:([0-2]) )?(\d+)\/(10|[234568]))(?: ?stops?)?$/;
/** Stops that a tail stays below: a number from here up, after a value, counts none. */
export const MOST_STOPS = 3;

/**
 * Stops written after a value: +0.3, .3, -1/3, 1 2/3. A decimal is below 1 and begins with 0 or a point, a fraction is below 3
 * stops and by 2, 3, 4, 5, 6, 8 or 10.
 *
 * @returns undefined for all else: +1.3 may be a value of its own, and +0.10 ten tenths.
 */
export function tailStops(text: string): number | undefined {
  const found = TAIL.exec(text);
  if (!found) return undefined;
  const [, sign, digits, whole, over, under] = found;
  if (/[.,]\d+0$/.test(digits ?? '')) return undefined;
  if (whole !== undefined && Number(over) >= Number(under)) return undefined;
  const size =
    digits === undefined
      ? Number(whole ?? 0) + Number(over) / Number(under)
      : Number(digits.replace(',', '.'));
  return size < MOST_STOPS ? (sign === '-' ? -size : size) : undefined;
}
