/** Names of sheets that are not in view. The grid takes them as soon as a finger lies down, which may mean to draw them along. */
const OTHER = '[data-u-comp="slide-tab-item"][aria-selected="false"]';

const otherTab = ({ target }: Event): Element | undefined =>
  (target instanceof Element ? target.closest(OTHER) : undefined) ?? undefined;

/** A finger draws the names of the sheets along, and chooses one by a tap alone. */
export function letNamesBeDrawn(): void {
  let lainOn: Element | undefined;
  const listen = (kind: 'pointerdown' | 'click', heard: (event: PointerEvent) => void): void =>
    addEventListener(
      kind,
      (event) => {
        if (event instanceof PointerEvent && event.isTrusted) heard(event);
      },
      { capture: true },
    );
  listen('pointerdown', (event) => {
    lainOn = event.pointerType === 'touch' ? otherTab(event) : undefined;
    if (lainOn) event.stopImmediatePropagation();
  });
  // a browser tells of no click where a finger has drawn something along
  listen('click', (event) => {
    const tab = otherTab(event);
    if (tab && tab === lainOn)
      event.target?.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true, pointerType: 'touch' }));
    lainOn = undefined;
  });
}
