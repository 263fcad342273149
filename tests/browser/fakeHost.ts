import type { CellRows } from '../../src/explain/explain';
import { chartsView } from '../../src/pane/chartsView';
import type { LiveChart, Outcome, PaneHost, SelectedCell } from '../../src/pane/host';
import { mountPane } from '../../src/pane/pane';

/** What the tests see of the spreadsheet that the pane believes to stand beside. */
export interface Fake {
  readonly inserted: [template: string, filled: boolean][];
  readonly put: string[];
  /** Whether anybody watches the charts. */
  watched: boolean;
  /** Answers the oldest wish that waits. */
  answer(outcome: Outcome): void;
  fail(): void;
  charts(charts: readonly LiveChart[]): void;
  /** Selects a cell; `known` holds the values of the references that the spreadsheet knows. */
  select(cell?: Omit<SelectedCell, 'look'> & { readonly known?: Readonly<Record<string, CellRows>> }): void;
  /** Whether anybody watches the selected cell. */
  readonly cellWatched: boolean;
  dispose(): void;
}

declare global {
  interface Window {
    fake: Fake;
  }
}

type Waiting = { resolve: (outcome: Outcome) => void; reject: (error: Error) => void };

const waiting: Waiting[] = [];
const wish = (): Promise<Outcome> =>
  new Promise((resolve, reject) => {
    waiting.push({ resolve, reject });
  });
let charts: readonly LiveChart[] = [];
let selected: SelectedCell | undefined;
let tellCell: ((cell: SelectedCell | undefined) => void) | undefined;
let tell: ((charts: readonly LiveChart[]) => void) | undefined;

const able: PaneHost = {
  insertSheet(template, filled) {
    window.fake.inserted.push([template, filled]);
    return wish();
  },
  putFormula(formula) {
    window.fake.put.push(formula);
    return wish();
  },
  watchCharts(listener) {
    tell = listener;
    window.fake.watched = true;
    listener(charts);
    return () => {
      tell = undefined;
      window.fake.watched = false;
    };
  },
  watchCell(listener) {
    tellCell = listener;
    listener(selected);
    return () => {
      tellCell = undefined;
    };
  },
};
const unable: PaneHost = { missing: 'Open this page from Excel to insert sheets.' };

const root = document.getElementById('pane') as HTMLElement;
const { dispose } = mountPane(root, location.search === '?unable' ? unable : able, chartsView);
window.fake = {
  inserted: [],
  put: [],
  watched: false,
  answer: (outcome) => waiting.shift()?.resolve(outcome),
  fail: () => waiting.shift()?.reject(new Error('a fault of the host')),
  charts(now) {
    charts = now;
    tell?.(now);
  },
  select(cell) {
    selected = cell && { ...cell, look: (reference) => cell.known?.[reference] };
    tellCell?.(selected);
  },
  get cellWatched() {
    return tellCell !== undefined;
  },
  dispose,
};
