import type { Outcome } from './host';
import { closeButton, h } from './element';

/** The one line that says what became of the last wish, at the bottom where it is always in sight. */
export class StatusLine {
  readonly #text = h('p', { role: 'status' });
  readonly #back = h('span', { class: 'back' });
  readonly #close = closeButton('Close this message');
  readonly element = h('div', { class: 'status' }, this.#text, this.#back, this.#close);

  constructor() {
    this.#close.addEventListener('click', () => this.clear());
    this.clear();
  }

  /** `back` is the button that takes back what was done, where there is one. */
  say(outcome: Outcome, back?: HTMLButtonElement): void {
    const hadKeyboard = this.element.contains(document.activeElement);
    const refused = 'refused' in outcome;
    this.element.classList.toggle('refused', refused);
    this.#text.replaceChildren(
      ...(refused ? [h('strong', {}, 'Not done.'), ` ${outcome.refused}`] : [outcome.done]),
    );
    this.#back.replaceChildren(...(back ? [back] : []));
    this.#close.hidden = false;
    if (hadKeyboard) (back ?? this.#close).focus();
  }

  clear(): void {
    this.element.classList.remove('refused');
    this.#text.replaceChildren();
    this.#back.replaceChildren();
    this.#close.hidden = true;
  }
}
