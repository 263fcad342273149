/** What JSON has no sign for, in an object of one name. */
function spelt(_: string, value: unknown): unknown {
  if (value === undefined) return { is: 'undefined' };
  if (typeof value === 'number' && (!Number.isFinite(value) || Object.is(value, -0)))
    return { is: Object.is(value, -0) ? '-0' : String(value) };
  return value;
}

/** Arguments as JSON. Dates stand as texts; `{"is":"NaN"}` is NaN, and so on. */
export const written = (given: unknown): string => JSON.stringify(given, spelt);
