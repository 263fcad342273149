import { h } from './element';
import type { TableHost } from './host';
import type { OneAtATime } from './oneAtATime';
import type { View } from './tabs';

/** The view *Balance*, whose code comes when it is first looked at: it is worth a few sheets, and most days nobody asks for it. */
export const balanceView = (host: TableHost, work: OneAtATime): View => ({
  id: 'balance',
  label: 'Balance',
  make() {
    const place = h('div');
    void fill(place, host, work);
    return place;
  },
});

async function fill(place: HTMLElement, host: TableHost, work: OneAtATime): Promise<void> {
  try {
    const { balancePanel } = await import(/* webpackChunkName: "balance" */ './balance/view');
    place.replaceChildren(balancePanel(host, work));
  } catch {
    const again = h('button', { type: 'button', class: 'plain' }, 'Try again');
    again.addEventListener('click', () => void fill(place, host, work));
    place.replaceChildren(
      h('p', { class: 'hint', role: 'status' }, 'This part did not arrive. Check the connection. '),
      again,
    );
  }
}
