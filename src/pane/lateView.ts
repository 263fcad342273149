import { h } from './element';

/** Fills a place with what comes when it is first looked at; where it does not come, a button tries again. */
async function fillLate(place: HTMLElement, load: () => Promise<HTMLElement>): Promise<void> {
  try {
    place.replaceChildren(await load());
  } catch {
    const again = h('button', { type: 'button', class: 'plain' }, 'Try again');
    again.addEventListener('click', () => void fillLate(place, load));
    place.replaceChildren(
      h('p', { class: 'hint', role: 'status' }, 'This part did not arrive. Check the connection. '),
      again,
    );
  }
}

/** A place for a view whose code comes when it is first looked at. */
export function latePlace(load: () => Promise<HTMLElement>): HTMLElement {
  const place = h('div');
  void fillLate(place, load);
  return place;
}
