import { onChange } from '../grid/changes';
import type { Grid } from '../grid/grid';
import type { Saving } from '../state/saving';
import { keepSelected } from '../state/selectedPlace';

/** Steps that calculating takes by itself. */
const OF_THE_ENGINE = /^formula\.mutation\.(?!(set|remove)-defined-name)/;

/**
 * From now on every change is stored, and at once when the page goes out of sight. The browser asks before the page is
 * closed over work that could not be stored.
 */
export function keepSaved(grid: Grid, saving: Saving): void {
  onChange(grid, ({ id }, options) => {
    saving.changed({ byHand: !options?.['applyFormulaCalculationResult'] && !OF_THE_ENGINE.test(id) });
  });
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'hidden') void saving.now();
  });
  addEventListener('pagehide', () => {
    saving.close();
    keepSelected(grid);
  });
  addEventListener('beforeunload', (event) => {
    if (saving.wouldLoseWork) event.preventDefault();
  });
}
