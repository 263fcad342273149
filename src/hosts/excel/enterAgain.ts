import { address } from '../../formula/address';
import { callsOurs } from '../../formula/calls';
import type { MendedCell, Outcome } from '../../pane/host';
import { changeCells } from './changeCells';
import { WHEN_READY } from './lay';
import { count, leftText, places } from './repairHost';
import { among, findInFormulas } from './usedCells';

/** Of a function that it does not know Excel may tell one of them as the value and show the other (OfficeDev/office-js #5865). */
const UNKNOWN: ReadonlySet<unknown> = new Set(['#NAME?', '#CALC!']);

/** Every cell that calls us. */
const findOurs = (context: Excel.RequestContext): Promise<MendedCell[]> =>
  findInFormulas(context, ({ name, area }, formulas) =>
    formulas.flatMap((line, r) =>
      line.flatMap((formula, c) => {
        if (typeof formula !== 'string' || !formula.startsWith('=') || !callsOurs(formula)) return [];
        const cell = address({ row: area.row + r, column: area.column + c });
        return [{ sheet: name, cell, before: formula, after: formula }];
      }),
    ),
  );

/** Those among cells that show that Excel does not know what they call. */
const unknownOf = (context: Excel.RequestContext, cells: readonly MendedCell[]): Promise<MendedCell[]> =>
  among(context, cells, 'text,values', ({ text, values }) =>
    [text, values].some((lines: unknown[][]) => UNKNOWN.has(lines[0]?.[0])),
  );

/**
 * Enters formulas again in which Excel did not know our functions: it looks a name up when a formula is entered, and
 * calculating does not make it look again (OfficeDev/office-js #4185). Only where that does not help everything is built up anew, which
 * other open workbooks have to wait for as well.
 */
export const enterAgain = (excel: typeof Excel): Promise<Outcome> =>
  excel.run(WHEN_READY, async (context) => {
    const unknown = await unknownOf(context, await findOurs(context));
    if (unknown.length === 0) {
      context.application.calculate('Full');
      await context.sync();
      return { done: 'Excel calculates the workbook anew. No cell of Sweeptable shows #NAME?.' };
    }
    const { done, left } = await changeCells(context, unknown.map((of) => ({ of, from: of.before, to: of.after }))); // prettier-ignore
    const still = await unknownOf(context, done);
    if (still.length > 0) {
      context.application.calculate('FullRebuild');
      await context.sync();
    }
    const cured = done.length - still.length;
    return {
      done: [
        `${count({ length: cured })} of Sweeptable ${cured === 1 ? 'is' : 'are'} entered anew and calculated.`,
        ...leftText(left, 'they changed meanwhile'),
        ...(still.length === 0
          ? []
          : [
              `${places(still)} still ${still.length === 1 ? 'shows' : 'show'} #NAME?: wait until =SWEEP. offers the functions and try again, or save the workbook, close it and open it again.`,
            ]),
      ].join(' '),
    };
  });
