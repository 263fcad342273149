import { h } from '../../../pane/element';
import { elementById } from './elementById';

const KEY = 'sweeptable pane';
const CLOSED = 'closed';

/** Where the browser forbids storage the pane is open on every visit, and nothing else is lost. */
function wasClosed(): boolean {
  try {
    return localStorage.getItem(KEY) === CLOSED;
  } catch {
    return false;
  }
}

function rememberClosed(closed: boolean): void {
  try {
    if (closed) localStorage.setItem(KEY, CLOSED);
    else localStorage.removeItem(KEY);
  } catch {
    // See above.
  }
}

/** Where the pane stands beside the grid, and its button in the bar. The room is kept from the start; what fills it comes later. */
export function paneFrame(): HTMLElement {
  const frame = elementById('pane');
  const button = h(
    'button',
    {
      type: 'button',
      'aria-controls': 'pane',
      title: 'Shows what stands beside the cells. Ctrl+F6 leads there and back',
    },
    'Sheets and functions',
  );
  const show = (open: boolean): void => {
    frame.hidden = !open;
    button.setAttribute('aria-expanded', String(open));
  };
  show(!wasClosed());
  button.addEventListener('click', () => {
    const isOpened = frame.hidden !== false;
    show(isOpened);
    rememberClosed(!isOpened);
  });
  elementById('commands').append(button);
  return frame;
}
