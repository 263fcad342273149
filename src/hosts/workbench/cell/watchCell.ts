import { referencesIn } from '../../../formula/tree';
import type { PaneHost } from '../../../pane/host';
import type { Grid } from '../grid/grid';
import type { KnownFailures } from './knownFailures';
import { onEveryChange } from '../grid/changes';
import { SelectedCellReader } from './selectedCell';

/** Tells the selected cell when it is another one, or it or a cell that its formula speaks of shows something else. */
export const watchCell =
  (grid: Grid, failures: KnownFailures): NonNullable<PaneHost['watchCell']> =>
  (tell) => {
    const reader = new SelectedCellReader(grid, failures);
    let told: string | undefined;
    const look = (): void => {
      const cell = reader.selected();
      const now = JSON.stringify([
        cell?.address,
        cell?.formula,
        cell?.shown,
        ...referencesIn(cell?.formula ?? '').map((reference) => cell?.look(reference)),
      ]);
      if (now === told) return;
      told = now;
      tell(cell);
    };
    look();
    return onEveryChange(grid, look);
  };
