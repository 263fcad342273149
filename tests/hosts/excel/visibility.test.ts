import { afterEach, describe, expect, test, vi } from 'vitest';
import { keepToOfficeTheme } from '../../../src/hosts/excel/officeTheme';
import { whileVisible } from '../../../src/hosts/excel/visibility';

type Handler = (message: { visibilityMode: string }) => void;

/** An Office that tells when its pane is opened and closed. */
function office() {
  const handlers = new Set<Handler>();
  const theme = { bodyBackgroundColor: '#ffffff' };
  vi.stubGlobal('Office', {
    VisibilityMode: { hidden: 'Hidden', taskpane: 'Taskpane' },
    context: { officeTheme: theme },
    addin: {
      onVisibilityModeChanged(handler: Handler) {
        handlers.add(handler);
        return Promise.resolve(() => Promise.resolve(void handlers.delete(handler)));
      },
    },
  });
  const become = (visibilityMode: string): void => handlers.forEach((tell) => tell({ visibilityMode }));
  return { handlers, theme, close: () => become('Hidden'), open: () => become('Taskpane') };
}
const watcher = () => {
  const counts = { begun: 0, stopped: 0 };
  const watch = whileVisible(() => {
    counts.begun++;
    return () => void counts.stopped++;
  });
  return { counts, stop: watch(() => {}) };
};
const settled = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

afterEach(() => void vi.unstubAllGlobals());

describe('a watch', () => {
  test('rests while the pane is closed, and goes on when it is open again', () => {
    const on = office();
    const { counts } = watcher();
    expect(counts).toEqual({ begun: 1, stopped: 0 });
    on.close();
    expect(counts).toEqual({ begun: 1, stopped: 1 });
    on.close();
    on.open();
    on.open();
    expect(counts).toEqual({ begun: 2, stopped: 1 });
  });
  test('that is over is over, open or closed, and nobody listens any more', async () => {
    const on = office();
    const { counts, stop } = watcher();
    stop();
    await settled();
    on.open();
    expect(counts).toEqual({ begun: 1, stopped: 1 });
    expect(on.handlers.size).toBe(0);
  });
  test('that is over while the pane is closed is stopped once', async () => {
    const on = office();
    const { counts, stop } = watcher();
    on.close();
    stop();
    await settled();
    on.open();
    expect(counts).toEqual({ begun: 1, stopped: 1 });
  });
  test('goes on where Excel does not tell', () => {
    vi.stubGlobal('Office', {});
    const { counts, stop } = watcher();
    stop();
    expect(counts).toEqual({ begun: 1, stopped: 1 });
  });
});

test('the theme is looked at again when the pane is opened', () => {
  const on = office();
  const documentElement = { dataset: {} as { theme?: string } };
  vi.stubGlobal('document', { documentElement });
  keepToOfficeTheme();
  expect(documentElement.dataset.theme).toBe('light');
  on.close();
  on.theme.bodyBackgroundColor = '#1f1f1f';
  on.open();
  expect(documentElement.dataset.theme).toBe('dark');
});
