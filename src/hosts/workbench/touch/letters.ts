/** Where the grid takes letters from, for the cell that is chosen as for the one that is written into. */
const INPUT = '[id^="__editor___INTERNAL_EDITOR__DOCS_NORMAL"]';

const input = (): HTMLElement | null => document.querySelector<HTMLElement>(INPUT);

/**
 * The keyboard on the glass stays away from now on: a cell is only chosen, and half of the sheet would be hidden. Keys that can be
 * pressed go on as before.
 */
export function hideLetters(): void {
  input()?.setAttribute('inputmode', 'none');
}

/** It may come up from now on. What has the letters already is left for a moment, as a browser asks only whoever comes. */
export function showLetters(): void {
  const place = input();
  if (place?.getAttribute('inputmode') !== 'none') return;
  place.removeAttribute('inputmode');
  if (place !== document.activeElement) return;
  place.blur();
  place.focus({ preventScroll: true });
}
