/**
 * What one formula may cost where somebody waits for all of them: a command that one formula can hold up, or fill the memory
 * of, answers none. A workbook on a page has no such limits.
 */

/** A formula that costs more than it may, with the sentence for the person who typed it. */
export class TooMuch extends Error {}

/** Cells that a formula reads or makes, and the milliseconds that it takes. */
const MOST = { cells: 4_000_000, made: 500_000, time: 2500 } as const;
const READS = 'The formula reads more than four million cells: let it read fewer.';
const MAKES = 'The formula makes a list of more than half a million cells: let it make a shorter one.';
const TAKES =
  'The formula takes longer than this command waits: break it up, or let it go through fewer cells.';

let isLimited = false;
let begun = 0;
let read = 0;
let steps = 0;

/** Calculates with limits: what goes beyond them throws `TooMuch`. */
export async function withLimits<T>(calculate: () => Promise<T>): Promise<T> {
  isLimited = true;
  try {
    return await calculate();
  } finally {
    isLimited = false;
  }
}

/** For what makes an array of so many cells. */
export function make(cells: number): void {
  if (isLimited && cells > MOST.made) throw new TooMuch(MAKES);
}

/** A formula begins. Where nothing limits it, it is not worth a look at the clock. */
export function begin(): void {
  if (isLimited) [begun, read, steps] = [performance.now(), 0, 0];
}

/** The clock is asked now and then: it takes longer than most steps. */
const STEPS = 64;

/** One step of a formula: a function, a sign, a value. */
export function step(): void {
  if (isLimited && ++steps % STEPS === 0 && performance.now() - begun > MOST.time) throw new TooMuch(TAKES);
}

/** For what reads so many cells. */
export function look(cells: number): void {
  read += cells;
  if (isLimited && read > MOST.cells) throw new TooMuch(READS);
}
