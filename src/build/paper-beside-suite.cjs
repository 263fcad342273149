/**
 * The pages that the workbench prints of every sheet, beside those that LibreOffice prints of its file: as many pages, and the
 * same words on each. A part of `npm run check:office-suite`.
 */
const fs = require('node:fs');
const path = require('node:path');
const { ZipEditor } = require('@cj-tech-master/excelts/archive');
const launchBrowser = require('./launch-browser.cjs');
const loadTs = require('./load-ts.cjs');
const serve = require('./serve.cjs');
const { differences, missed, wordsIn } = require('./paper-words.cjs');
const { DIST, buildIfNeeded } = require('./start.cjs');

const PAPERS = ['A4', 'Letter'];
/** A busy computer takes its time until a page shows what it will: milliseconds. */
const PATIENCE = 120_000;
/** The sheet that a page begins with is called so, as its own name would be taken when it is inserted. */
const FIRST = 'First';
const FILLS = [
  { end: '', label: 'Insert with the demo job' },
  { end: '-empty', label: 'Insert empty' },
];

/** Names of the tables that a template looks up in. */
const asked = ({ blocks }) =>
  blocks.flatMap(({ fields = [], columns = [] }) =>
    [...fields, ...columns].flatMap(({ from }) => (from ? [from.table.toLowerCase()] : [])),
  );

/** Each before those that it would look up in: so all hold what their demo says, as in a file of their own. */
function askersFirst(templates) {
  const left = [...templates];
  return templates.map(() => {
    const next = left.findIndex((one) => {
      const tables = one.blocks.flatMap(({ kind, id }) => (kind === 'table' ? [id.toLowerCase()] : []));
      return !left.some((other) => other !== one && asked(other).some((table) => tables.includes(table)));
    });
    if (next < 0) throw new Error('Sheets look up in each other in a circle.');
    return left.splice(next, 1)[0];
  });
}

async function renameFirst(page) {
  // what comes late would take the focus away
  await settled(page);
  const tab = page.locator('[data-u-comp="slide-tab-item"]').first();
  await tab.dblclick();
  const name = tab.locator('[contenteditable="true"]');
  await name.fill(FIRST);
  await name.press('Enter');
  await page.waitForFunction((first) => window.sweeptable.sheets()[0] === first, FIRST);
}

async function insert(page, name, label) {
  const before = await page.evaluate(() => window.sweeptable.sheets().length);
  await page.getByRole('button', { name: new RegExp(`^(?:${label}|Insert)\\W+${name}$`) }).click();
  await page.waitForFunction((count) => window.sweeptable.sheets().length > count, before);
  await page.waitForFunction(() =>
    document.querySelector('.pane > .status')?.innerText.includes('is inserted'),
  );
}

/** What all sheets of the workbook would print now. */
async function textOfAll(page) {
  await askForAll(page);
  return page.evaluate(() => {
    dispatchEvent(new Event('beforeprint'));
    const { textContent } = document.querySelector('.paper');
    dispatchEvent(new Event('afterprint'));
    return textContent;
  });
}

/** Answers of sheets that came in one after the other do not stay away for so long, in milliseconds. */
const QUIET = 2000;

/** Waits until no more answers come. What the page promises is the next one, which never comes where all are there. */
const settled = (page) =>
  page.evaluate(async (quiet) => {
    const isAnswered = () =>
      Promise.race([
        window.sweeptable.calculated().then(() => true),
        new Promise((resolve) => setTimeout(resolve, quiet, false)),
      ]);
    while (await isAnswered());
  }, QUIET);

/** A cell beside all that the first sheet has. */
const SPARE = 'I5';

/** Presses keys, until the spare cell shows what is expected of them. */
async function untilSpareShows(page, value, ...keys) {
  for (const key of keys) await page.keyboard.press(key);
  await page.waitForFunction(([at, shown]) => window.sweeptable.cell(at).value === shown, [SPARE, value]);
}

/**
 * Waits until all answers are there, however long a busy computer takes for them: a formula that is typed now is answered together
 * with all that still waits, or behind it.
 */
async function allAnswered(page) {
  await page.locator('[data-u-comp="slide-tab-item"]').first().click();
  await page.waitForFunction((first) => window.sweeptable.inView() === first, FIRST);
  const { x, y } = await page.evaluate((at) => window.sweeptable.place(at), SPARE);
  await page.mouse.click(x, y);
  await untilSpareShows(page, 2, '=', '1', '+', '1', 'Enter');
  // a second click so soon would open the cell
  await untilSpareShows(page, null, 'ArrowUp', 'Delete');
  await settled(page);
}

