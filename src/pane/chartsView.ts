import { ChartCard } from './chartCard';
import { h } from './element';
import type { PaneHost } from './host';
import type { View } from './tabs';
import { watchTheme } from './watchTheme';

/** The charts of the sheet in view. They are watched only while they can be seen. */
export function chartsView(watch: NonNullable<PaneHost['watchCharts']>): View {
  const none = h('p', { class: 'hint' }, 'The sheet in view has no chart.');
  const place = h('div', { class: 'charts' });
  const cards: ChartCard[] = [];
  return {
    id: 'charts',
    label: 'Charts',
    make: () => h('div', {}, none, place),
    shown() {
      const stopWatching = watch((charts) => {
        none.hidden = charts.length > 0;
        for (const card of cards.splice(charts.length)) card.dispose();
        for (const [i, chart] of charts.entries()) {
          const card = (cards[i] ??= new ChartCard(`pane-chart-${i}`));
          if (!card.element.isConnected) place.append(card.element);
          card.tell(chart);
        }
      });
      const stopTheme = watchTheme(() => cards.forEach((card) => card.draw()));
      return () => {
        stopWatching();
        stopTheme();
      };
    },
  };
}
