import { HOLD } from './fingers';
import { tellOfPointer } from './pointer';

/** Names of sheets that are not in view. The grid takes them as soon as a finger lies down, which may mean to draw them along. */
const OTHER = '[data-u-comp="slide-tab-item"][aria-selected="false"]';
/** The name of the sheet in view, which the grid carries along once it has been held. */
const CHOSEN = '[data-u-comp="slide-tab-item"][aria-selected="true"]';

const tabOf = ({ target }: Event, which: string): Element | undefined =>
  (target instanceof Element ? target.closest(which) : undefined) ?? undefined;

/** A finger draws the names of the sheets along, chooses one by a tap alone, and carries the chosen one once that is held. */
export function letNamesBeDrawn(): void {
  let lainOn: Element | undefined;
  let leave: () => void = () => {};
  const listen = (kind: 'pointerdown' | 'click', heard: (event: PointerEvent) => void): void =>
    addEventListener(
      kind,
      (event) => {
        if (event instanceof PointerEvent && event.isTrusted) heard(event);
      },
      { capture: true },
    );
  listen('pointerdown', (event) => {
    leave();
    const isTouch = event.pointerType === 'touch';
    lainOn = isTouch ? tabOf(event, OTHER) : undefined;
    if (lainOn) event.stopImmediatePropagation();
    const chosen = isTouch ? tabOf(event, CHOSEN) : undefined;
    if (chosen) leave = waitForHold(chosen, event.pointerId);
  });
  // a browser tells of no click where a finger has drawn something along
  listen('click', (event) => {
    const tab = tabOf(event, OTHER);
    if (tab && tab === lainOn)
      event.target?.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true, pointerType: 'touch' }));
    lainOn = undefined;
  });
}

/** Leaves a finger on the chosen name to the browser, which draws the names along, until it holds; then to the grid. */
function waitForHold(tab: Element, pointer: number): () => void {
  let isHeld = false;
  const waiting = setTimeout(() => {
    isHeld = true;
  }, HOLD);
  const drawn = new AbortController();
  const leave = (): void => {
    clearTimeout(waiting);
    drawn.abort();
  };
  tab.addEventListener(
    'touchmove',
    (event) => {
      if (isHeld && event.cancelable) event.preventDefault();
    },
    { passive: false, signal: drawn.signal },
  );
  // To the grid, which would still wait for the finger to hold, it has been lifted.
  tab.addEventListener(
    'pointercancel',
    (event) => {
      leave();
      if (event instanceof PointerEvent && event.pointerId === pointer)
        tellOfPointer(tab, 'pointerup', { x: event.clientX, y: event.clientY }, pointer);
    },
    { signal: drawn.signal },
  );
  return leave;
}
