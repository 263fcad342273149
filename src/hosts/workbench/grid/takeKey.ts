interface Where {
  /** Whether it is ours while a dialog asks something, too; else a dialog keeps all keys. */
  readonly inDialogs?: boolean;
}

/** From now on keys are taken before the grid hears of them, where what is done with one at that moment is all that it does. */
export function takeKeys(press: (event: KeyboardEvent) => boolean, { inDialogs = false }: Where = {}): void {
  addEventListener(
    'keydown',
    (event) => {
      if ((!inDialogs && document.querySelector('dialog[open]')) || !press(event)) return;
      event.preventDefault();
      event.stopImmediatePropagation();
    },
    { capture: true },
  );
}

/** From now on a key is taken before the grid hears of it, where it is ours at that moment. */
export function takeKey(
  isOurs: (event: KeyboardEvent) => boolean,
  run: (event: KeyboardEvent) => void,
  where?: Where,
): void {
  takeKeys((event) => {
    if (!isOurs(event)) return false;
    run(event);
    return true;
  }, where);
}

/** The letter that is pressed with Ctrl, or on a Mac with the key that stands for it there, and no other. */
export const letterWithCtrl = ({
  key,
  ctrlKey,
  metaKey,
  altKey,
  shiftKey,
}: KeyboardEvent): string | undefined =>
  (ctrlKey || metaKey) && !altKey && !shiftKey ? key.toLowerCase() : undefined;
