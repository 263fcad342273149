import { NAMESPACE } from '../catalogue';
import { closeButton, h } from './element';

const SEEN = 'sweeptable.welcomed';

/** Whether the pane was shown before. Where the page may keep nothing, nobody can know, and it is as for a newcomer again. */
export function isFirstTime(): boolean {
  try {
    if (localStorage.getItem(SEEN)) return false;
    localStorage.setItem(SEEN, 'yes');
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
  }
  return true;
}

/** A first line for newcomers. */
export function welcome(canInsert: boolean, canBegin: boolean): HTMLElement {
  const close = closeButton('Close this hint');
  const first = canBegin
    ? 'New here? Press New job: three sheets, from your heads to what to tick. Or type '
    : 'New here? Insert Heads, then Pops plan, then Set card: a whole job in one minute. Or type ';
  const line = h(
    'section',
    { class: 'welcome', 'aria-label': 'Welcome' },
    h(
      'p',
      {},
      canInsert ? first : 'New here? Type ',
      h('code', {}, `=${NAMESPACE}.`),
      canInsert ? ' in a cell.' : ' in a cell and pick a function.',
    ),
    close,
  );
  close.addEventListener('click', () => line.remove());
  return line;
}
