import { median } from './browser.mjs';
import { inWorkbench } from './page.mjs';

/** Typed one after the other, so that the chart has to be drawn anew each time. */
const TYPED = ['f/16', 'f/22', 'f/16', 'f/22', 'f/16'];
const INPUT = 'B5';

/** Has the page note how long it is from the key that leaves a cell until the chart is drawn with its new numbers. */
const watchChart = (page) =>
  page.evaluate(() => {
    const chart = document.querySelector('.charts figure');
    window.followed = new Promise((resolve) => {
      let left = 0;
      addEventListener('keydown', () => (left = performance.now()), { capture: true, once: true });
      const seen = new MutationObserver(() => {
        seen.disconnect();
        requestAnimationFrame(() => requestAnimationFrame(() => resolve(performance.now() - left)));
      });
      seen.observe(chart.querySelector('.heard'), { childList: true, subtree: true, characterData: true });
    });
  });

/** A chart of the first sheet, after an input that it depends on: what is typed is calculated first. */
await inWorkbench(async (open) => {
  const page = await open();
  // its code comes late
  await page.locator('.charts figure').first().waitFor({ state: 'attached' });
  const times = [];
  for (const text of TYPED) {
    const { x, y } = await page.evaluate((at) => window.sweeptable.place(at), INPUT);
    await page.mouse.click(x, y);
    await page.keyboard.type(text);
    await watchChart(page);
    await page.keyboard.press('Enter');
    times.push(Math.round(await page.evaluate(() => window.followed)));
  }
  console.log(
    JSON.stringify({
      measure: 'workbench: a chart on its sheet, from Enter to drawn',
      unit: 'ms',
      median: median(times),
      times,
    }),
  );
});
