import { NAMESPACE } from '../catalogue';
import { closeButton, h } from './element';
import { isKept, keep } from './kept';

const SEEN = 'sweeptable.welcomed';

/** Whether the pane is shown for the first time. */
export function isFirstTime(): boolean {
  const isFirst = !isKept(SEEN);
  keep(SEEN);
  return isFirst;
}

/**
 * A first line for newcomers.
 *
 * @param canBegin - whether the spreadsheet takes a whole job
 */
export function welcome(canBegin: boolean): HTMLElement {
  const close = closeButton('Close this hint');
  const line = h(
    'section',
    { class: 'welcome', 'aria-label': 'Welcome' },
    h(
      'p',
      {},
      canBegin
        ? 'New here? Press New job: three sheets, from your heads to what to tick. Or type '
        : 'New here? Type ',
      h('code', {}, `=${NAMESPACE}.`),
      canBegin ? ' in a cell.' : ' in a cell and pick a function.',
    ),
    close,
  );
  close.addEventListener('click', () => line.remove());
  return line;
}
