import type { Area } from '../../../../formula/area';
import { byPixels, type Wish } from './newPlace';
import type { SheetView } from '../../grid/sheetView';

/** What is to be moved, and what is told while and after it is. */
export interface Held {
  place(): Area;
  view(): SheetView | undefined;
  /** Where it would be if it were let go now; nothing where it is taken back. */
  show(place: Area | undefined): void;
  put(place: Area): void;
}

/** Lets something be dragged by a handle. The keyboard stays with the cells; Escape takes the drag back. */
export function draggable(handle: HTMLElement, wish: Wish, held: Held): void {
  handle.addEventListener('pointerdown', (down) => {
    if (down.button !== 0) return;
    down.preventDefault();
    down.stopPropagation();
    handle.setPointerCapture(down.pointerId);
    const from = held.place();
    const placeAt = (event: PointerEvent): Area => {
      const view = held.view();
      if (!view) return from;
      const [right, below] = [event.clientX - down.clientX, event.clientY - down.clientY];
      return byPixels(from, wish, right / view.zoom, below / view.zoom, view);
    };
    const end = new AbortController();
    const { signal } = end;
    const giveUp = (): void => {
      end.abort();
      held.show(undefined);
    };
    handle.addEventListener('pointermove', (event) => held.show(placeAt(event)), { signal });
    handle.addEventListener(
      'pointerup',
      (event) => {
        end.abort();
        held.put(placeAt(event));
      },
      { signal },
    );
    handle.addEventListener('pointercancel', giveUp, { signal });
    addEventListener(
      'keydown',
      (event) => {
        if (event.key !== 'Escape') return;
        event.preventDefault();
        event.stopImmediatePropagation();
        giveUp();
      },
      { signal, capture: true },
    );
  });
}
