import { describe, expect, test } from 'vitest';
import { readXlsx, UnreadableFile } from '../../src/xlsx/read';
import { cells, workbook, zip } from './parts';

const SHEET = 'xl/worksheets/sheet1.xml';
const MUCH = { content: new Uint8Array(210_000_000) };

describe('a large file', () => {
  test('of 300,000 cells is read', async () => {
    const rows = Array.from({ length: 30_000 }, (_, r) => {
      const inside = Array.from(
        { length: 10 },
        (__, c) => `<c r="${'ABCDEFGHIJ'[c]}${r + 1}"><v>${r * c}</v></c>`,
      );
      return `<row r="${r + 1}">${inside.join('')}</row>`;
    });
    const { book } = await readXlsx(zip(workbook(cells(rows.join('')))));
    const found = book.sheets[0]?.cells ?? [];
    expect(found).toHaveLength(300_000);
    expect(found.at(-1)).toEqual({ row: 29_999, column: 9, value: 29_999 * 9 });
  });

  test.each([
    ['that is small until it is opened', () => zip(workbook('', { [SHEET]: MUCH })), /too large.*200 MB/],
    [
      'that is not as small as it says',
      () => zip(workbook('', { [SHEET]: { ...MUCH, claims: 1000 } })),
      /damaged/,
    ],
    ['above 30 MB', () => new Uint8Array(30_000_001), /too large.*30 MB/],
    [
      'of more than two million cells',
      () => zip(workbook(cells(`<row r="1">${'<c r="A1"/>'.repeat(2_000_001)}</row>`))),
      /more than 2 million cells/,
    ],
  ])('%s is refused in a sentence', async (_what, bytes, sentence) => {
    const refusal = await readXlsx(bytes()).catch((reason: unknown) => reason);
    expect(refusal).toBeInstanceOf(UnreadableFile);
    expect((refusal as UnreadableFile).message).toMatch(sentence);
  });
});
