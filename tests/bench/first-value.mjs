import { createRequire } from 'node:module';
import { freshBrowser, median } from './browser.mjs';

const require = createRequire(import.meta.url);
const serve = require('../../src/build/serve.cjs');
const { DIST, buildIfNeeded } = require('../../src/build/start.cjs');

const LOADS = 5;

/** Milliseconds from asking for the page to the first answers on it, in a browser that has never seen it. */
async function coldLoad(url) {
  const browser = await freshBrowser();
  try {
    const page = await browser.newPage({ viewport: { width: 1400, height: 820 }, locale: 'en-US' });
    await page.addInitScript(() => {
      new MutationObserver((_, observer) => {
        if (document.documentElement?.dataset.ready !== 'true') return;
        observer.disconnect();
        window.readyAfter = performance.now();
      }).observe(document, { attributes: true, subtree: true, attributeFilter: ['data-ready'] });
    });
    await page.goto(url);
    return await (await page.waitForFunction(() => window.readyAfter)).jsonValue();
  } finally {
    await browser.close();
  }
}

await buildIfNeeded();
const server = await serve(DIST);
const times = [];
for (let i = 0; i < LOADS; i++) times.push(Math.round(await coldLoad(server.url)));
await server.close();
console.log(
  JSON.stringify({
    measure: 'workbench: cold load to first answers',
    unit: 'ms',
    median: median(times),
    times,
  }),
);
