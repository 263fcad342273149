/** Full stops, as a meter shows them: from f/0.7, which is −1 stop above f/1. */
const SHOWN = [0.7, 1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32, 45, 64, 90, 128] as const;

/**
 * A reading as a meter shows it: its full stop, and its tenths.
 *
 * @param reading - an exact f-number.
 * @returns undefined for what no meter shows.
 */
export function tenthsShown(reading: number): { readonly full: number; readonly tenths: number } | undefined {
  const tenths = Math.round(20 * Math.log2(reading));
  const full = SHOWN[Math.floor(tenths / 10) + 1];
  return full === undefined ? undefined : { full, tenths: tenths - 10 * Math.floor(tenths / 10) };
}
