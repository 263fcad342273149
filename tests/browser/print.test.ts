import { expect, it } from 'vitest';
import { eachItsWorkbook } from './onePage';
import type { Workbench } from './workbench';

let sheet: Workbench;
eachItsWorkbook((fresh) => {
  sheet = fresh;
});

/** What the browser tells a page around printing. */
const tell = (event: 'beforeprint' | 'afterprint') =>
  sheet.page.evaluate((name) => {
    dispatchEvent(new Event(name));
  }, event);

it('prints the sheet in view with its chart, on pages, and nothing around it', async () => {
  const paper = sheet.page.locator('.paper');
  await tell('beforeprint');
  await sheet.page.emulateMedia({ media: 'print' });
  const text = await paper.innerText();
  for (const cell of ['A5', 'B5', 'B6', 'B20', 'A22']) expect(text).toContain((await sheet.texts(cell))[0]);
  expect(text).toMatch(/Pops build\s+Page 1 of \d/);
  expect(await sheet.page.locator('#grid, #commands, #pane').filter({ visible: true }).count()).toBe(0);

  // the one chart of the sheet, over as many pixels as its cells are, and drawn
  const chart = paper.locator('figure');
  expect(await chart.count()).toBe(1);
  const inked = await chart.locator('canvas').evaluate((canvas: HTMLCanvasElement) => {
    const { data = [] } = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height) ?? {};
    return data.filter((byte, i) => i % 4 === 3 && byte > 0).length;
  });
  expect(inked).toBeGreaterThan(1000);
  const [inner, outer] = [
    await chart.boundingBox(),
    await paper.locator('section', { has: sheet.page.locator('figure') }).boundingBox(),
  ];
  if (!inner || !outer) throw new Error('The chart is on no page.');
  expect(inner.width).toBeGreaterThan(100);
  const ends = [
    inner.x + inner.width - outer.x - outer.width,
    inner.y + inner.height - outer.y - outer.height,
  ];
  for (const beyond of ends) expect(beyond).toBeLessThan(1);

  await sheet.page.emulateMedia({ media: null });
  await tell('afterprint');
  expect(await paper.count()).toBe(0);
});

it('prints all sheets, each on its own pages', async () => {
  await sheet.page.evaluate(() => {
    window.print = () => {};
  });
  await sheet.insert('Heads');
  const before = await sheet.page.title();
  await sheet.command('Print all');
  await tell('beforeprint');
  const pages = sheet.page.locator('.paper section');
  const told = await pages.evaluateAll((all) =>
    all.map((page) => `${page.firstElementChild?.textContent} ${getComputedStyle(page).page}`),
  );
  expect(told.filter((page) => page.includes('Page 1 of'))).toEqual([
    expect.stringMatching(/^Pops buildPage 1 of \d upright$/),
    expect.stringMatching(/^HeadsPage 1 of \d lengthwise$/),
  ]);
  expect(await sheet.page.locator('.paper').innerText()).toContain('What do we own, and what can it do?');
  await tell('afterprint');
  expect(await sheet.page.title()).toBe(before);
  // the next time it is the sheet in view again
  await tell('beforeprint');
  expect(await pages.first().innerText()).toMatch(/^Heads/);
  await tell('afterprint');
});
