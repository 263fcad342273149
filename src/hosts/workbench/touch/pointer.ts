import type { Spot } from './fingers';

type Kind = 'pointerdown' | 'pointermove' | 'pointerup';

/** A button of a mouse: its number, and what it adds to the pressed ones. */
const BUTTONS = { main: [0, 1], menu: [2, 2] } as const;

/** Tells an element of a pointer, as the browser would. What listens for those of the browser can tell them apart by `isTrusted`. */
export function tellOfPointer(
  target: Element,
  kind: Kind,
  { x: clientX, y: clientY }: Spot,
  pointerId: number,
  button: keyof typeof BUTTONS = 'main',
): void {
  const [number, pressed] = BUTTONS[button];
  target.dispatchEvent(
    new PointerEvent(kind, {
      bubbles: true,
      cancelable: true,
      composed: true,
      pointerType: 'touch',
      pointerId,
      isPrimary: true,
      button: kind === 'pointermove' ? -1 : number,
      buttons: kind === 'pointerup' ? 0 : pressed,
      clientX,
      clientY,
      view: window,
    }),
  );
}
