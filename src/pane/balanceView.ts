import type { TableHost } from './host';
import { latePlace } from './lateView';
import type { OneAtATime } from './oneAtATime';
import type { View } from './tabs';

/** The view *Balance*, whose code comes when it is first looked at: it is worth a few sheets, and most days nobody asks for it. */
export const balanceView = (host: TableHost, work: OneAtATime): View => ({
  id: 'balance',
  label: 'Balance',
  make() {
    return latePlace(async () => {
      const { balancePanel } = await import(/* webpackChunkName: "balance" */ './balance/view');
      return balancePanel(host, work);
    });
  },
});
