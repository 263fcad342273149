/** Whoever is told of something types no sooner because of it, in milliseconds: it has to be seen, and the first words read. */
export const READS = 700;

/** Keys of somebody who goes on with the next cell: those that write, and those that lead on. */
const LEADS: readonly string[] = ['Enter', 'Tab', 'ArrowDown', 'ArrowUp', 'ArrowLeft', 'ArrowRight'];
const MODIFIERS: readonly string[] = ['Shift', 'Control', 'Alt', 'AltGraph', 'Meta', 'CapsLock'];

export const isModifier = ({ key }: KeyboardEvent): boolean => MODIFIERS.includes(key);
const goesOn = ({ key, ctrlKey, altKey, metaKey }: KeyboardEvent): boolean =>
  !ctrlKey && !altKey && !metaKey && (key.length === 1 || LEADS.includes(key));

/**
 * Tells whether the first key after something was told was pressed by somebody who cannot have read that yet, and so types on. The
 * key itself goes its way. Make it before there is a grid: a key that ends the writing in a cell is seen before the grid has it.
 */
export class TypingOn {
  #typedOn: (() => void) | undefined;
  #readAt = 0;

  constructor() {
    addEventListener('keydown', (event) => this.#press(event), { capture: true });
  }

  /** From now on the next key is looked at. */
  watch(typedOn: () => void): void {
    this.#typedOn = typedOn;
    this.#readAt = Infinity;
    const drawn = (): void => {
      this.#readAt = Math.min(this.#readAt, performance.now() + READS);
    };
    requestAnimationFrame(() => requestAnimationFrame(drawn));
  }

  rest(): void {
    this.#typedOn = undefined;
  }

  #press(event: KeyboardEvent): void {
    const typedOn = this.#typedOn;
    if (!typedOn || isModifier(event)) return;
    this.rest();
    if (event.timeStamp < this.#readAt && goesOn(event)) typedOn();
  }
}
