import type { Spot } from './fingers';
import { tellOfPointer } from './pointer';
import type { Surface } from './surface';

/** Fingers on a chart: held first, they move or size it as the mouse would. */
export class OnChart implements Surface {
  readonly hint = 'Drag to move';
  readonly #handle: Element;
  readonly #pointer: number;

  constructor(handle: Element, pointer: number) {
    this.#handle = handle;
    this.#pointer = pointer;
  }

  tap(): void {}

  hold(at: Spot): void {
    tellOfPointer(this.#handle, 'pointerdown', at, this.#pointer);
  }

  drag(to: Spot): void {
    tellOfPointer(this.#handle, 'pointermove', to, this.#pointer);
  }

  drop(at: Spot): void {
    tellOfPointer(this.#handle, 'pointerup', at, this.#pointer);
  }

  giveUp(): void {
    this.#handle.dispatchEvent(new PointerEvent('pointercancel', { pointerId: this.#pointer }));
  }
}
