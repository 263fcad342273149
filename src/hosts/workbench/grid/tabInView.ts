const NAMES = '[data-u-comp="slide-tab-bar"]';
const CHOSEN = '[data-u-comp="slide-tab-item"][aria-selected="true"]';
/** Room beside it, in pixels. */
const BESIDE = 4;

/** Draws the names along as far as it takes, and never the page, which may be taller than its window. */
function reveal(): void {
  const [names, chosen] = [document.querySelector(NAMES), document.querySelector(CHOSEN)];
  if (!names || !chosen) return;
  const [all, one] = [names.getBoundingClientRect(), chosen.getBoundingClientRect()];
  const before = all.left + BESIDE - one.left;
  const after = one.right + BESIDE - all.right;
  // where it is wider than its room, its beginning
  if (before > 0 || one.width > all.width) names.scrollLeft -= before;
  else if (after > 0) names.scrollLeft += after;
}

/** Keeps the name of the sheet in view in sight among those of the others, where there is no room for all. */
export function keepTabInView(): void {
  const place = document.querySelector('#grid');
  if (!place) return;
  // the grid, too, draws its names along as they change
  const later = (): void => {
    requestAnimationFrame(() => requestAnimationFrame(reveal));
  };
  new MutationObserver(later).observe(place, { subtree: true, attributeFilter: ['aria-selected'] });
  // what stands beside the names takes room from them, or gives it back
  const room = new ResizeObserver(later);
  const names = document.querySelector(NAMES);
  if (names) room.observe(names);
  addEventListener('resize', later);
  later();
}
