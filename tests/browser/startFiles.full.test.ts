import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Request } from 'playwright-core';
import { expect, inject, it } from 'vitest';
import { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import { browser } from './browser';
import { inExcel } from './excelPanePage';

interface Figure {
  readonly files: readonly string[];
}
const FIGURES = JSON.parse(
  readFileSync(join(import.meta.dirname, '../bench/sizes.json'), 'utf8'),
) as Readonly<Record<string, Figure>>;
const filesOf = (what: string, folder = ''): string[] =>
  (FIGURES[what]?.files ?? []).map((name) => name.replace(folder, '')).sort();
const fileOf = (url: string): string => new URL(url).pathname.slice(1) || 'index.html';

it('what is counted as the pane at start is what Excel’s pane loads, and only the long sheets come later', () =>
  inExcel({ workbook: new FakeWorkbook('Sheet1') }, async (page) => {
    const loaded = async (): Promise<string[]> =>
      (await page.evaluate(() => performance.getEntriesByType('resource').map(({ name }) => name)))
        .map(fileOf)
        .filter((name) => /\.(?:js|css)$/.test(name) && !name.startsWith('office-js/'));
    await expect.poll(loaded).toContain('long-sheets.js');
    const wanted = [
      ...filesOf('the pane at start').filter((name) => name !== 'taskpane.html'),
      'long-sheets.js',
    ];
    expect((await loaded()).sort()).toEqual(wanted.sort());
  }));

it('what is counted as the workbench at start is what it loads until its first answers', async () => {
  const url = inject('workbench');
  const context = await (await browser()).newContext({ locale: 'en-US' });
  const requests: Request[] = [];
  context.on('request', (request) => requests.push(request));
  const page = await context.newPage();
  // An observer would hear of it only after what is asked for in the same breath.
  await page.addInitScript(() => {
    const { get } = Object.getOwnPropertyDescriptor(HTMLElement.prototype, 'dataset') as {
      get(): DOMStringMap;
    };
    Object.defineProperty(HTMLElement.prototype, 'dataset', {
      get(this: HTMLElement) {
        return new Proxy(get.call(this), {
          set(words, name, word: string) {
            if (name === 'ready') (window as { answered?: number }).answered ??= Date.now();
            return Reflect.set(words, name, word);
          },
        });
      },
    });
  });
  await page.goto(url);
  await page.waitForFunction(() => document.documentElement.dataset['pane'] === 'true');
  const answered = await page.evaluate(() => (window as { answered?: number }).answered ?? 0);
  const early = requests.filter((request) => request.timing().startTime < answered);
  const files = early.map((request) => request.url()).filter((asked) => asked.startsWith(url));
  const names = [...new Set(files.map(fileOf))];
  // it comes when the page has nothing else to do, which on a slow machine is before the first answers, and then the last
  if (names.at(-1) === 'long-sheets.js') names.pop();
  expect(names.sort()).toEqual(filesOf('the workbench at start', 'workbench/'));
  await context.close();
});
