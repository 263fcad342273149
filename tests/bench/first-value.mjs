import { createRequire } from 'node:module';
import { existsSync } from 'node:fs';
import { chromium } from 'playwright-core';

const require = createRequire(import.meta.url);
const serve = require('../../src/build/serve.cjs');
const { DIST, buildIfNeeded } = require('../../src/build/start.cjs');

const LOADS = 5;
const ARGS = ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'];

async function browserPath() {
  const found = [process.env.CHROME_PATH, '/usr/bin/chromium', '/usr/bin/google-chrome'].find(
    (path) => path && existsSync(path),
  );
  if (found) return found;
  process.env.AWS_LAMBDA_JS_RUNTIME ??= 'nodejs20.x';
  return (await import('@sparticuz/chromium')).default.executablePath();
}

/** Milliseconds from asking for the page to the first answers on it, in a browser that has never seen it. */
async function coldLoad(executablePath, url) {
  const browser = await chromium.launch({ executablePath, args: ARGS });
  try {
    const page = await browser.newPage({ viewport: { width: 1400, height: 820 } });
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
const path = await browserPath();
const times = [];
for (let i = 0; i < LOADS; i++) times.push(Math.round(await coldLoad(path, server.url)));
await server.close();
const [median] = times.toSorted((a, b) => a - b).slice(Math.floor(LOADS / 2));
console.log(JSON.stringify({ measure: 'workbench: cold load to first answers', unit: 'ms', median, times }));
