import type { Outcome } from './host';
import { closeButton, h } from './element';

/** The one line that says what became of the last wish, at the bottom where it is always in sight. */
export class StatusLine {
  readonly #text = h('p', { role: 'status' });
  readonly #close = closeButton('Close this message');
  readonly element = h('div', { class: 'status' }, this.#text, this.#close);

  constructor() {
    this.#close.addEventListener('click', () => this.clear());
    this.clear();
  }

  say(outcome: Outcome): void {
    const refused = 'refused' in outcome;
    this.element.classList.toggle('refused', refused);
    this.#text.replaceChildren(
      ...(refused ? [h('strong', {}, 'Not done.'), ` ${outcome.refused}`] : [outcome.done]),
    );
    this.#close.hidden = false;
  }

  clear(): void {
    this.element.classList.remove('refused');
    this.#text.replaceChildren();
    this.#close.hidden = true;
  }
}
