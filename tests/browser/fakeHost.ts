import type { CellRows } from '../../src/explain/explain';
import type { Outcome, PaneHost, SelectedCell } from '../../src/pane/host';
import { mountPane } from '../../src/pane/pane';

/** What the tests see of the spreadsheet that the pane believes to stand beside. */
export interface Fake {
  readonly inserted: [template: string, filled: boolean][];
  readonly put: string[];
  /** Answers the oldest wish that waits. */
  answer(outcome: Outcome): void;
  fail(): void;
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
let selected: SelectedCell | undefined;
let tellCell: ((cell: SelectedCell | undefined) => void) | undefined;

const able: PaneHost = {
  insertSheet(template, filled) {
    window.fake.inserted.push([template, filled]);
    return wish();
  },
  newJob() {
    return wish();
  },
  putFormula(formula) {
    window.fake.put.push(formula);
    return wish();
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
const { dispose } = mountPane(root, location.search === '?unable' ? unable : able);
window.fake = {
  inserted: [],
  put: [],
  answer: (outcome) => waiting.shift()?.resolve(outcome),
  fail: () => waiting.shift()?.reject(new Error('a fault of the host')),
  select(cell) {
    selected = cell && { ...cell, look: (reference) => cell.known?.[reference] };
    tellCell?.(selected);
  },
  get cellWatched() {
    return tellCell !== undefined;
  },
  dispose,
};