async function askForAll(page) {
  await page.getByRole('button', { name: 'Print all' }).click();
}

/** Prints all sheets of the workbook in view. */
async function printAll(page, format, file) {
  await askForAll(page);
  await page.pdf({ path: file, format, preferCSSPageSize: true, printBackground: true });
}

/** By how much letters are wider here than what sheets are made for: the print narrows them. From then on the page prints nothing itself. */
function narrowedBy() {
  window.print = () => {};
  dispatchEvent(new Event('beforeprint'));
  const { transform } = document.querySelector('.paper .cells').style;
  dispatchEvent(new Event('afterprint'));
  return 1 / Number(/scaleX\((.*)\)/.exec(transform)[1]);
}

/**
 * Letters of a text that no font here has, so that nothing is printed in their place: the browser that npm brings has one font. They
 * look like a code that stands for no letter.
 */
function lettersWithoutFont(text) {
  const [size, none] = [40, '\u0378'];
  const canvas = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
  const drawn = (letter) => {
    canvas.font = `${size / 2}px Arial, sans-serif`;
    canvas.clearRect(0, 0, size, size);
    canvas.fillText(letter, 0, size / 2);
    return canvas.getImageData(0, 0, size, size).data.join();
  };
  return [...new Set(text)].filter((letter) => letter.trim() !== '' && drawn(letter) === drawn(none));
}

/** PDFs of all sheets in the order of their tabs, which is given too, by the end of the sheets' names and the paper. */
async function printedHere(templates, folder) {
  await buildIfNeeded();
  const server = await serve(DIST);
  const browser = await launchBrowser();
  const printed = [];
  let wider;
  let absent;
  try {
    for (const { end, label } of FILLS) {
      const page = await browser.newPage({ viewport: { width: 1560, height: 820 }, locale: 'en-US' });
      page.setDefaultTimeout(PATIENCE);
      await page.goto(server.url);
      await page.waitForFunction(() => document.documentElement.dataset.pane === 'true');
      await renameFirst(page);
      await page.getByRole('tab', { name: 'Sheets' }).click();
      for (const { name } of askersFirst(templates)) await insert(page, name, label);
      await page.addStyleTag({ content: '.paper .plot canvas { visibility: hidden; }' });
      wider = await page.evaluate(narrowedBy);
      await allAnswered(page);
      const tabs = await page.evaluate(() => window.sweeptable.sheets());
      const before = await textOfAll(page);
      absent = await page.evaluate(lettersWithoutFont, before);
      for (const paper of PAPERS) {
        const file = path.join(folder, `all${end}-${paper}.pdf`);
        await printAll(page, paper, file);
        printed.push({ end, paper, file, tabs });
      }
      if ((await textOfAll(page)) !== before) throw new Error('What is printed still changed.');
      await page.close();
    }
  } finally {
    await browser.close();
    await server.close();
  }
  return { printed, wider, absent };
}

const STYLES = 'xl/styles.xml';
const isPart = (name, kind) => new RegExp(`^xl/${kind}/[a-z]+\\d+\\.xml$`).test(name);

/**
 * Where both prints may differ, and why: each draws the axes of a chart in its own way, so that neither prints the numbers along
 * them here; and the workbench names axes in what it draws, and says of a chart without numbers that it has none. So words of
 * a chart's titles, series and points may stand on one side alone. So may those of an answer that is longer than what prints right
 * of it: it is cut in both, and LibreOffice says so.
 */
const CUT = {
  'flash-trace': 'Nothing doubtful was found in this recording, but noise leaves durations from th 0.8 ...',
};
const NO_NUMBERS = 'No numbers yet: fill in the inputs of the sheet.';
const ofChart = (xml) => [
  NO_NUMBERS,
  ...[...xml.matchAll(/<(?:a:t|c:v)>([^<]*)<\/(?:a:t|c:v)>/g)].map(([, text]) => text),
];

/**
 * A copy for one kind of paper that shows what the file holds: LibreOffice knows none of our functions. Its charts have no
 * numbers along their axes, as the workbench draws these where no words are. Letters that are wider here than Arial are made
 * smaller, where the workbench narrows them.
 */
