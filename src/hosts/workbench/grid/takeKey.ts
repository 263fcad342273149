interface Where {
  /** Whether it is ours while a dialog asks something, too; else a dialog keeps all keys. */
  readonly inDialogs?: boolean;
}

/** From now on a key is taken before the grid hears of it, where it is ours at that moment. */
export function takeKey(
  isOurs: (event: KeyboardEvent) => boolean,
  run: (event: KeyboardEvent) => void,
  { inDialogs = false }: Where = {},
): void {
  addEventListener(
    'keydown',
    (event) => {
      if (!isOurs(event) || (!inDialogs && document.querySelector('dialog[open]'))) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      run(event);
    },
    { capture: true },
  );
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
