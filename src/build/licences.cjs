/**
 * `npm run licences` counts the licences of what is built into dist/, of what is installed to be built in, and of what we
 * develop with. Ends with 1 where something that reaches users has a licence that asks for more than its text.
 */
const fs = require('node:fs');
const path = require('node:path');
const { isPermissive, listedIn, packageIn } = require('./licence-texts.cjs');

const ROOT = path.resolve(__dirname, '../..');
const BUILT = ['dist', 'dist/workbench', 'dist/command'].map((folder) =>
  path.join(ROOT, folder, 'licences.txt'),
);

const byName = (packages) => [
  ...new Map(packages.map((one) => [`${one.name} ${one.version}`, one])).values(),
];

/** The packages of the lock file; of one that is not installed here it has the licence as well. */
function locked() {
  const { packages } = JSON.parse(fs.readFileSync(path.join(ROOT, 'package-lock.json'), 'utf8'));
  return Object.entries(packages).flatMap(([place, { version, license, dev = false }]) => {
    if (place === '') return [];
    const name = place.split('node_modules/').at(-1);
    return [{ name, version, dev, licence: license ?? packageIn(path.join(ROOT, place)).licence }];
  });
}

function say(heading, packages) {
  const counts = new Map();
  for (const { licence } of packages) counts.set(licence, (counts.get(licence) ?? 0) + 1);
  console.log(`${heading}: ${packages.length} packages`);
  for (const [licence, count] of [...counts].sort(([, a], [, b]) => b - a))
    console.log(`${String(count).padStart(5)}  ${licence}`);
}

function main() {
  const missing = BUILT.filter((file) => !fs.existsSync(file));
  if (missing.length > 0) {
    console.error('Some of dist/ is not built: run npm run build first.');
    return false;
  }
  const built = byName(BUILT.flatMap((file) => listedIn(fs.readFileSync(file, 'utf8'))));
  const all = locked();
  const toRun = byName(all.filter(({ dev }) => !dev));
  say('Built into dist/', built);
  say('Installed to be built in', toRun);
  say('To develop with', byName(all.filter(({ dev }) => dev)));
  const others = byName([...built, ...toRun]).filter(({ licence }) => !isPermissive(licence));
  for (const { name, version, licence } of others)
    console.error(`${name} ${version} has the licence ${licence}: look at it before it is given to anybody.`);
  return others.length === 0;
}

if (!main()) process.exitCode = 1;
