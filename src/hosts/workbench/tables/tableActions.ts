import { filterHere, hiddenInWords, hiddenRows, showAll } from '../filter/filterTable';
import type { Grid } from '../grid/grid';
import { isWriting } from '../grid/keyboard';
import { type GridTable, tableOfCell } from '../grid/tables';
import { sortHere } from '../sort/sortHere';
import { addRow } from './addRow';
import { showAtFoot } from './atFoot/atFoot';

type Say = (words: string) => void;

/**
 * What can be done with tables, at the foot of each, and by keys in their cells.
 * @returns what says where the keyboard goes at the foot of the table nearest to the chosen cell.
 */
export function offerTableActions(grid: Grid, say: Say): () => HTMLElement | undefined {
  const addTo = (table: GridTable): void => {
    const refused = addRow(grid, table);
    if (refused !== undefined) say(refused);
  };
  const inTable = (run: (table: GridTable) => void) => (): void => {
    const table = tableOfCell(grid);
    if (table) run(table);
    else say('Choose a cell of a table first.');
  };
  const footNear = showAtFoot(grid, [
    {
      isTelling: true,
      label(table) {
        const hidden = hiddenRows(grid, table);
        return hidden.all === 0 ? undefined : hiddenInWords(hidden);
      },
      name: (table, label) => `${table}: ${label}`,
      about: 'SUBTOTAL(9) and its like leave out those that a filter hides, and count those hidden by hand',
      run: (table) => showAll(grid, say, table),
    },
    {
      label: () => '+ Add a row',
      name: (table) => `Add a row to ${table}`,
      about: 'In a cell of the table: Ctrl+Alt+Enter, or Tab in its last cell',
      run: addTo,
    },
    {
      label: () => 'Sort…',
      name: (table) => `Sort ${table}…`,
      about: 'In a cell of the table, or with rows chosen: Ctrl+Alt+S',
      run: (table) => void sortHere(grid, say, table),
    },
    {
      label: () => 'Filter…',
      name: (table) => `Filter ${table}…`,
      about: 'In a cell of the table: Ctrl+Alt+F',
      run: (table) => void filterHere(grid, say, table),
    },
  ]);
  atKeys(grid, {
    Enter: inTable(addTo),
    KeyS: () => void sortHere(grid, say),
    KeyF: () => void filterHere(grid, say),
  });
  return footNear;
}

/** With Ctrl and Alt, in a cell; the letters of a cell that is being written have their own keys. */
function atKeys(grid: Grid, actions: Readonly<Record<string, () => void>>): void {
  const press = (event: KeyboardEvent): void => {
    const action = actions[event.code];
    // Where AltGr writes letters, it comes as both of these keys.
    const isOurs = event.ctrlKey && event.altKey && !event.shiftKey && !event.getModifierState('AltGraph');
    if (!isOurs || !action || isWriting(grid) || document.querySelector('dialog[open]')) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    action();
  };
  addEventListener('keydown', press, { capture: true });
}
