import { expect, it } from 'vitest';
import { inOurWords, inSentenceCase } from '../../../src/hosts/workbench/grid/words';

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
  expect(ours.ui).toEqual({ fontFamily: { times: 'Times New Roman' }, save: 'Save it' });
  expect(ours['sheets-formula-ui']).toEqual(words['sheets-formula-ui']);
  expect(ours['sheets-ui'].rightClick).toMatchObject({ pasteValue: 'Values', moveUp: 'Move up' });
  expect(ours['sheets-ui'].list).toEqual([['A B']]);
});
