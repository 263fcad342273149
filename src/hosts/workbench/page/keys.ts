import type { Grid } from '../grid/grid';
import { takeKey } from '../grid/takeKey';
import type { Command } from './bar';

const HELP = 'help.html';

/** F1 opens the help, beside the page, which keeps its cells and what is being typed. */
export function helpByKey(): void {
  takeKey(
    ({ key, ctrlKey, altKey, metaKey, shiftKey }) =>
      key === 'F1' && !ctrlKey && !altKey && !metaKey && !shiftKey,
    () => void open(HELP, '_blank', 'noopener'),
    { inDialogs: true },
  );
}

/** For who has no key for it. The browser asks for the printer, or makes a PDF of it. */
export const printSheet: Command = {
  label: 'Print',
  about: 'The sheet in view, on paper or as a PDF. Ctrl+P does so too',
  run: () => Promise.resolve(print()),
};

/** What lays sheets out on pages comes late. */
export const printAll = (grid: Grid): Command => ({
  label: 'Print all',
  about: 'All sheets, one after the other, on paper or as a PDF',
  async run() {
    const { printAllSheets } = await import(/* webpackChunkName: "pane" */ './pane');
    printAllSheets(grid);
  },
});
