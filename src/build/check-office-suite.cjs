/**
 * `npm run check:office-suite` has LibreOffice calculate our sheets, and compares cell by cell. It does not know our
 * functions, so in the copy that it gets their cells hold their values; every other formula is without one. It prints them
 * too, and the words on its pages are compared with those of the workbench. With `--pages` the sheets as they are go onto pages in
 * dist/office-suite/, for a person to look at.
 */
const { execFile, spawnSync } = require('node:child_process');
const fs = require('node:fs');
const os = require('node:os');
const path = require('node:path');
const { pathToFileURL } = require('node:url');
const { promisify } = require('node:util');
const { Workbook } = require('@cj-tech-master/excelts');
const { installChartSupport } = require('@cj-tech-master/excelts/chart');
const { comparePaper } = require('./paper-beside-suite.cjs');
const { allTemplates } = require('./templates.cjs');

const ROOT = path.resolve(__dirname, '../..');
const PAGES = path.join(ROOT, 'dist/office-suite');
const WITH_PAGES = process.argv.includes('--pages');
/** Reads the words of printed pages. */
const READER = 'pdftotext';
const COMMAND = 'src/build/command.cjs';
const OURS = '_xldudf_';
const CLOSE = 1e-9;
const NOTHING = 1e-12;
const MOST_OUTPUT = 1e8;

/** Runs a program; throws with what it said where it failed. */
async function run(program, given) {
  try {
    return (await promisify(execFile)(program, given, { cwd: ROOT, maxBuffer: MOST_OUTPUT })).stdout;
  } catch (cause) {
    const { message, stdout = '', stderr = '' } = cause;
    throw new Error(`${program} ${given.join(' ')} failed: ${stdout + stderr || message}`, { cause });
  }
}

/** Does something with each of some, with as many at a time as the computer has processors. */
async function withEach(all, work) {
  const left = [...all];
  const next = async () => {
    for (let one = left.shift(); one !== undefined; one = left.shift()) await work(one);
  };
  await Promise.all(Array.from({ length: os.availableParallelism() }, next));
}

const isThere = (program) => !spawnSync(program, ['--help'], { stdio: 'ignore' }).error;

/** LibreOffice with settings of its own, so that one that is open does not answer instead. */
const convert = (kind, folder, files, work) =>
  run('soffice', [
    `-env:UserInstallation=${pathToFileURL(path.join(work, 'settings'))}`,
    '--headless',
    '--convert-to',
    kind,
    '--outdir',
    folder,
    ...files,
  ]);

async function open(file) {
  const book = new Workbook();
  await book.xlsx.load(fs.readFileSync(file));
  return book;
}

function* formulas(book) {
  for (const sheet of book.worksheets)
    for (let r = 1; r <= sheet.rowCount; r++)
      for (let c = 1; c <= sheet.columnCount; c++) {
        const cell = sheet.getCell(r, c);
        if (cell.formula) yield { cell, at: `${sheet.name}!${cell.address}` };
      }
}

/** What every formula gives, by its cell. */
const resultsOf = (book) => new Map([...formulas(book)].map(({ cell, at }) => [at, cell.result ?? '']));

/** A copy that leaves LibreOffice to calculate all but our functions. */
async function writeCopy(from, to) {
  const book = await open(from);
  let left = 0;
  for (const { cell } of formulas(book)) {
    if (cell.formula.includes(OURS)) cell.value = cell.result;
    else {
      cell.value = { formula: cell.formula };
      left++;
    }
  }
  await book.xlsx.writeFile(to);
  return left;
}

const told = (value) => (typeof value === 'object' ? (value.error ?? String(value)) : value);

function agree(one, other) {
  const [a, b] = [told(one), told(other)];
  if (typeof a !== 'number' || typeof b !== 'number') return a === b;
  return Math.abs(a - b) <= Math.max(NOTHING, CLOSE * Math.max(Math.abs(a), Math.abs(b)));
}

/** A sentence for each cell that LibreOffice gives another value. */
const differences = (ours, theirs) =>
  [...theirs].flatMap(([at, value]) =>
    agree(ours.get(at), value)
      ? []
      : [`${at}: ours ${JSON.stringify(ours.get(at))}, LibreOffice's ${JSON.stringify(value)}`],
  );

