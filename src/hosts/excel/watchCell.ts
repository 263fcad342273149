import type { PaneHost } from '../../pane/host';
import { WHEN_READY } from './lay';
import { selectedCell } from './selectedCell';

/** One look after the other; whatever happens during a look leads to one more. */
function oneByOne(look: () => Promise<void>): () => Promise<void> {
  let isLooking = false;
  let isAgain = false;
  return async () => {
    isAgain = true;
    if (isLooking) return;
    isLooking = true;
    try {
      while (isAgain) {
        isAgain = false;
        // oxlint-disable-next-line no-await-in-loop -- one after the other is the point
        await look();
      }
    } finally {
      isLooking = false;
    }
  };
}

/** Tells the active cell whenever another is selected, something is typed anywhere, or Excel has calculated. */
export const watchCell =
  (excel: typeof Excel): NonNullable<PaneHost['watchCell']> =>
  (tell) => {
    let isOver = false;
    const look = oneByOne(async () => {
      const cell = await selectedCell(excel);
      // What was told stands until the cell is no longer edited; Excel then tells a change.
      if (!isOver && cell !== 'edited') tell(cell);
    });
    const listening = excel.run(WHEN_READY, async (context) => {
      const { workbook } = context;
      const all = [
        workbook.onSelectionChanged.add(look),
        workbook.worksheets.onChanged.add(look),
        workbook.worksheets.onCalculated.add(look),
      ];
      await context.sync();
      return { context, all };
    });
    void look();
    return () => {
      isOver = true;
      void listening.then(({ context, all }) =>
        excel.run(context, async () => {
          for (const listener of all) listener.remove();
          await context.sync();
        }),
      );
    };
  };
