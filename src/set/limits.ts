/**
 * Lengths of a set that are believed, in metres: what is more was typed in centimetres. Shot record takes no more either, and a test
 * holds its rules to these.
 */
export const BELIEVED = {
  /** To each side of the datum. */
  place: 10,
  /** Above the floor. */
  height: 5,
  /** Width and height of a front, or of a surface. */
  size: 5,
} as const;

/** What a head or a meter shows: a larger number is a date that a spreadsheet has made of 1/4 or 5.6. */
export const SHOWN = {
  /** Watt-seconds of the largest head. */
  setting: 10_000,
  /** f/128 and nine tenths. */
  reading: 177,
} as const;
