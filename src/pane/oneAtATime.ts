import { h } from './element';
import type { Outcome } from './host';
import type { StatusLine } from './statusLine';

const UNKNOWN =
  'Something went wrong that this page does not know. Look at the workbook before you try again.';

/** Lets one wish after the other reach the spreadsheet. While one is under way, no button takes another. */
export class OneAtATime {
  readonly #pane: HTMLElement;
  readonly #status: StatusLine;
  readonly #done: () => void;
  #busy = false;

  /** @param done - is called whenever a wish has been done. */
  constructor(pane: HTMLElement, status: StatusLine, done: () => void) {
    this.#pane = pane;
    this.#status = status;
    this.#done = done;
  }

  /** Makes a button carry out a wish. It stays in the keyboard's reach while it waits. */
  on(button: HTMLButtonElement, wish: () => Promise<Outcome>): HTMLButtonElement {
    button.classList.add('wish');
    button.addEventListener('click', () => void this.#carryOut(button, wish));
    return button;
  }

  async #carryOut(button: HTMLButtonElement, wish: () => Promise<Outcome>): Promise<void> {
    if (this.#busy) return;
    this.#wait(button, true);
    // A button in the status line stays where the keyboard is until there is something to say.
    if (!this.#status.element.contains(button)) this.#status.clear();
    let outcome: Outcome = { refused: UNKNOWN };
    try {
      outcome = await wish();
    } finally {
      this.#wait(button, false);
      if ('done' in outcome) this.#done();
      this.#status.say(outcome, this.#backFrom(outcome));
    }
  }

  #backFrom(outcome: Outcome): HTMLButtonElement | undefined {
    if (!('takeBack' in outcome)) return undefined;
    return this.on(h('button', { type: 'button', class: 'plain' }, 'Take back'), outcome.takeBack);
  }

  #wait(button: HTMLButtonElement, busy: boolean): void {
    this.#busy = busy;
    for (const other of this.#pane.querySelectorAll('button.wish'))
      if (busy) other.setAttribute('aria-disabled', 'true');
      else other.removeAttribute('aria-disabled');
    if (busy) button.setAttribute('aria-busy', 'true');
    else button.removeAttribute('aria-busy');
  }
}
