import { RANGE_TYPE } from '@univerjs/core';
import { ContextMenuPosition, DeviceType, IContextMenuService } from '@univerjs/preset-sheets-core';
import { cellPlace } from './cellPlace';
import { chosenRange } from './choosing';
import type { Grid } from './grid';
import { inside } from './inside';
import { isWriting, takeKeyboard } from './keyboard';
import { sheetView } from './sheetView';
import { takeKeys } from './takeKey';
import { isModifier } from './typedOn';

/** The menu of a cell, a heading or a sheet, unless it is going, and what its lines have opened, which goes after it. */
const MENU = '.univer-popup:not(.univer-popup-exit) > section';
const OPENED = '[data-u-context-menu-submenu]';
const CELLS = '[data-u-comp="editor"]';
/** Marks a line that opens more. */
const MORE = '.univerjs-icon-more-icon';
/** What chooses a line, and what leads into what it opens. */
const CHOOSES: readonly string[] = ['Enter', ' '];
const INTO: readonly string[] = [...CHOOSES, 'ArrowRight'];
const STEPS: Readonly<Record<string, number>> = { ArrowDown: 1, ArrowUp: -1 };
/** More frames than a menu ever takes until it is drawn. */
const MOST = 60;

/** The grid leaves a menu that is closed far outside the page. */
const isSeen = (panel: Element): boolean =>
  panel.checkVisibility({ visibilityProperty: true }) && panel.getBoundingClientRect().right > 0;
const seen = (which: string): Element[] => [...document.querySelectorAll(which)].filter(isSeen);
/** What is open, the menu itself first. */
const panels = (): Element[] => seen(MENU).flatMap((menu) => [menu, ...seen(OPENED)]);
/** A line that asks for a number has buttons of its own within. */
const linesOf = (panel: Element): HTMLElement[] =>
  [...panel.querySelectorAll<HTMLElement>('button:enabled')].filter(
    (line) => !line.parentElement?.closest('button') && line.checkVisibility(),
  );

/** Leads to the first line of what opens, once it is drawn. */
function leadInto(isIt: (panel: Element) => boolean, frames = MOST): void {
  const panel = panels().filter(isIt).at(-1);
  if (panel) linesOf(panel)[0]?.focus();
  else if (frames > 0) requestAnimationFrame(() => leadInto(isIt, frames - 1));
}

/** Shows the menu of what is chosen, at its first cell that is in sight or else at the edge towards it. */
function open(grid: Grid): void {
  const chosen = chosenRange(grid);
  const canvas = sheetView(grid)?.canvas.getBoundingClientRect();
  if (!chosen || !canvas) return;
  const { x, y } = cellPlace(grid, chosen);
  const at = {
    clientX: Math.min(Math.max(x, canvas.left), canvas.right),
    clientY: Math.min(Math.max(y, canvas.top), canvas.bottom),
  };
  const { rangeType } = chosen.getRange();
  const menu =
    rangeType === RANGE_TYPE.ROW
      ? ContextMenuPosition.ROW_HEADER
      : rangeType === RANGE_TYPE.COLUMN
        ? ContextMenuPosition.COL_HEADER
        : ContextMenuPosition.MAIN_AREA;
  const event = Object.assign(new MouseEvent('contextmenu', at), {
    deviceType: DeviceType.Keyboard,
    inputIndex: 0,
    previousState: null,
    currentState: null,
  });
  inside(grid).get(IContextMenuService).triggerContextMenu(event, menu);
  leadInto((panel) => panel.matches(MENU));
}

/**
 * Shift+F10 and the menu key open the menu of what is chosen, arrows lead through it, Enter and an arrow to the right into what a
 * line opens, and Escape back to the cells: the keys of a menu (WAI-ARIA Authoring Practices 1.2). The grid has none of them, and
 * leaves the keyboard at a line of the closed menu that was clicked on. Call it before there is a grid, which else has each key
 * first.
 */
export function menuByKeys(grid: () => Grid): void {
  const isOnCells = ({ target }: Event): boolean =>
    target instanceof Element && target.closest(CELLS) !== null && !isWriting(grid());
  /** The line that has opened more. */
  let opener: HTMLElement | undefined;

  function lead(lines: readonly HTMLElement[], step: number): void {
    const at = lines.findIndex((line) => line === document.activeElement);
    const next = at < 0 ? Math.min(step, 0) : (at + step) % lines.length;
    lines.at(next)?.focus();
  }
  function goInto(line: HTMLElement, before: readonly Element[]): void {
    const isAgain = line === opener;
    opener = line;
    line.click();
    leadInto((panel) => panel !== before[0] && (isAgain || !before.includes(panel)));
  }
  /** What a line has opened goes, as if the pointer had gone away from it: the grid leaves it in the page behind a menu that closes. */
  function close(): void {
    opener?.dispatchEvent(new MouseEvent('mouseout', { bubbles: true, relatedTarget: document.body }));
  }
  function goBack(): void {
    opener?.focus();
    close();
  }

  /** Whether the key is done with. */
  function press(event: KeyboardEvent): boolean {
    const { key, shiftKey, ctrlKey, altKey, metaKey } = event;
    if (ctrlKey || altKey || metaKey) return false;
    const opened = panels();
    const menu = opened[0];
    if (!menu) {
      const opens = (key === 'ContextMenu' || (key === 'F10' && shiftKey)) && isOnCells(event);
      if (opens) open(grid());
      return opens;
    }
    const led = document.activeElement;
    const panel = opened.find((each) => each.contains(led));
    if (key === 'Escape') close();
    // the grid closes the menu
    if (key === 'Escape' && panel) setTimeout(() => takeKeyboard(grid()));
    if (key === 'Escape' || (panel && led instanceof HTMLInputElement)) return false;
    const step = STEPS[key];
    if (step !== undefined) {
      lead(linesOf(panel ?? menu), step);
      return true;
    }
    const line = panel && linesOf(panel).find((each) => each === led);
    if (!line) return false;
    const opensMore = line.querySelector(MORE) !== null;
    if (opensMore && INTO.includes(key)) goInto(line, opened);
    else if (CHOOSES.includes(key)) line.click();
    else if (key === 'ArrowLeft' && panel !== menu) goBack();
    // no other key may do something to the cells, of which nothing would be seen
    else return key !== 'Tab' && !isModifier(event);
    return true;
  }

  takeKeys(press);
  // a browser has a menu of its own for both keys
  addEventListener(
    'contextmenu',
    (event) => {
      if (event.button !== 2 && isOnCells(event)) event.preventDefault();
    },
    { capture: true },
  );
}
