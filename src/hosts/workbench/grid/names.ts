import { LocaleService } from '@univerjs/core';
import { IMenuManagerService, type IMenuSchema, RibbonPosition } from '@univerjs/preset-sheets-core';
import type { Grid } from './grid';
import { inside } from './inside';

/** Parts of the grid that have a picture and no name, each by its place. */
const BY_PLACE: Readonly<Record<string, string>> = {
  '[data-u-comp="sheet-bar-append-button"]:has(.univerjs-icon-increase-icon)': 'Add a sheet',
  '[data-u-comp="sheet-bar-append-button"]:has(.univerjs-icon-convert-icon)': 'All sheets',
  '[data-u-comp="sheet-bar-append-button"]:has(.univer-rotate-180)': 'Scroll the sheets’ names back',
  '[data-u-comp="sheet-bar-append-button"]:has(.univerjs-icon-more-icon:not(.univer-rotate-180))':
    'Scroll the sheets’ names on',
  'footer [data-u-comp="button"]:has(.univerjs-icon-reduce-icon)': 'Zoom out',
  'footer [data-u-comp="button"]:has(.univerjs-icon-increase-icon)': 'Zoom in',
  '[data-u-comp="defined-name"] input': 'Name of the chosen cells',
  '[data-u-comp="defined-name"] [aria-haspopup]': 'Names',
  'button:has(> .univerjs-icon-close-icon)': 'Close',
};

/** Where it takes letters: told as one comes there, for all keys but one go on to other cells. */
const WRITTEN: Readonly<Record<string, string>> = {
  '[id^="__editor___INTERNAL_EDITOR__DOCS_NORMAL"]': 'Cells. Ctrl+F6 leads out of them',
  '[id^="__editor___INTERNAL_EDITOR__DOCS_FORMULA_BAR"]': 'What the cell holds',
};

/** Of a menu and all below it, the words that the grid shows to a pointer that rests. */
function* tooltips(menus: readonly IMenuSchema[]): Generator<readonly [id: string, words: string]> {
  for (const { item, children } of menus) {
    if (item && typeof item.tooltip === 'string') yield [item.id, item.tooltip];
    yield* tooltips(children ?? []);
  }
}

/** Names of the toolbar's buttons by their commands. */
function namesOfButtons(grid: Grid): ReadonlyMap<string, string> {
  const [menus, locale] = [inside(grid).get(IMenuManagerService), inside(grid).get(LocaleService)];
  const all = Object.values(RibbonPosition).flatMap((at) => menus.getMenuByPositionKey(at));
  return new Map([...tooltips(all)].map(([id, words]) => [id, locale.t(words)]));
}

/** What has a menu is said to be a button, which it looks like, and can be reached like one; a name cannot be on anything less. */
function asButton(part: Element, name: string): void {
  if (part.tagName !== 'BUTTON' && part.tagName !== 'INPUT' && !part.hasAttribute('role')) {
    part.setAttribute('role', 'button');
    part.setAttribute('tabindex', '0');
  }
  if (!part.hasAttribute('aria-label') && !part.textContent.trim()) part.setAttribute('aria-label', name);
}

/**
 * Gives names to the parts of the grid's own that have none, from now on: it makes them anew as they come and go. Call it once
 * the grid's parts have made their menus.
 */
export function nameParts(grid: Grid): void {
  const place = document.querySelector('#grid');
  if (!place) return;
  const names = namesOfButtons(grid);
  const name = (): void => {
    for (const part of place.querySelectorAll('[data-u-command]')) {
      const words = names.get(part.getAttribute('data-u-command') ?? '');
      if (words === undefined) continue;
      if (part.tagName === 'BUTTON' || part.hasAttribute('aria-haspopup')) asButton(part, words);
      for (const menu of part.querySelectorAll('[aria-haspopup]')) asButton(menu, `${words}: choose`);
    }
    for (const [selector, words] of Object.entries(BY_PLACE))
      for (const part of place.querySelectorAll(selector)) asButton(part, words);
    for (const [selector, words] of Object.entries(WRITTEN))
      for (const part of document.querySelectorAll(selector)) {
        part.setAttribute('role', 'textbox');
        part.setAttribute('aria-label', words);
        // one stands outside of all parts of the page
        const around = part.closest('body > div');
        around?.setAttribute('role', 'region');
        around?.setAttribute('aria-label', words);
      }
    for (const [i, part] of document.querySelectorAll('section[aria-label^="Notifications"]').entries())
      part.setAttribute('aria-label', `Notifications ${i + 1}`);
    // a slider for the mouse alone: the buttons beside it do the same, and have names
    for (const track of place.querySelectorAll('[role="track"]')) {
      track.parentElement?.setAttribute('aria-hidden', 'true');
      for (const part of track.querySelectorAll('button')) part.tabIndex = -1;
    }
    // the order of the page, not one before all else
    for (const canvas of place.querySelectorAll('canvas[tabindex="1"]')) canvas.setAttribute('tabindex', '0');
  };
  let frame = 0;
  new MutationObserver(() => {
    cancelAnimationFrame(frame);
    frame = requestAnimationFrame(name);
  }).observe(place, { childList: true, subtree: true });
  name();
}
