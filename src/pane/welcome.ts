import { NAMESPACE } from '../catalogue';
import { closeButton, h } from './element';

const SEEN = 'sweeptable.welcomed';

/** Whether the line was shown before. Where the page may keep nothing, nobody can know, and it is shown again. */
function isFirstTime(): boolean {
  try {
    if (localStorage.getItem(SEEN)) return false;
    localStorage.setItem(SEEN, 'yes');
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
  }
  return true;
}

/** A first line for newcomers, once. */
export function welcome(canInsert: boolean): HTMLElement | undefined {
  if (!isFirstTime()) return undefined;
  const close = closeButton('Close this hint');
  const line = h(
    'section',
    { class: 'welcome', 'aria-label': 'Welcome' },
    h(
      'p',
      {},
      ...(canInsert
        ? ['New here? Insert Heads, then Pops plan, then Set card: a whole job in one minute. Or type ']
        : ['New here? Type ']),
      h('code', {}, `=${NAMESPACE}.`),
      canInsert ? ' in a cell.' : ' in a cell and pick a function.',
    ),
    close,
  );
  close.addEventListener('click', () => line.remove());
  return line;
}
