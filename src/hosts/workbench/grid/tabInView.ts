const CHOSEN = '[data-u-comp="slide-tab-item"][aria-selected="true"]';

/** Keeps the name of the sheet in view in sight among those of the others, where there is no room for all. */
export function keepTabInView(): void {
  const place = document.querySelector('#grid');
  if (!place) return;
  // the grid, too, scrolls its names as they change
  const reveal = (): void => {
    requestAnimationFrame(() => {
      requestAnimationFrame(() =>
        document.querySelector(CHOSEN)?.scrollIntoView({ block: 'nearest', inline: 'nearest' }),
      );
    });
  };
  new MutationObserver(reveal).observe(place, { subtree: true, attributeFilter: ['aria-selected'] });
  addEventListener('resize', reveal);
  reveal();
}
