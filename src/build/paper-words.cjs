/** The words of two prints of a sheet, page by page: what stands on one of them alone. */

/** The words of a text and how often each is in it. A line may be broken behind a hyphen. */
function wordsIn(text) {
  const words = new Map();
  for (const word of text.normalize('NFKC').replaceAll('-', '- ').split(/\s+/).filter(Boolean))
    words.set(word, (words.get(word) ?? 0) + 1);
  return words;
}

/** Words as often as one text has them more than another. */
const more = (some, others) =>
  [...some].flatMap(([word, count]) => Array(Math.max(0, count - (others.get(word) ?? 0))).fill(word));

/**
 * Without numbers that are the same, to fewer digits in one of them: where a number has no format its column decides how many
 * there are, and LibreOffice counts columns in other letters. Three digits behind the point have to agree. LibreOffice rounds such
 * a number to ten digits, and those to the ones that it shows.
 */
function withoutRounded(here, there) {
  const left = [...there];
  const others = here.filter((word) => {
    const same = left.findIndex((other) => isRounded(word, other));
    if (same >= 0) left.splice(same, 1);
    return same < 0;
  });
  return [others, left];
}

const FEWEST = 3;
const ROUNDED_TWICE = 8;
function isRounded(one, other) {
  const decimals = Math.min(...[one, other].map((word) => /^-?\d+\.(\d+)$/.exec(word)?.[1].length ?? 0));
  const most = decimals < ROUNDED_TWICE ? 0.51 : 1.01;
  return decimals >= FEWEST && Math.abs(Number(one) - Number(other)) < most * 10 ** -decimals;
}

const lettersOf = (words) => [...words.join('')].sort().join('');

/**
 * A sentence for each page that has other words in one of two prints, or for another number of pages.
 *
 * @param said - words that may stand on one side alone.
 */
function differences(ours, theirs, said) {
  if (ours.length !== theirs.length) return [`${ours.length} pages here, ${theirs.length} by LibreOffice`];
  return ours.flatMap((text, i) => {
    if (text === theirs[i]) return [];
    const [one, other] = [wordsIn(text), wordsIn(theirs[i])];
    const all = [more(one, other), more(other, one)];
    // letters that stand apart in one of them are a word in the other
    if (lettersOf(all[0]) === lettersOf(all[1])) return [];
    const [here, there] = withoutRounded(...all).map((words) => words.filter((word) => !said.has(word)));
    if (lettersOf(here) === lettersOf(there)) return [];
    return [`page ${i + 1}: only here “${here.join(' ')}”, only by LibreOffice “${there.join(' ')}”`];
  });
}

/** The middle one of some. */
const middle = (all) => all[Math.floor(all.length / 2)];

/** The same pages with a fault on each in turn, and one with a page more or less. */
function seeded(pages, said) {
  const all = pages.map((page) => page.normalize('NFKC'));
  const counts = (word) => !said.has(word) && /[\p{L}\d]/u.test(word);
  const other = (i, text) => all.map((page, k) => (k === i ? text : page));
  return [
    ...all.flatMap((page, i) => {
      const lines = page.split('\n');
      const row = middle(lines.filter((line) => [...wordsIn(line).keys()].some(counts)));
      const word = middle([...wordsIn(page).keys()].filter(counts));
      return [
        { fault: `a word less on page ${i + 1}`, pages: other(i, page.replace(word, '')) },
        { fault: `a row less on page ${i + 1}`, pages: other(i, lines.filter((line) => line !== row).join('\n')) }, // prettier-ignore
        { fault: `a word more on page ${i + 1}`, pages: other(i, `${page} Another`) },
      ];
    }),
    { fault: 'a page less', pages: pages.slice(1) },
    { fault: 'a page more', pages: [...pages, ''] },
  ];
}

/** What would not be found if it were wrong: without an empty answer, that two prints are alike says nothing. */
function missed(pages, said) {
  if (differences(pages, pages, said).length > 0) return ['the same pages twice'];
  return seeded(pages, said)
    .filter((wrong) => differences(pages, wrong.pages, said).length !== 1)
    .map(({ fault }) => fault);
}

module.exports = { differences, missed, wordsIn };
