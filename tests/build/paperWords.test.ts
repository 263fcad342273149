import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';

const { differences, missed } = createRequire(import.meta.url)('../../src/build/paper-words.cjs') as {
  differences: (ours: readonly string[], theirs: readonly string[], said: ReadonlySet<string>) => string[];
  missed: (pages: readonly string[], said: ReadonlySet<string>) => string[];
};

const NONE: ReadonlySet<string> = new Set();
const PAGES = [
  'Heads   Page 1 of 2\n\nKey   f/8   1/3\nRim   f/11\n',
  'Heads   Page 2 of 2\n\nFill   f/5.6\n',
];
const first = (text: string): string[] => [text, ...PAGES.slice(1)];

describe('printed pages side by side', () => {
  test.each([
    ['as they are', PAGES],
    ['in lines that are broken elsewhere', PAGES.map((text) => text.replaceAll(/\s+/g, '\n'))],
    ['in letters that stand apart', PAGES.map((text) => text.replace('Rim', 'R im'))],
  ])('are the same %s', (_, theirs) => expect(differences(PAGES, theirs, NONE)).toEqual([]));

  test.each([
    ['a word less', first(PAGES[0]?.replace('Key', '') ?? ''), 'page 1: only here “Key”, only by LibreOffice “”'],
    ['a word more', first(`${PAGES[0]} Key`), 'page 1: only here “”, only by LibreOffice “Key”'],
    ['a row less', [PAGES[0] ?? '', 'Heads Page 2 of 2'], 'page 2: only here “Fill f/5.6”, only by LibreOffice “”'],
    ['another number', first(PAGES[0]?.replace('f/8', 'f/9') ?? ''), 'page 1: only here “f/8”, only by LibreOffice “f/9”'],
    ['a page more', [...PAGES, ''], '2 pages here, 3 by LibreOffice'],
    ['a page less', PAGES.slice(1), '2 pages here, 1 by LibreOffice'],
  ])('differ by %s', (_, theirs, said) => expect(differences(PAGES, theirs, NONE)).toEqual([said])); // prettier-ignore

  test('may have fewer digits of a number, but not another one', () => {
    const found = (one: string, other: string) => differences([one], [other], NONE).length;
    expect([found('0.2487', '0.248723'), found('0.2487', '0.2497'), found('0.25', '0.251')]).toEqual([
      0, 1, 1,
    ]);
  });

  test('may be rounded twice where a number has many digits', () => {
    const found = (one: string, other: string) => differences([one], [other], NONE).length;
    expect([found('2.236067977', '2.236067978'), found('2.236067977', '2.236067979'), found('0.248', '0.249')]).toEqual([0, 1, 1]); // prettier-ignore
  });

  test('may differ by words that are excused, and by no others', () => {
    expect(differences(['Light across'], ['Light up'], new Set(['across', 'up']))).toEqual([]);
    expect(differences(['Light across'], ['Dark up'], new Set(['across', 'up']))).toHaveLength(1);
  });
});

describe('a comparison', () => {
  test('finds each fault that is put into pages', () => expect(missed(PAGES, NONE)).toEqual([]));
  test('that excuses all words of a page says which faults it does not find', () => {
    const all = new Set(PAGES.join(' ').split(/\s+/));
    expect(missed(PAGES, all)).toContain('a word less on page 1');
  });
});
