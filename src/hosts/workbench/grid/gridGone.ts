/** Tells when the grid has gone out of its place, as it does where it stumbles over itself. */
export function whenGridGone(place: HTMLElement, tell: () => void): void {
  const watch = new MutationObserver(() => {
    if (place.childElementCount > 0) return;
    watch.disconnect();
    tell();
  });
  watch.observe(place, { childList: true });
}
