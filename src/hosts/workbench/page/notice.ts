import { h } from '../../../pane/element';
import { elementById } from './elementById';

interface Action {
  readonly label: string;
  readonly run: () => void;
  /** What follows when the notice is closed instead. */
  readonly declined?: () => void;
}

/** The status line below the bar: what became of a command, with at most one thing to do about it. */
export class Notice {
  readonly #line: HTMLElement;
  readonly #text = h('p', { role: 'status' });
  readonly #buttons = h('span', { class: 'notice-buttons' });

  constructor(line: HTMLElement) {
    this.#line = line;
    line.append(this.#text, this.#buttons);
    line.hidden = true;
  }

  say(text: string, action?: Action): void {
    this.#line.hidden = false;
    this.#text.textContent = text;
    const close = h('button', { type: 'button', class: 'close', 'aria-label': 'Close this message' }, '×');
    close.addEventListener('click', () => {
      this.clear();
      action?.declined?.();
    });
    const act = action ? [h('button', { type: 'button', class: 'plain' }, action.label)] : [];
    act[0]?.addEventListener('click', () => {
      this.clear();
      action?.run();
    });
    this.#buttons.replaceChildren(...act, close);
  }

  clear(): void {
    this.#line.hidden = true;
    this.#text.textContent = '';
    this.#buttons.replaceChildren();
  }
}

/** A line for what holds until it changes: no passing notice takes its place. */
export function standingNotice(): Notice {
  const line = h('div', { class: 'notice' });
  elementById('standing').append(line);
  return new Notice(line);
}
