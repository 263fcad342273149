import { h } from '../../../pane/element';
import { elementById } from './elementById';

export interface Command {
  readonly label: string;
  /** Said when the pointer rests on it. */
  readonly about: string;
  readonly run: () => Promise<void>;
}

/** The buttons of the bar. One command runs at a time. */
export function fillBar(commands: readonly Command[], failed: (reason: unknown) => void): void {
  let busy = false;
  const buttons = commands.map(({ label, about, run }) => {
    const button = h('button', { type: 'button', title: about }, label);
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
}