async function copyFor({ paper, wider }, file, copy, cut = '') {
  const { openPackage } = loadTs('xlsx/zip.ts');
  const { filePage } = loadTs('xlsx/page.ts');
  const bytes = fs.readFileSync(file);
  const parts = openPackage(bytes);
  const edited = await ZipEditor.open(bytes);
  const said = [cut];
  for (const name of parts.names) {
    if (!isPart(name, 'worksheets') && !isPart(name, 'charts') && name !== STYLES) continue;
    const xml = new TextDecoder().decode(await parts.read(name));
    if (name === STYLES) {
      edited.set(
        name,
        xml.replaceAll(/(<sz val=")([\d.]+)/g, (_, start, size) => start + size / wider),
      );
      continue;
    }
    if (isPart(name, 'charts')) {
      said.push(...ofChart(xml));
      edited.set(
        name,
        xml
          .replaceAll(/<c:tickLblPos[^>]*>/g, '')
          .replaceAll(/<c:minorTickMark[^>]*>/g, '$&<c:tickLblPos val="none"/>'),
      );
      continue;
    }
    const landscape = xml.includes('orientation="landscape"');
    const page = { landscape, header: '', titleRows: 0, breaks: [] };
    const { margins, paperSize } = filePage({ name: '', page, charts: [] }, paper).pageSetup;
    const sides = Object.entries(margins).map(([side, inches]) => `${side}="${inches}"`);
    edited.set(
      name,
      xml
        .replaceAll(/<f(?: [^>]*)?(?:\/>|>[^<]*<\/f>)/g, '')
        .replace(/<pageMargins[^>]*>/, `<pageMargins ${sides.join(' ')}/>`)
        .replace(/(<pageSetup[^>]*paperSize=")\d+/, `$1${paperSize}`),
    );
  }
  fs.writeFileSync(copy, await edited.bytes());
  return wordsIn(said.join(' '));
}

/** Texts of the pages of a PDF, without the letters that one side has no font for. */
async function pagesOf({ run, absent }, file) {
  const text = await run('pdftotext', ['-layout', file, '-']);
  return absent
    .reduce((left, letter) => left.replaceAll(letter, ' '), text)
    .split('\f')
    .slice(0, -1);
}

/** The pages of each sheet of a PDF that has all of them, one after the other. */
function bySheet(pages) {
  const sheets = [];
  for (const text of pages) {
    const number = /\sPage (\d+) of \d+\s*$/m.exec(text)?.[1];
    if (number === undefined) throw new Error(`A page has no number: ${text.slice(0, 200)}`);
    if (number === '1') sheets.push([]);
    sheets.at(-1).push(text);
  }
  return sheets;
}

/** What the sheets were printed as here, by the name of the PDF that LibreOffice makes of the file. */
async function pagesByName(printed, templates, reader) {
  const idOf = new Map(templates.map(({ id, name }) => [name, id]));
  const found = new Map();
  for (const { end, paper, file, tabs } of printed) {
    const sheets = bySheet(await pagesOf(reader, file));
    if (sheets.length !== tabs.length)
      throw new Error(`${tabs.length} sheets were printed as ${sheets.length}.`);
    for (const [i, pages] of sheets.entries()) found.set(`${idOf.get(tabs[i])}${end}-${paper}`, pages);
  }
  return found;
}

/**
 * Prints all sheets here and by LibreOffice.
 *
 * @param files - of each sheet, filled and empty, by its name: the template, with “-empty” behind it where it is.
 * @param convert - has LibreOffice make PDFs of files, in a folder.
 * @returns a sentence for each difference, and how many pages were compared.
 */
async function comparePaper({ templates, files, work, run, convert }) {
  const folder = path.join(work, 'paper');
  fs.mkdirSync(folder);
  const { printed, wider, absent } = await printedHere(templates, folder);
  const reader = { run, absent };
  const here = await pagesByName(printed, templates, reader);
  const copies = [];
  for (const [name, file] of files)
    for (const paper of PAPERS) {
      const copy = path.join(folder, `${name}-${paper}.xlsx`);
      copies.push({
        name: `${name}-${paper}`,
        copy,
        said: await copyFor({ paper, wider }, file, copy, CUT[name]),
      });
    }
  await convert('pdf', folder, copies.map(({ copy }) => copy), work); // prettier-ignore
  const lines = [];
  let count = 0;
  for (const { name, said } of copies) {
    const pages = here.get(name);
    if (!pages) throw new Error(`${name} was not printed.`);
    lines.push(...missed(pages, said).map((fault) => `${name}: the comparison does not find ${fault}`));
    const theirs = await pagesOf(reader, path.join(folder, `${name}.pdf`));
    lines.push(...differences(pages, theirs, said).map((line) => `${name}: ${line}`));
    count += pages.length;
  }
  return { lines, count };
}

module.exports = { comparePaper };
