import { median } from './browser.mjs';
import { heap, inWorkbench, longestBlock, ready, watchBlocks } from './page.mjs';

/**
 * A sheet of ten thousand rows in the workbench, each with a function of ours that looks at one common cell, and the same
 * as one formula over the column: how long until all answers are on the screen after that cell has changed, how long the
 * page was blocked at most meanwhile, and what its objects take.
 */
const ROWS = 10_000;
const RUNS = 5;
const COMMON = 'D1';
const reading = (row) => 4 + (row % 997) / 17;

/** Column A readings, column B what is asked of them; cells as the workbook keeps them. */
const SHEETS = {
  'as cells': (row) => ({ f: `=SWEEP.STOPDIFF($D$1,A${row + 1})` }),
  'as one formula': (row) => (row === 0 ? { f: `=SWEEP.STOPDIFF(D1,A1:A${ROWS})` } : undefined),
};

const cellsOf = (formula) =>
  Object.fromEntries(
    Array.from({ length: ROWS }, (_, row) => {
      const asked = formula(row);
      return [
        row,
        {
          0: { v: reading(row), t: 2 },
          ...(asked && { 1: asked }),
          ...(row === 0 && { 3: { v: 45, t: 2 } }),
        },
      ];
    }),
  );

/** Puts the sheet in the place of the workbook that the browser keeps, as one of an earlier visit. */
async function keep(page, cells) {
  await page.evaluate(async (cellData) => {
    const settled = (request) =>
      new Promise((resolve, reject) => {
        request.addEventListener('success', () => resolve(request.result));
        request.addEventListener('error', () => reject(request.error));
      });
    const store = (await settled(indexedDB.open('sweeptable')))
      .transaction('workbooks', 'readwrite')
      .objectStore('workbooks');
    const sheet = { id: 's', name: 'Readings', rowCount: 10_100, columnCount: 26, cellData };
    const snapshot = { id: 'w', name: '', appVersion: '', locale: 'enUS', styles: {}, resources: [] };
    const record = { ...snapshot, sheetOrder: ['s'], sheets: { s: sheet } };
    await settled(store.put({ format: 1, saved: Date.now(), snapshot: record }, 'now'));
  }, cells);
  await page.reload();
  await ready(page);
}

/** Types another value into the common cell; milliseconds until all answers are drawn, and the longest block meanwhile. */
async function change(page, value) {
  const { x, y } = await page.evaluate((cell) => window.sweeptable.place(cell), COMMON);
  await page.mouse.click(x, y);
  await page.keyboard.type(String(value));
  await watchBlocks(page);
  await page.evaluate(() => {
    const started = performance.now();
    window.answered = window.sweeptable.calculated().then(async () => {
      await new Promise(requestAnimationFrame);
      await new Promise(requestAnimationFrame);
      return performance.now() - started;
    });
  });
  await page.keyboard.press('Enter');
  return { took: await page.evaluate(() => window.answered), block: await longestBlock(page) };
}

await inWorkbench(async (open) => {
  const page = await open();
  for (const [how, formula] of Object.entries(SHEETS)) {
    await keep(page, cellsOf(formula));
    const runs = [];
    for (let i = 0; i < RUNS; i++) {
      const first = 2 ** (i + 1); // a whole stop, which is its own mark
      runs.push(await change(page, first));
      const last = await page.evaluate((cell) => window.sweeptable.cell(cell).value, `B${ROWS}`);
      const wanted = 2 * Math.log2(reading(ROWS - 1) / first);
      if (!(Math.abs(last - wanted) < 1e-9)) throw new Error(`${last} stops instead of ${wanted}.`);
    }
    console.log(
      JSON.stringify({
        measure: `workbench: ${ROWS} rows ${how}, recalculated after one change`,
        unit: 'ms',
        median: Math.round(median(runs.map(({ took }) => took))),
        'longest block (goal 200)': Math.round(Math.max(...runs.map(({ block }) => block))),
        'heap of the page, MB': await heap(page),
      }),
    );
  }
});
