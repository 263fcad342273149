import type { Mended, MendedCell, Outcome, PaneHost } from '../../pane/host';
import { withNamesMended } from '../../formula/spelling';
import { UNTOUCHED } from '../../pane/said';
import { excelRefusal } from './refusals';
import { findLost, mendLost, takeBack } from './repair';

export type RepairHost = Required<Pick<PaneHost, 'findLost' | 'mendLost' | 'takeBack'>>;

const LISTED = 5;

const count = (cells: readonly unknown[]): string =>
  `${cells.length} ${cells.length === 1 ? 'cell' : 'cells'}`;

/** Where the cells are, the first few of them. */
function places(cells: readonly MendedCell[]): string {
  const named = cells.slice(0, LISTED).map(({ sheet, cell }) => `${cell} on “${sheet}”`);
  return cells.length > LISTED ? `${named.join(', ')} and ${cells.length - LISTED} more` : named.join(', ');
}

async function found(excel: typeof Excel): Promise<Mended> {
  const cells = await findLost(excel);
  if (cells.length === 0) return { done: 'No formula has lost a name. Nothing was changed.', cells };
  return { done: `${count(cells)} with lost names found. Nothing is changed yet.`, cells };
}

async function mended(excel: typeof Excel, cells: readonly MendedCell[]): Promise<Mended> {
  const { done, left } = await mendLost(excel, cells);
  const lostAgain = done.filter(({ after }) => withNamesMended(after) !== undefined);
  const sentences = [
    `${count(done)} mended.`,
    left.length === 0 ? '' : `Left as they are, because they changed meanwhile: ${places(left)}.`,
    lostAgain.length === 0
      ? ''
      : `Excel lost the name again in ${places(lostAgain)}: wait until =SWEEP. offers the functions, then try again.`,
  ];
  return { done: sentences.filter(Boolean).join(' '), cells: done };
}

async function takenBack(excel: typeof Excel, cells: readonly MendedCell[]): Promise<Outcome> {
  const { done, left } = await takeBack(excel, cells);
  const rest = left.length === 0 ? '' : ` Left as they are, because they changed since: ${places(left)}.`;
  return { done: `${count(done)} as before the repair.${rest}` };
}

/** Excel refuses a whole request, but keeps what it did before: all of that is put back where that can be. */
async function afterFailure(
  excel: typeof Excel,
  cells: readonly MendedCell[],
  error: unknown,
): Promise<string> {
  try {
    await takeBack(excel, cells);
    return excelRefusal(error, UNTOUCHED);
  } catch {
    return excelRefusal(
      error,
      'Some of the formulas may be mended, the others are as before: look for lost names again.',
    );
  }
}

const HALF_BACK = 'Some of the formulas may be as before, the others are still mended: try again.';

/** Finding and mending lost names, as the pane asks for it. */
export const repairHost = (excel: typeof Excel): RepairHost => ({
  findLost: () => found(excel).catch((error: unknown) => ({ refused: excelRefusal(error, UNTOUCHED) })),
  mendLost: (cells) =>
    mended(excel, cells).catch(async (error: unknown) => ({
      refused: await afterFailure(excel, cells, error),
    })),
  takeBack: (cells) =>
    takenBack(excel, cells).catch((error: unknown) => ({ refused: excelRefusal(error, HALF_BACK) })),
});
