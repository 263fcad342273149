import type { PaneHost, PictureHost } from './host';
import { latePlace } from './lateView';
import type { OneAtATime } from './oneAtATime';
import type { View } from './tabs';

/** Values may come in many cells at once, and the picture is of all of them. */
const SETTLED = 250;

/** The view *Set*: the picture of the set on the sheet in view. Its code comes when it is first looked at. */
export function setView(host: PictureHost, watchCell: PaneHost['watchCell'], work: OneAtATime): View {
  let look: (() => void) | undefined;
  let isShown = false;
  return {
    id: 'set',
    label: 'Set',
    make() {
      return latePlace(async () => {
        const { setPanel } = await import(/* webpackChunkName: "set-picture" */ './set/view');
        const panel = setPanel(host, work);
        look = panel.look;
        // it is as wide as its place, and has one from now on
        setTimeout(() => isShown && panel.look());
        return panel.element;
      });
    },
    shown() {
      isShown = true;
      let waiting: ReturnType<typeof setTimeout> | undefined;
      const soon = (): void => {
        clearTimeout(waiting);
        waiting = setTimeout(() => look?.(), SETTLED);
      };
      look?.();
      const stop = watchCell?.(soon);
      return () => {
        isShown = false;
        clearTimeout(waiting);
        stop?.();
      };
    },
  };
}
