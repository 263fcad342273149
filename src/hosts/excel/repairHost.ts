import type { Mended, MendedCell, Outcome, PaneHost } from '../../pane/host';
import { withNamesMended } from '../../formula/spelling';
import { UNTOUCHED } from '../../pane/sentences';
import { excelRefusal } from './refusals';
import type { Changed, Reason } from './changeCells';
import { findLost, mendLost, takeBack } from './repair';

export type RepairHost = Required<Pick<PaneHost, 'findLost' | 'mendLost' | 'takeBack'>>;

const LISTED = 5;

/** Why cells were left, for a person. What changed did so since they were found, or since they were mended. */
const REASONS: Readonly<Record<Reason, (changed: string) => string>> = {
  changed: (changed) => changed,
  locked: () => 'they are locked',
  text: () => 'they are text, or set to be',
  column: () => 'other rows of their table’s column hold something else',
  refused: () => 'Excel refused',
};

/** A sentence for each reason. */
export const leftText = (left: Changed['left'], changed: string): string[] =>
  Object.entries(REASONS).flatMap(([reason, text]) => {
    const cells = left.filter(({ why }) => why === reason).map(({ cell }) => cell);
    return cells.length === 0 ? [] : [`Left as they are, because ${text(changed)}: ${places(cells)}.`];
  });

export const count = (cells: { readonly length: number }): string =>
  `${cells.length} ${cells.length === 1 ? 'cell' : 'cells'}`;

/** Where the cells are, the first few of them. */
export function places(cells: readonly MendedCell[]): string {
  const named = cells.slice(0, LISTED).map(({ sheet, cell }) => `${cell} on “${sheet}”`);
  return cells.length > LISTED ? `${named.join(', ')} and ${cells.length - LISTED} more` : named.join(', ');
}

async function found(excel: typeof Excel): Promise<Mended> {
  const cells = await findLost(excel);
  if (cells.length === 0) return { done: 'No formula has lost a name. Nothing was changed.', cells };
  return { done: `${count(cells)} with lost names found. Nothing is changed yet.`, cells };
}

async function mended(
  excel: typeof Excel,
  cells: readonly MendedCell[],
  tried: MendedCell[],
): Promise<Mended> {
  const { done, left } = await mendLost(excel, cells, tried);
  const lostAgain = done.filter(({ after }) => withNamesMended(after) !== undefined);
  const sentences = [
    `${count(done)} mended.`,
    ...leftText(left, 'they changed meanwhile'),
    lostAgain.length === 0
      ? ''
      : `Excel lost the name again in ${places(lostAgain)}: wait until =SWEEP. offers the functions, then try again.`,
  ];
  return { done: sentences.filter(Boolean).join(' '), cells: done };
}

async function takenBack(excel: typeof Excel, cells: readonly MendedCell[]): Promise<Outcome> {
  const { done, left } = await takeBack(excel, cells);
  const sentences = [`${count(done)} as before the repair.`, ...leftText(left, 'they changed since')];
  return { done: sentences.join(' ') };
}

/**
 * Excel breaks off a whole request, but keeps what it did before: all of that is put back where that can be. What we did not try to write
 * somebody else has mended.
 */
async function afterFailure(
  excel: typeof Excel,
  tried: readonly MendedCell[],
  error: unknown,
): Promise<string> {
  try {
    const { left } = await takeBack(excel, tried);
    // What was never mended does not hold what the repair would have written.
    return excelRefusal(error, left.every(({ why }) => why === 'changed') ? UNTOUCHED : HALF_MENDED);
  } catch {
    return excelRefusal(error, HALF_MENDED);
  }
}

const HALF_MENDED =
  'Some of the formulas may be mended, the others are as before: look for lost names again.';

const HALF_BACK = 'Some of the formulas may be as before, the others are still mended: try again.';

/** Finding and mending lost names, as the pane asks for it. */
export const repairHost = (excel: typeof Excel): RepairHost => ({
  findLost: () => found(excel).catch((error: unknown) => ({ refused: excelRefusal(error, UNTOUCHED) })),
  mendLost: (cells) => {
    const tried: MendedCell[] = [];
    return mended(excel, cells, tried).catch(async (error: unknown) => ({
      refused: await afterFailure(excel, tried, error),
    }));
  },
  takeBack: (cells) =>
    takenBack(excel, cells).catch((error: unknown) => ({ refused: excelRefusal(error, HALF_BACK) })),
});
