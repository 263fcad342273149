const BY_KEY = 'by-key';

/**
 * Marks what a key with Ctrl or Alt has brought the keyboard to, until it leaves. After a click browsers show only where other keys
 * lead, so that nobody would see where Ctrl+F6 has gone.
 */
export function showFocusByKeys(): void {
  let isByKey = false;
  addEventListener(
    'keydown',
    ({ ctrlKey, altKey, metaKey }) => {
      isByKey = ctrlKey || altKey || metaKey;
    },
    { capture: true },
  );
  addEventListener('pointerdown', () => (isByKey = false), { capture: true });
  addEventListener('focusin', ({ target }) => {
    if (!isByKey || !(target instanceof HTMLElement) || target.isContentEditable) return;
    target.classList.add(BY_KEY);
    target.addEventListener('blur', () => target.classList.remove(BY_KEY), { once: true });
  });
}
