import { createRequire } from 'node:module';
import { freshBrowser } from './browser.mjs';

const require = createRequire(import.meta.url);
const serve = require('../../src/build/serve.cjs');
const { DIST, buildIfNeeded } = require('../../src/build/start.cjs');

/** Serves the built workbench; `measure` opens it, each time as a newcomer, as often as it needs. */
export async function inWorkbench(measure) {
  await buildIfNeeded();
  const [server, browser] = await Promise.all([serve(DIST), freshBrowser()]);
  async function open() {
    const page = await browser.newPage({ viewport: { width: 1400, height: 820 }, locale: 'en-US' });
    await page.goto(server.url);
    await ready(page);
    return page;
  }
  try {
    await measure(open);
  } finally {
    await browser.close();
    await server.close();
  }
}

export const ready = (page) =>
  page.waitForFunction(() => document.documentElement.dataset.pane === 'true', undefined, {
    timeout: 120_000,
  });

/** Megabytes that the page's own objects take after a clean-up, without those of the worker. */
export async function heap(page) {
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  await session.detach();
  return Math.round(usedSize / 1e5) / 10;
}

/** From here on the page notes how long it takes no notice of its user. */
export const watchBlocks = (page) =>
  page.evaluate(() => {
    window.blocks = [];
    window.watching = new PerformanceObserver((list) => window.blocks.push(...list.getEntries()));
    window.watching.observe({ type: 'longtask' });
  });

/** Long enough for the workbook to be stored as well. */
const AFTERWARDS = 1000;

/** Milliseconds of the longest of these, the storing of the workbook included; 0 where none was longer than 50. */
export const longestBlock = (page) =>
  page.evaluate(async (wait) => {
    await new Promise((resolve) => setTimeout(resolve, wait));
    window.watching.disconnect();
    return Math.round(Math.max(0, ...window.blocks.map(({ duration }) => duration)));
  }, AFTERWARDS);
