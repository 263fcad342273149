import { mergeLocales } from '@univerjs/core';
import conditions from '@univerjs/preset-sheets-conditional-formatting/locales/en-US';
import core from '@univerjs/preset-sheets-core/locales/en-US';
import rules from '@univerjs/preset-sheets-data-validation/locales/en-US';
import notes from '@univerjs/preset-sheets-note/locales/en-US';
import tables from '@univerjs/preset-sheets-table/locales/en-US';
import { describe, expect, it } from 'vitest';
import { OUR_WORDS } from '../../../src/hosts/workbench/grid/ourWords';
import { inOurWords, inSentenceCase } from '../../../src/hosts/workbench/grid/words';

interface Tree {
  readonly [key: string]: string | Tree | readonly unknown[];
}

/** Every word by its place: sheets-ui.rightClick.copy. */
function* leaves(tree: Tree, before = ''): Generator<readonly [place: string, text: string]> {
  for (const [key, value] of Object.entries(tree)) {
    if (typeof value === 'string') yield [before + key, value];
    else if (!Array.isArray(value)) yield* leaves(value as Tree, `${before}${key}.`);
  }
}

/**
 * Parts of the grid that nobody comes to: another program's documents, help and lists of functions, formats of money, protection,
 * merging, and the menus that menus.ts does not offer.
 */
const NOT_MET = new RegExp(
  [
    'docs-ui\\.',
    'sheets-formula\\.',
    'sheets-formula-ui\\.(functionType|moreFunctions)\\.',
    'sheets-numfmt-ui\\.(?!addDecimal|subtractDecimal)',
    '.*\\bpermission\\.',
    '.*(Protect|Permission)',
    'sheets-ui\\.(shortcut|merge|toolbar\\.(formatPainter|mergeCell))',
    'sheets-ui\\.(sheetConfig\\.chartEditNoOpt|info\\.noName)',
    'sheets-table-ui\\.(customTooMore|condition)',
    'ui\\.(fontFamily|ribbon|toolbar|shortcut|shortcut-panel|common-edit|toggle-shortcut-panel)\\b',
  ]
    .map((each) => `^${each}`)
    .join('|'),
);
/** What programmers and other programs call things, and a spelling that is not ours. */
const OF_PROGRAMS =
  /\b(colors?|please|kindly|legal|illegal|invalid|univer|excel|worksheet|spreadsheet|dropdown|checkbox|input|range|format|validation|delimited|permission|parameter|merged?|are you sure)\b/i;
/** A capital within a sentence. */
const TITLE_CASE = /\p{Ll} \p{Lu}\p{Ll}/u;

it.each([
  ['Paste Column Width', 'Paste column width'],
  ['Toggle Shortcut Panel', 'Toggle shortcut panel'],
  ['Can be undone. Press Ctrl+Z', 'Can be undone. Press Ctrl+Z'],
  ['It worked. Try Again: Now', 'It worked. Try again: Now'],
  ["You Can't Hide It", "You can't hide it"],
  ['AND and PDF', 'AND and PDF'],
])('%s becomes %s', (title, sentence) => {
  expect(inSentenceCase(title)).toBe(sentence);
});

it('leaves names of typefaces and functions, and puts our words in the place of the grid’s', () => {
  const words = {
    ui: { fontFamily: { times: 'Times New Roman' }, save: 'Save It' },
    'sheets-ui': { rightClick: { pasteValue: 'Paste Value', moveUp: 'Move Up' }, list: [['A B']] },
    'sheets-formula-ui': { functionList: { SUM: 'Adds Up' } },
  };
  const ours = inOurWords(words);
  expect(ours.ui).toMatchObject({ fontFamily: { times: 'Times New Roman' }, save: 'Save it' });
  expect(ours['sheets-formula-ui']).toMatchObject(words['sheets-formula-ui']);
  expect(ours['sheets-ui'].rightClick).toMatchObject({ pasteValue: 'Values', moveUp: 'Move up' });
  expect(ours['sheets-ui'].list).toEqual([['A B']]);
});

describe('all that the grid says', () => {
  const theirs = mergeLocales(core, rules, conditions, notes, tables) as Tree;
  const said = [...leaves(inOurWords(theirs))];

  it('has a place for each word of ours', () => {
    const places = new Set([...leaves(theirs)].map(([place]) => place));
    expect([...leaves(OUR_WORDS)].map(([place]) => place).filter((place) => !places.has(place))).toEqual([]);
  });

  it('is in sentence case and plain words wherever it can be met', () => {
    const met = said.filter(([place]) => !NOT_MET.test(place));
    expect(met.length).toBeGreaterThan(400);
    const without = (text: string): string => text.replaceAll(/Ctrl\+\w|\{\w+\}/g, '');
    expect(met.filter(([, text]) => OF_PROGRAMS.test(without(text)))).toEqual([]);
    expect(met.filter(([, text]) => TITLE_CASE.test(without(text)))).toEqual([]);
  });
});
