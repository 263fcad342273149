/**
 * Writes tests/published/SOURCES.md: `npm run sources`.
 * A test fails while that page is not what this would write.
 */
const fs = require('node:fs');
const path = require('node:path');
const loadTs = require('./load-ts.cjs');

const TESTS = path.resolve(__dirname, '../../tests');
const PAGE = path.join(TESTS, 'published/SOURCES.md');
const ORACLE_TEST = path.join(TESTS, 'exposure/oracle.test.ts');

const read = (file) => fs.readFileSync(file, 'utf8');
const filesIn = (folder, end) =>
  fs
    .readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(end))
    .map((entry) => path.join(entry.parentPath, entry.name))
    .sort();

/** Function and source of every published check, and of every check in code whose comment says `// source, FUNCTION: …`. */
function checksByDocument() {
  const listed = filesIn(path.resolve(__dirname, '../published'), '.json').flatMap((file) =>
    JSON.parse(read(file)).checks.map((check) => [check.function, check.source]),
  );
  const inCode = filesIn(path.join(TESTS, 'exposure'), '.test.ts').flatMap((file) =>
    [...read(file).matchAll(/\/\/ ([a-z0-9-]+), ([A-Z]+): /g)].map((found) => [found[2], found[1]]),
  );
  return [...listed, ...inCode];
}

/** Names of the functions of the library that the second calculation takes in. */
const calculatedTwice = () =>
  [...read(ORACLE_TEST).matchAll(/import \{([^}]+)\} from '[^']*\/src\/exposure\//g)].flatMap((found) =>
    found[1].split(',').map((name) => name.trim()),
  );

/** How often each function is checked against each source; the second calculation is one more of them. */
function countChecks(rows) {
  const counts = new Map();
  for (const [id, source] of checksByDocument()) {
    const key = `${id} ${source}`;
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  const twice = new Set(calculatedTwice());
  const byDocument = [...counts].map(([key, checks]) => {
    const [id, source] = key.split(' ');
    return { function: id, source, checks };
  });
  const drawn = rows
    .filter((row) => twice.has(row.run.name))
    .map((row) => ({ function: row.id, source: 'oracle', checks: 1 }));
  return [...byDocument, ...drawn];
}

module.exports = { PAGE, countChecks };

if (require.main === module) {
  const { CATALOGUE } = loadTs('catalogue/index.ts');
  const { SOURCES } = loadTs('catalogue/sources.ts');
  const { sourcesTable } = loadTs('build/sources-table.ts');
  fs.writeFileSync(PAGE, sourcesTable(CATALOGUE, SOURCES, countChecks(CATALOGUE)));
}
