import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Request } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { FakeWorkbook } from '../hosts/support/fake-workbook';
import { ExcelPanePages } from './excelPanePage';
import { type Site, site } from './workbench';

interface Figure {
  readonly files: readonly string[];
}
const FIGURES = JSON.parse(
  readFileSync(join(import.meta.dirname, '../bench/sizes.json'), 'utf8'),
) as Readonly<Record<string, Figure>>;
const filesOf = (what: string, folder = ''): string[] =>
  (FIGURES[what]?.files ?? []).map((name) => name.replace(folder, '')).sort();
const fileOf = (url: string): string => new URL(url).pathname.slice(1) || 'index.html';

let pages: ExcelPanePages;
let workbench: Site;
beforeAll(async () => {
  [pages, workbench] = await Promise.all([ExcelPanePages.start(), site()]);
}, 180_000);
afterAll(async () => {
  await pages?.close();
  await workbench?.close();
});

it('what is counted as the pane at start is what Excel’s pane loads, and only the long sheets come later', async () => {
  const [page, complaints] = await pages.open({ workbook: new FakeWorkbook('Sheet1') });
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
  expect(complaints).toEqual([]);
  await page.context().close();
});

it('what is counted as the workbench at start is what it loads until its first answers', async () => {
  const context = await workbench.browser.newContext({ locale: 'en-US' });
  const requests: Request[] = [];
  context.on('request', (request) => requests.push(request));
  const page = await context.newPage();
  await page.addInitScript(() => {
    new MutationObserver(() => {
      if (document.documentElement?.dataset['ready'] === 'true')
        (window as { answered?: number }).answered ??= Date.now();
    }).observe(document, { attributes: true, subtree: true, attributeFilter: ['data-ready'] });
  });
  await page.goto(workbench.url);
  await page.waitForFunction(() => document.documentElement.dataset['pane'] === 'true');
  const answered = await page.evaluate(() => (window as { answered?: number }).answered ?? 0);
  const early = requests.filter((request) => request.timing().startTime < answered);
  const files = early.map((request) => request.url()).filter((url) => url.startsWith(workbench.url));
  expect([...new Set(files.map(fileOf))].sort()).toEqual(filesOf('the workbench at start', 'workbench/'));
  await context.close();
});
