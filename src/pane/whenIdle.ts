const SOON = 1000;

/** Does something when the page has nothing else to do; Safari, which does not say when that is, after a second. */
export const whenIdle = (work: () => void): void => {
  if (typeof requestIdleCallback === 'function') requestIdleCallback(work);
  else setTimeout(work, SOON);
};
