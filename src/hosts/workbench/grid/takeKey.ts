/** From now on a key is taken before the grid hears of it, where it is ours at that moment; a dialog keeps all keys. */
export function takeKey(
  isOurs: (event: KeyboardEvent) => boolean,
  run: (event: KeyboardEvent) => void,
): void {
  addEventListener(
    'keydown',
    (event) => {
      if (!isOurs(event) || document.querySelector('dialog[open]')) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      run(event);
    },
    { capture: true },
  );
}
