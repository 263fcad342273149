import type { LiveChart, Outcome, PaneHost } from '../../src/pane/host';
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
};
const unable: PaneHost = { missing: 'Open this page from Excel to insert sheets.' };

const root = document.getElementById('pane') as HTMLElement;
const { dispose } = mountPane(root, location.search === '?unable' ? unable : able);
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
  dispose,
};
