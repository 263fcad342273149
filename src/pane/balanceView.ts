import { h } from './element';
import type { TableHost } from './host';
import { fillLate } from './lateView';
import type { OneAtATime } from './oneAtATime';
import type { View } from './tabs';

/** The view *Balance*, whose code comes when it is first looked at: it is worth a few sheets, and most days nobody asks for it. */
export const balanceView = (host: TableHost, work: OneAtATime): View => ({
  id: 'balance',
  label: 'Balance',
  make() {
    const place = h('div');
    void fillLate(place, async () => {
      const { balancePanel } = await import(/* webpackChunkName: "balance" */ './balance/view');
      return balancePanel(host, work);
    });
    return place;
  },
});
