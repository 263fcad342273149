import { h } from '../../../pane/element';
import type { Spot } from './fingers';
import './touch.css';

/** How long a word stands that nobody holds, in milliseconds. */
const SAID = 3000;

/** Shows and says that a finger holds something, around the finger, which hides what is under it. */
export class Ring {
  readonly #ring = h('div', { class: 'touch-ring', 'aria-hidden': 'true', hidden: true });
  readonly #hint = h('div', { class: 'touch-hint', role: 'status' });

  constructor() {
    document.body.append(this.#ring, this.#hint);
  }

  #leave: () => void = () => {};

  /** Says something without a ring, for a while. */
  say(hint: string): void {
    this.#leave();
    this.#hint.textContent = hint;
    const going = setTimeout(() => this.away(), SAID);
    this.#leave = () => clearTimeout(going);
  }

  show(at: Spot, hint: string): void {
    this.#leave();
    this.follow(at);
    this.#ring.hidden = false;
    this.#hint.textContent = hint;
    navigator.vibrate?.(10);
  }

  follow({ x, y }: Spot): void {
    this.#ring.style.translate = `${x}px ${y}px`;
  }

  away(): void {
    this.#ring.hidden = true;
    this.#hint.textContent = '';
  }
}
