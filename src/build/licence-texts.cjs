const fs = require('node:fs');
const path = require('node:path');

/** Licences that ask for no more than their text beside a copy. */
const PERMISSIVE = new Set([
  'MIT',
  'MIT-0',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'ISC',
  '0BSD',
  'CC0-1.0',
]);

/** Whether a licence as packages write it, such as "(MIT OR GPL-2.0) AND ISC", can be met by permissive ones alone. */
function isPermissive(expression) {
  const words = expression.match(/[()]|[^\s()]+/g) ?? [];
  let isWhole = true;
  const next = (word) => words[0] === word && words.shift() === word;
  const one = () => {
    if (words.length === 0) isWhole = false;
    if (!next('(')) return PERMISSIVE.has(words.shift());
    const inside = either();
    return next(')') && inside;
  };
  const all = () => {
    let holds = one();
    while (next('AND')) holds = one() && holds;
    return holds;
  };
  const either = () => {
    let holds = all();
    while (next('OR')) holds = all() || holds;
    return holds;
  };
  const holds = either();
  return holds && isWhole && words.length === 0;
}

const LICENCE_FILE = /^(licen[cs]e|copying|notice)/i;
const UNKNOWN = 'unknown';

/** What a text without a name beside it is known by. */
const licenceOfText = (text) => (/^\s*Apache License\s+Version 2\.0,/.test(text) ? 'Apache-2.0' : UNKNOWN);

/** Name, version, licence and licence text of an installed package, by its folder. */
function packageIn(folder) {
  const { name, version, license, licenses, author } = JSON.parse(
    fs.readFileSync(path.join(folder, 'package.json'), 'utf8'),
  );
  const text = fs
    .readdirSync(folder)
    .filter((file) => LICENCE_FILE.test(file) && fs.statSync(path.join(folder, file)).isFile())
    .sort()
    .map((file) => fs.readFileSync(path.join(folder, file), 'utf8').replaceAll('\r\n', '\n').trim())
    .join('\n\n');
  return {
    name,
    version,
    licence:
      license?.type ?? license ?? licenses?.map(({ type }) => type).join(' OR ') ?? licenceOfText(text),
    author: author?.name ?? author ?? '',
    text,
  };
}

const RULE = '-'.repeat(72);
/** One line a package; `listedIn` reads them back. */
const line = ({ name, version, licence }) => `* ${name} ${version}: ${licence}`;
const LINE = /^\* (\S+) (\S+): (.+)$/gm;

/** The packages that a text of licences lists. */
const listedIn = (text) =>
  [...text.matchAll(LINE)].map(([, name, version, licence]) => ({ name, version, licence }));

/** Our licence, and then each text once, below the packages that it holds for. */
function licencesText(ours, packages) {
  const byText = new Map();
  for (const one of packages) {
    const text = one.text || noText(one);
    byText.set(text, [...(byText.get(text) ?? []), one]);
  }
  const parts = [...byText].map(([text, all]) => [...all.map(line), '', text].join('\n'));
  const others =
    packages.length === 0 ? [] : ['Built into it are these packages, each under its own licence.', ...parts];
  return `${[`Sweeptable\n\n${ours.trim()}`, ...others].join(`\n\n${RULE}\n\n`)}\n`;
}

const noText = ({ author }) =>
  `${author ? `By ${author}. ` : ''}The package names its licence and brings no text of it.`;

module.exports = { isPermissive, licencesText, listedIn, packageIn };
