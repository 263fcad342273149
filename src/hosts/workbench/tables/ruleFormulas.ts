import type { IRange } from '@univerjs/core';
import { followed } from '../../../formula/followEdit';
import { isMeantOf } from '../../../formula/sheetPlace';
import { shifter } from '../../../formula/shift';
import type { Effect } from '../grid/effects';

const isFormula = (value: unknown): value is string => typeof value === 'string' && value.startsWith('=');

/** What a rule says, with each formula in it changed. */
export const withFormulas = <T>(rule: T, change: (formula: string) => string): T =>
  JSON.parse(JSON.stringify(rule), (_, each: unknown) => (isFormula(each) ? change(each) : each)) as T;

/** The formulas in what a rule says. */
export function formulasIn(rule: unknown): readonly string[] {
  if (isFormula(rule)) return [rule];
  return typeof rule === 'object' && rule !== null ? Object.values(rule).flatMap(formulasIn) : [];
}

/** How a formula of a rule reads where the first of its cells becomes another: it is as that one reads it. */
export const asReadFrom =
  (was: IRange | undefined, now: IRange | undefined) =>
  (formula: string): string =>
    was && now ? shifter(formula)(now.startRow - was.startRow, now.startColumn - was.startColumn) : formula;

/** Cells with one rule, whose formulas are as the first of them reads them. */
interface Ruled {
  readonly ranges: readonly IRange[];
  /** What a formula of the rule says there. */
  readonly reads: (formula: string) => string;
}

/** The first cells of the rule that are still there, and where they are. */
function survivor(ranges: readonly IRange[], { after }: Effect) {
  for (const { startRow, endRow, startColumn, endColumn } of ranges) {
    const cells = (size: number, at: (i: number) => { row: number; column: number }) => {
      for (let i = 0; i < size; i++) {
        const now = after({ ...at(i), rows: 1, columns: 1 });
        if (now) return { was: at(i), now };
      }
      return undefined;
    };
    const found =
      cells(endRow - startRow + 1, (i) => ({ row: startRow + i, column: startColumn })) ??
      cells(endColumn - startColumn + 1, (i) => ({ row: startRow, column: startColumn + i }));
    if (found) return found;
  }
  return undefined;
}

/** A rule of a sheet after an edit of that sheet or another; nothing where its cells are gone. */
export function ruledAfter(ranges: readonly IRange[], isHere: boolean, effect: Effect): Ruled | undefined {
  const isMeant = isMeantOf(effect.sheetName, isHere);
  const follow = (formula: string): string => followed(formula, effect.after, isMeant);
  if (!isHere) return { ranges, reads: follow };
  const now = ranges.flatMap((range) => effect.areas(range));
  const [first, start] = [survivor(ranges, effect), now[0]];
  const base = ranges[0];
  if (!start || !first || !base) return undefined;
  return {
    ranges: now,
    reads(formula) {
      const there = shifter(formula)(first.was.row - base.startRow, first.was.column - base.startColumn);
      return shifter(follow(there))(start.startRow - first.now.row, start.startColumn - first.now.column);
    },
  };
}
