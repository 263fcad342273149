import { DataValidationType } from '@univerjs/core';
import { listOf, openList } from './choosing';
import type { Grid } from './grid';
import { commands } from './inside';
import { isWriting, takeKeyboard } from './keyboard';
import { chosenPlace } from './refusedInput';
import { takeKeys } from './takeKey';

const CLOSES_LIST = 'sheet.operation.hide-data-validation-dropdown';
/** The list of a cell, while it is open, and what can be chosen in it. */
const LIST = '[data-u-comp="sheets-dropdown-list"]';
const ENTRY = '.univer-cursor-pointer';

const STEPS: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowUp: -1 };
const CHOOSES: readonly string[] = ['Enter', ' '];

/** What marks the entry that the cell holds. */
const HELD = 'svg';

const entriesOf = (list: Element): HTMLElement[] => [...list.querySelectorAll<HTMLElement>(ENTRY)];

/** The entry that the keys have led to, and its name for what has the keyboard. */
const LED_TO = 'led-to';
const ledTo = (): Element | null => document.querySelector(`#${LED_TO}`);

/**
 * Marks an entry, and has it read out. The cells keep the keyboard, as the grid closes the list when they lose it; to them
 * it is the active one.
 */
function lookAt(list: Element, entry: HTMLElement): void {
  list.setAttribute('role', 'listbox');
  for (const each of entriesOf(list)) {
    each.setAttribute('role', 'option');
    each.setAttribute('aria-selected', String(each === entry));
    each.removeAttribute('id');
  }
  entry.id = LED_TO;
  document.activeElement?.setAttribute('aria-activedescendant', LED_TO);
  entry.scrollIntoView({ block: 'nearest' });
}

/** The one after that to which the keys have led, or else the one that the cell holds, or the first. */
function next(entries: readonly HTMLElement[], step: number): HTMLElement | undefined {
  const at = entries.findIndex((each) => each === ledTo());
  if (at < 0) return entries.find((each) => each.querySelector(HELD)) ?? entries[0];
  return entries[Math.min(Math.max(at + step, 0), entries.length - 1)];
}

/**
 * Alt and an arrow down open the list of the chosen cell, arrows lead through it, Enter chooses, and Escape closes it: the keys of
 * a combobox (WAI-ARIA Authoring Practices 1.2). Any other key closes it and goes on to the cells. The grid has none of these, and
 * leaves the list open, beside a cell that may not be the chosen one any longer. To choose what the cell holds leaves it there.
 * While a cell is written into, only Escape has to do with its list: an arrow leads on to the next cell. Call it before there is a
 * grid, which else has each key first.
 */
export function listByKeys(grid: () => Grid): void {
  const close = (): void => {
    document.activeElement?.removeAttribute('aria-activedescendant');
    void commands(grid()).executeCommand(CLOSES_LIST, {});
    if (!isWriting(grid())) takeKeyboard(grid());
  };
  const open = (): boolean => {
    const cell = chosenPlace(grid());
    const isInGrid = document.activeElement?.closest('#grid') != null;
    return cell !== undefined && isInGrid && openList(grid(), cell);
  };
  /** Whether the key is done with. */
  const press = ({ key, altKey, ctrlKey, metaKey, shiftKey }: KeyboardEvent): boolean => {
    const list = document.querySelector(LIST);
    const isWritten = isWriting(grid());
    if (!list)
      return altKey && !ctrlKey && !metaKey && !shiftKey && key === 'ArrowDown' && !isWritten && open();
    if (isWritten && key !== 'Escape') return false;
    const entries = entriesOf(list);
    const led = STEPS[key] === undefined ? undefined : next(entries, STEPS[key]);
    if (led) {
      lookAt(list, led);
      return true;
    }
    const chosen = CHOOSES.includes(key) ? entries.find((each) => each === ledTo()) : undefined;
    chosen?.click();
    close();
    return chosen !== undefined || (key === 'Escape' && !isWritten);
  };
  // the grid empties a cell for which the entry that it holds is chosen again
  addEventListener(
    'click',
    (event) => {
      const entry = event.target instanceof Element ? event.target.closest(`${LIST} ${ENTRY}`) : null;
      const cell = entry?.querySelector(HELD) ? chosenPlace(grid()) : undefined;
      if (!cell || listOf(grid(), cell)?.type !== DataValidationType.LIST) return;
      event.stopImmediatePropagation();
      close();
    },
    { capture: true },
  );
  takeKeys(press);
}
