import { createRequire } from 'node:module';
import { freshBrowser, median } from './browser.mjs';

const require = createRequire(import.meta.url);
const serve = require('../../src/build/serve.cjs');
const { DIST, buildIfNeeded } = require('../../src/build/start.cjs');
const { readTemplates } = require('../../src/build/templates.cjs');

const INSERTS = 5;

/** Milliseconds from the click in the pane until the new sheet is drawn with all its answers, in a fresh page. */
async function insert(browser, url, name) {
  const page = await browser.newPage({ viewport: { width: 1400, height: 820 }, locale: 'en-US' });
  try {
    await page.goto(url);
    await page.waitForFunction(() => document.documentElement.dataset.pane === 'true');
    return await page.evaluate(async (template) => {
      const button = [...document.querySelectorAll('#pane button')].find(
        ({ textContent }) => textContent.startsWith('Insert') && textContent.endsWith(template),
      );
      const count = window.sweeptable.sheets().length;
      const started = performance.now();
      const calculated = window.sweeptable.calculated();
      button.click();
      await calculated;
      await new Promise(requestAnimationFrame);
      await new Promise(requestAnimationFrame);
      if (window.sweeptable.sheets().length !== count + 1) throw new Error('Nothing was inserted.');
      return performance.now() - started;
    }, name);
  } finally {
    await page.close();
  }
}

await buildIfNeeded();
const server = await serve(DIST);
const browser = await freshBrowser();
for (const { id, name } of readTemplates()) {
  const times = [];
  for (let i = 0; i < INSERTS; i++) times.push(Math.round(await insert(browser, server.url, name)));
  console.log(
    JSON.stringify({
      measure: `workbench: insert ${id}, to its answers on screen`,
      unit: 'ms',
      median: median(times),
      times,
    }),
  );
}
await browser.close();
await server.close();
