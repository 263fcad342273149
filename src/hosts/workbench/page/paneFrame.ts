import { barButton } from './bar';
import { elementById } from './elementById';

const CLOSED = 'closed';
/** As workbench.css has it: narrower than this the pane lies over the sheet. */
const OVER = matchMedia('(width < 800px)');

/** Whether it stands beside the sheet and whether it lies over it are different things to want. */
const key = (): string => (OVER.matches ? 'sweeptable pane over' : 'sweeptable pane');

/** Where the browser forbids storage the pane is open on every visit, and nothing else is lost. */
function wasClosed(): boolean {
  try {
    return localStorage.getItem(key()) === CLOSED;
  } catch {
    return false;
  }
}

function rememberClosed(closed: boolean): void {
  try {
    if (closed) localStorage.setItem(key(), CLOSED);
    else localStorage.removeItem(key());
  } catch {
    // See above.
  }
}

export interface PaneFrame {
  readonly element: HTMLElement;
  /** Has it leave the sheet that it lies over; gives whether it did. */
  leave(): boolean;
  /** Has it stand there, whether it was closed or not. */
  come(): void;
}

/**
 * Where the pane stands beside the grid, and its button in the bar. The room is kept from the start; what fills it comes later.
 * Where there is no room beside the grid it lies over it, and leaves when that is wanted.
 */
export function paneFrame(): PaneFrame {
  const element = elementById('pane');
  const button = barButton(
    'Sheets and functions',
    'Shows what stands beside the cells. Ctrl+F6 leads there and back',
  );
  button.setAttribute('aria-controls', 'pane');
  const show = (open: boolean): void => {
    element.hidden = !open;
    // what it lies over can be neither seen nor pressed
    elementById('grid').inert = open && OVER.matches;
    button.setAttribute('aria-expanded', String(open));
  };
  const choose = (open: boolean): void => {
    show(open);
    rememberClosed(!open);
  };
  show(!wasClosed());
  OVER.addEventListener('change', () => show(!wasClosed()));
  button.addEventListener('click', () => choose(element.hidden !== false));
  return {
    element,
    leave() {
      if (!OVER.matches || element.hidden) return false;
      choose(false);
      return true;
    },
    come: () => choose(true),
  };
}
