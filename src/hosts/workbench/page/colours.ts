import { watchTheme } from '../../../pane/watchTheme';
import type { Grid } from '../grid/grid';
import { drawGrid, letCanvasBeDark } from '../grid/dark/darkCanvas';
import { barButton } from './bar';
import { KEPT_COLOURS } from './keptColours';
import '../grid/dark/dark.css';

type Colours = 'light' | 'dark';

/** What a person has chosen against the system. Where the browser forbids storage, nothing, on every visit. */
function chosen(): Colours | undefined {
  try {
    const kept = localStorage.getItem(KEPT_COLOURS);
    return kept === 'light' || kept === 'dark' ? kept : undefined;
  } catch {
    return undefined;
  }
}

function keep(colours: Colours | undefined): void {
  try {
    if (colours) localStorage.setItem(KEPT_COLOURS, colours);
    else localStorage.removeItem(KEPT_COLOURS);
  } catch {
    // See above.
  }
}

const system = matchMedia('(prefers-color-scheme: dark)');
/** Colours that a person has set for all programs: no choice of a page goes before these. */
const forced = matchMedia('(forced-colors: active)');
const systems = (): Colours => (system.matches ? 'dark' : 'light');

/** Light or dark as the system is, or as the button in the bar was set. As the page loads, a line in its head does the same. */
function choosePageColours(): void {
  const colours = forced.matches ? undefined : chosen();
  if (colours) document.documentElement.dataset['theme'] = colours;
  else delete document.documentElement.dataset['theme'];
}

const inView = (): Colours => {
  const { theme } = document.documentElement.dataset;
  return theme === 'dark' || theme === 'light' ? theme : systems();
};

/** Keeps the grid in the colours of the page, and offers the others. */
export function keepColours(grid: Grid): void {
  letCanvasBeDark(grid);
  const button = barButton('Dark', 'Dark for a dark set; follows the system until it is pressed');
  const show = (): void => {
    const isDark = inView() === 'dark';
    drawGrid(grid, isDark);
    button.setAttribute('aria-pressed', String(isDark));
    button.hidden = forced.matches;
  };
  button.addEventListener('click', () => {
    const next: Colours = inView() === 'dark' ? 'light' : 'dark';
    keep(next === systems() ? undefined : next);
    choosePageColours();
  });
  forced.addEventListener('change', choosePageColours);
  watchTheme(show);
  show();
}
