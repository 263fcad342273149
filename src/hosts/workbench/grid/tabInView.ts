import { onEveryChange } from './changes';
import type { Grid } from './grid';

const CHOSEN = '[data-u-comp="slide-tab-item"][aria-selected="true"]';

/** Keeps the name of the sheet in view in sight among those of the others, where there is no room for all. */
export function keepTabInView(grid: Grid): void {
  let known: string | undefined;
  const look = (): void => {
    const sheet = grid.api.getActiveWorkbook()?.getActiveSheet().getSheetId();
    if (sheet === known) return;
    known = sheet;
    reveal();
  };
  // the grid draws its names a moment later
  const reveal = (): void => {
    requestAnimationFrame(() =>
      document.querySelector(CHOSEN)?.scrollIntoView({ block: 'nearest', inline: 'nearest' }),
    );
  };
  onEveryChange(grid, look);
  addEventListener('resize', reveal);
  reveal();
}
