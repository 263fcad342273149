/** Makes the pictures of the README and the gallery from the real workbench, in a browser. */
const fs = require('node:fs');
const path = require('node:path');
const launchBrowser = require('./launch-browser.cjs');
const serve = require('./serve.cjs');
const { DIST, buildIfNeeded } = require('./start.cjs');
const { allTemplates } = require('./templates.cjs');
const loadTs = require('./load-ts.cjs');

const FOLDER = path.resolve(__dirname, '../../templates/pictures');
const WINDOW = { width: 1400, height: 820 };
/** What the window needs beside the cells: bar, tools and sheet tabs above and below them; row numbers and the pane. */
const AROUND = { width: 430, height: 190 };
const ROW = 25;
/** The top of a long sheet is enough to know it by; the rest would only make the picture small to read. */
const MOST_ROWS = 60;

/** A window in which the whole of a template's sheet is in sight. */
function windowFor(template) {
  const { planAlone } = loadTs('sheets/makePlan.ts');
  const { columnPixels } = loadTs('book/widthsAndHeights.ts');
  const { widths, page, cells } = planAlone(template, true).sheet;
  const last = Math.max(...cells.map(({ row }) => row)) + 2;
  // what stands beside the page, such as how an answer comes about, would make the rest too small to be read
  const printed = Object.entries(widths).filter(
    ([column]) => Number(column) < page.area.column + page.area.columns,
  );
  const width = printed.reduce((sum, [, characters]) => sum + columnPixels(characters), 0);
  return {
    width: Math.max(WINDOW.width, width + AROUND.width),
    height: Math.max(
      WINDOW.height,
      Math.min(Math.max(last, page.area.rows), MOST_ROWS) * ROW + AROUND.height,
    ),
  };
}

async function opened(browser, url, viewport) {
  const page = await browser.newPage({ viewport, locale: 'en-US' });
  await page.goto(url);
  await page.waitForFunction(() => document.documentElement.dataset.pane === 'true');
  return page;
}

const closeHint = (page) => page.getByRole('button', { name: 'Close this hint' }).click();

/** Long enough for answers, charts and the marks in the grid to be drawn. */
const settle = (page) => page.waitForTimeout(1500);

const insert = (page, name) =>
  page.getByRole('button', { name: new RegExp(`^Insert(?: with the demo job)?\\W+${name}$`) }).click();

async function workbench(browser, url) {
  const page = await opened(browser, url, WINDOW);
  await closeHint(page);
  await insert(page, 'Lights on set');
  await settle(page);
  const { x, y } = await page.evaluate(() => window.sweeptable.place('J17'));
  await page.mouse.click(x, y);
  await page.keyboard.type('=SWEEP.POPS');
  await settle(page);
  await page.screenshot({ path: path.join(FOLDER, 'workbench.png') });
  await page.close();
}

/** Sheets that look up in others are shown beside them, as one job. */
const PARTNERS = { 'pops-plan': ['Heads'], 'set-card': ['Heads', 'Pops plan'] };

async function gallery(browser, url, template) {
  const page = await opened(browser, url, windowFor(template));
  await closeHint(page);
  for (const partner of PARTNERS[template.id] ?? []) {
    await insert(page, partner);
    await settle(page);
  }
  const there = await page.evaluate(() => window.sweeptable.sheets());
  if (!there.includes(template.name)) await insert(page, template.name);
  await page.mouse.move(0, 0);
  await settle(page);
  await page.screenshot({ path: path.join(FOLDER, `${template.id}.png`) });
  await page.close();
}

async function pictures() {
  await buildIfNeeded();
  fs.mkdirSync(FOLDER, { recursive: true });
  const server = await serve(DIST);
  const browser = await launchBrowser();
  try {
    await workbench(browser, server.url);
    for (const template of allTemplates()) await gallery(browser, server.url, template);
  } finally {
    await browser.close();
    await server.close();
  }
  console.log(`The pictures are in ${path.relative(process.cwd(), FOLDER)}.`);
}

pictures().catch((error) => {
  console.error(error.message);
  process.exitCode = 1;
});
