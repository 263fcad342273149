import { createRequire } from 'node:module';
import { median } from './browser.mjs';
import { heap, inWorkbench, longestBlock, watchBlocks } from './page.mjs';

const require = createRequire(import.meta.url);
const { allTemplates } = require('../../src/build/templates.cjs');

const INSERTS = 5;

/** Milliseconds from the click in the pane until the new sheet is drawn with all its answers. */
const insert = (page, name) =>
  page.evaluate(async (template) => {
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

/** Every sheet in a fresh page, five times: how long it takes, and how long the page is blocked at most. */
await inWorkbench(async (open) => {
  for (const { id, name } of allTemplates()) {
    const [times, blocks, heaps] = [[], [], []];
    for (let i = 0; i < INSERTS; i++) {
      const page = await open();
      await watchBlocks(page);
      times.push(Math.round(await insert(page, name)));
      blocks.push(await longestBlock(page));
      heaps.push(await heap(page));
      await page.close();
    }
    console.log(
      JSON.stringify({
        measure: `workbench: insert ${id}, to its answers on screen`,
        unit: 'ms',
        median: median(times),
        times,
        'longest block (goal 200)': median(blocks),
        'heap of the page, MB': median(heaps),
      }),
    );
  }
});
