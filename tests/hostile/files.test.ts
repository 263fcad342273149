import { describe, expect, test, vi } from 'vitest';
import { readXlsx } from '../../src/xlsx/read';
import { zip } from '../xlsx/parts';
import { BOMBS, bombs } from './bombs';
import { EVERYTHING, hostileFiles } from './files';
import { Report } from './report';

describe('hostile files', () => {
  test('the file that is damaged holds something of everything', async () => {
    const { book, notUnderstood } = await readXlsx(zip(EVERYTHING));
    const [sheet] = book.sheets;
    expect(sheet).toMatchObject({ name: 'Sheet1', freeze: { rows: 2, columns: 1 }, widths: { 0: 12.5 } });
    for (const part of ['cells', 'merges', 'tables', 'rules', 'conditions', 'charts'] as const)
      expect(sheet?.[part].length, part).toBeGreaterThan(0);
    expect(sheet?.cells.map(({ formula }) => formula)).toContain('=SWEEP.FNUMBER(A2,$C$1)');
    expect(notUnderstood.join()).toMatch(/Macros.*Links to other files/);
  });

  test('damaged anywhere they are refused in a sentence, or opened in order', async () => {
    const report = new Report();
    await hostileFiles({ count: 150, seed: 1 }, report);
    expect(report.escapes).toEqual([]);
    expect(report.answers).toBeGreaterThan(30);
    expect(report.refusals).toBeGreaterThan(30);
  });

  for (const bomb of BOMBS.filter(({ slow }) => slow === undefined))
    test(`${bomb.what}: refused or opened, in time`, async () => {
      const report = new Report();
      await bombs([bomb], {}, report);
      expect(report.escapes).toEqual([]);
    });

  test('nothing in them runs, and nothing is fetched', async () => {
    const fetched = vi.spyOn(globalThis, 'fetch');
    await readXlsx(zip(EVERYTHING));
    expect(fetched).not.toHaveBeenCalled();
    fetched.mockRestore();
  });
});
