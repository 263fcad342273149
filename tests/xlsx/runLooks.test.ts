import { describe, expect, test } from 'vitest';
import { readXlsx } from '../../src/xlsx/read';
import { cells, workbook, zip } from './parts';

describe('a look within a text', () => {
  const LOST = ['A look within the text of a cell, as one word in bold, is left out: the words stay.'];
  const PLAIN = '<rPr><sz val="11"/><rFont val="Calibri"/></rPr>';
  const shared = (inside: string) => ({
    'xl/sharedStrings.xml': `<sst><si>${inside}</si></sst>`,
  });
  const run = (look: string, text: string): string => `<r>${look}<t>${text}</t></r>`;
  test.each([
    ['one word in bold', run('', 'at ') + run('<rPr><b/></rPr>', 'f/8'), 'at f/8', LOST],
    ['all of it in bold', run('<rPr><b/></rPr>', 'f/8'), 'f/8', LOST],
    [
      'two colours',
      run('<rPr><color rgb="FFFF0000"/></rPr>', 'a') + run('<rPr><color rgb="FF0000FF"/></rPr>', 'b'),
      'ab',
      LOST,
    ],
    ['bold that is switched off', run('<rPr><b val="0"/></rPr>', 'f/8'), 'f/8', []],
    ['runs that look alike', run(PLAIN, 'a') + run(PLAIN, 'b'), 'ab', []],
    ['plain text', '<t>f/8</t>', 'f/8', []],
  ])('%s: the words stay, and what is lost is said', async (_, inside, text, said) => {
    const inCell = `<c r="A1" t="inlineStr"><is>${inside}</is></c>`;
    const byNumber = '<c r="A1" t="s"><v>0</v></c>';
    for (const [cell, more] of [
      [inCell, {}],
      [byNumber, shared(inside)],
    ] as const) {
      const { book, notUnderstood } = await readXlsx(zip(workbook(cells(`<row r="1">${cell}</row>`), more)));
      expect(book.sheets[0]?.cells[0]?.value).toBe(text);
      expect(notUnderstood).toEqual(said);
    }
  });
});
