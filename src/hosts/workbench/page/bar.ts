import { h } from '../../../pane/element';
import { letterWithCtrl, takeKey } from '../grid/takeKey';
import { elementById } from './elementById';

export interface Command {
  readonly label: string;
  /** Said when the pointer rests on it. */
  readonly about: string;
  /** A letter that does so with Ctrl. */
  readonly key?: string;
  readonly run: () => Promise<void>;
}

/**
 * The buttons of the bar, and their keys. One command runs at a time.
 *
 * @param settled - asked for what is being typed, before a key runs a command.
 */
export function fillBar(
  commands: readonly Command[],
  settled: () => Promise<unknown>,
  failed: (reason: unknown) => void,
): void {
  let busy = false;
  const byKey = new Map<string, HTMLElement>();
  const buttons = commands.map(({ label, about, key, run }) => {
    const button = h('button', { type: 'button', title: about }, label);
    if (key !== undefined) {
      button.setAttribute('aria-keyshortcuts', `Control+${key.toUpperCase()}`);
      byKey.set(key, button);
    }
    button.addEventListener('click', () => {
      if (busy) return;
      busy = true;
      void run()
        .catch(failed)
        .finally(() => {
          busy = false;
        });
    });
    return button;
  });
  elementById('commands').prepend(...buttons);
  const pressed = (event: KeyboardEvent) => byKey.get(letterWithCtrl(event) ?? '');
  takeKey(
    (event) => pressed(event) !== undefined,
    (event) => void settled().then(() => pressed(event)?.click()),
  );
}
