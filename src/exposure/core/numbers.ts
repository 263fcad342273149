/** Slack of every ceiling, floor and comparison: far below what a meter shows, far above rounding error. */
export const SLACK = 1e-9;

/** Stops are kept to 1e-12, so that whole stops and tenths come out as such. */
export const roundStops = (stops: number): number => Math.round(stops * 1e12) / 1e12 + 0;

/** log2 of a ratio, accurate also where the two numbers are nearly equal and the quotient loses digits. */
export function log2Ratio(to: number, from: number): number {
  const ratio = to / from;
  if (ratio > 0.5 && ratio < 2) return Math.log1p((to - from) / from) / Math.LN2;
  if (ratio > 0 && Number.isFinite(ratio)) return Math.log2(ratio);
  return Math.log2(to) - Math.log2(from);
}

/** Rounds up, but a value within the slack above a whole number is that number: (√2)² is 2, not 3. */
export const ceilSteady = (x: number): number => Math.ceil(x - SLACK * Math.max(1, Math.abs(x))) + 0;

/** Rounds down, but a value within the slack below a whole number is that number. */
export const floorSteady = (x: number): number => Math.floor(x + SLACK * Math.max(1, Math.abs(x)));

/** Nearest whole number; a tie, within the slack, goes to the higher. */
export const roundSteady = (x: number): number => floorSteady(x + 0.5);

export const isWhole = (x: number): boolean =>
  Math.abs(x - Math.round(x)) <= SLACK * Math.max(1, Math.abs(x));

/** A number in a sentence: at most `digits` significant ones, no trailing zeros. */
export function spoken(x: number, digits = 4): string {
  const near = Number(x.toPrecision(digits));
  // The largest numbers have nothing to be rounded up to.
  return String(Number.isFinite(near) ? near : x);
}

/** Stops in a sentence: "0.4 stop", "1.6 stops". As it is said, 1.004 is one stop. */
export function spokenStops(stops: number): string {
  const said = spoken(stops, 2);
  return `${said} ${Math.abs(Number(said)) > 1 ? 'stops' : 'stop'}`;
}