/** Makes one of our numbers wrong, to see that the comparison finds it and nothing else. */
function comparisonWorks(ours, theirs) {
  const seeded = [...theirs.keys()].find((at) => typeof ours.get(at) === 'number' && ours.get(at) !== 0);
  if (seeded === undefined) return false;
  const wrong = new Map(ours).set(seeded, ours.get(seeded) * (1 + 1e-6));
  const found = differences(wrong, theirs);
  return (
    found.length === differences(ours, theirs).length + 1 &&
    found.some((line) => line.startsWith(`${seeded}:`))
  );
}

async function makePages(files, work) {
  fs.rmSync(PAGES, { recursive: true, force: true });
  fs.mkdirSync(PAGES, { recursive: true });
  await convert('pdf', PAGES, files, work);
  for (const file of files) {
    const base = path.join(PAGES, path.basename(file, '.xlsx'));
    await run('pdftoppm', ['-r', '90', '-png', `${base}.pdf`, base]);
  }
}

async function check(work) {
  const [copies, back] = ['copies', 'back'].map((name) => path.join(work, name));
  fs.mkdirSync(copies);
  const templates = allTemplates();
  const sheets = templates.flatMap(({ id }) => [
    { name: id, given: [id] },
    { name: `${id}-empty`, given: [id, '--empty'] },
  ]);
  // builds the command line once, where it has to be
  await run(process.execPath, [COMMAND, 'sheet', '--list']);
  await withEach(sheets, async (sheet) => {
    sheet.file = path.join(work, `${sheet.name}.xlsx`);
    sheet.copy = path.join(copies, `${sheet.name}.xlsx`);
    await run(process.execPath, [COMMAND, 'sheet', sheet.given[0], sheet.file, ...sheet.given.slice(1)]);
    sheet.left = await writeCopy(sheet.file, sheet.copy);
  });
  await convert(
    'xlsx',
    back,
    sheets.map(({ copy }) => copy),
    work,
  );

  let isGood = true;
  for (const { name, file, left, given } of sheets) {
    const ours = resultsOf(await open(file));
    const theirs = resultsOf(await open(path.join(back, `${name}.xlsx`)));
    const lines = differences(ours, theirs);
    if (theirs.size !== left)
      lines.push(`LibreOffice has ${theirs.size} formulas where it was given ${left}`);
    if (given.length === 1 && !comparisonWorks(ours, theirs))
      lines.push('the comparison does not find a wrong value');
    for (const line of lines) console.error(`${name}: ${line}`);
    if (lines.length > 0) isGood = false;
    else console.log(`${name}: LibreOffice gives the same in all ${left} cells that it calculates.`);
  }
  if (isThere(READER)) {
    const files = sheets.map(({ name, file }) => [name, file]);
    const { lines, count } = await comparePaper({ templates, files, work, run, convert });
    for (const line of lines) console.error(line);
    if (lines.length > 0) isGood = false;
    else console.log(`Workbench and LibreOffice print the same words on the same ${count} pages.`);
  } else {
    console.error(
      `The printed pages were not compared: ${READER} cannot be run here. Install Poppler's tools.`,
    );
    isGood = false;
  }
  if (WITH_PAGES) {
    await makePages(
      sheets.filter(({ given }) => given.length === 1).map(({ file }) => file),
      work,
    );
    console.log(`Pages to look at are in ${path.relative(ROOT, PAGES)}.`);
  }
  return isGood;
}

async function main() {
  installChartSupport();
  const missing = ['soffice', ...(WITH_PAGES ? ['pdftoppm'] : [])].filter((program) => !isThere(program));
  if (missing.length > 0) {
    console.error(
      `Nothing was checked: ${missing.join(' and ')} cannot be run here. Install LibreOffice Calc and Poppler's tools.`,
    );
    return false;
  }
  const work = fs.mkdtempSync(path.join(os.tmpdir(), 'sweeptable-'));
  try {
    return await check(work);
  } finally {
    fs.rmSync(work, { recursive: true });
  }
}

main().then((isGood) => {
  if (!isGood) process.exitCode = 1;
});
