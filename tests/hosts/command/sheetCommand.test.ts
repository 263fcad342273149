import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sheet as command } from '../../../src/hosts/command/sheetCommand';
import type { BookCell } from '../../../src/book/book';
import { readXlsx } from '../../../src/xlsx/read';
import { openPackage } from '../../../src/xlsx/zip';
import { TEMPLATES } from '../../../src/sheets/templates';
import { ran, spawned } from '../excel/support/command';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'sheet-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const at = (name: string): string => join(folder, name);
const sheet = (...args: readonly string[]) => ran(command, args);
const fileAt = async (name: string) => (await readXlsx(readFileSync(at(name)))).book.sheets[0];
const besideLabel = (cells: readonly BookCell[], label: string): BookCell | undefined => {
  const row = cells.find(({ column, value }) => column === 0 && value === label)?.row;
  return cells.find((cell) => cell.row === row && cell.column === 1);
};

describe('npm run sheet', { timeout: 120_000 }, () => {
  test('writes the demo job with its values', async () => {
    const { status, stdout, stderr } = spawned(['sheet', 'pops-build', 'demo.xlsx'], { cwd: folder });
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toMatch(
      /^Wrote demo\.xlsx: the sheet "Pops build" with the demo job in its inputs, \d+ formulas/,
    );
    const cells = (await fileAt('demo.xlsx'))?.cells ?? [];
    // f/22 +0.6 is f/27.86; to f/45.25 through 2·log2(1.25) + 1/3 stops it lacks 2.377 stops, 5.02 pops within 0.05; ambient
    // light of f/4 at 2 s brings 0.01 of a pop a second in 4 gaps of 2.2 s: 5 pops
    expect(besideLabel(cells, 'Pops')).toMatchObject({ value: 5, formula: expect.any(String) });
    expect(besideLabel(cells, 'One pop, exactly')).toMatchObject({
      formula: expect.stringContaining('SWEEP.FNUMBER('),
    });
  });

  test('--empty leaves the inputs blank', async () => {
    const { status, stdout } = await sheet('pops-build', at('empty.xlsx'), '--empty');
    expect(status).toBe(0);
    expect(stdout).not.toContain('picture');
    const cells = (await fileAt('empty.xlsx'))?.cells ?? [];
    for (const label of [
      'Reading of one pop',
      'Lens setting to reach',
      'Bellows draw',
      'Ambient light alone',
    ]) {
      expect(besideLabel(cells, label), label).toBeDefined();
      expect(besideLabel(cells, label)?.value ?? null, label).toBeNull();
    }
    expect(besideLabel(cells, 'Pops')?.value).toBe('');
  });

  test('says that the picture of a set is not in a file, where there would be one', async () => {
    const { status, stdout } = await sheet('shot-record', at('record.xlsx'), '--empty');
    expect(status).toBe(0);
    expect(stdout).toMatch(/Wrote .*\nThe picture of the set is not in it: in a file it would not follow/);
  });

  test('--letter is for that paper', async () => {
    expect(await sheet('client-page', at('letter.xlsx'), '--letter')).toMatchObject({ status: 0 });
    const parts = openPackage(readFileSync(at('letter.xlsx')));
    const xml = new TextDecoder().decode(await parts.read('xl/worksheets/sheet1.xml'));
    // a file says 1 for Letter and 9 for A4 (ECMA-376, pageSetup)
    expect(/<pageSetup[^>]*paperSize="(\d+)"/.exec(xml)?.[1]).toBe('1');
  });

  test('writes over a file only with --force', async () => {
    const mine = at('mine.xlsx');
    writeFileSync(mine, 'mine');
    expect(await sheet('pops-build', mine)).toEqual({
      status: 1,
      stdout: '',
      stderr: `There is a file ${mine} already: nothing was written. --force writes over it.\n`,
    });
    expect(readFileSync(mine, 'utf8')).toBe('mine');
    expect(await sheet('pops-build', mine, '--force')).toMatchObject({ status: 0 });
    expect(readFileSync(mine).subarray(0, 2).toString()).toBe('PK');
  });

  test('says why it could not write a file', async () => {
    const { status, stdout, stderr } = await sheet('pops-build', at(join('nowhere', 'demo.xlsx')));
    expect({ status, stdout }).toEqual({ status: 1, stdout: '' });
    expect(stderr).toMatch(/^The file could not be written\. ENOENT: .*nowhere.*\n$/);
  });

  test('lists the sheets, and says which one may be meant', async () => {
    const { status, stdout } = await sheet('--list');
    expect(status).toBe(0);
    for (const { id, answers } of TEMPLATES)
      expect(stdout).toMatch(new RegExp(`  ${id} +${answers.replace('?', '\\?')}\n`));
    const unknown = await sheet('pop-build', 'x.xlsx');
    expect(unknown).toMatchObject({ status: 1, stdout: '' });
    expect(unknown.stderr).toContain(
      'There is no sheet pop-build. Did you mean pops-build? The sheets are:\n',
    );
    expect(await sheet('pops-build', 'x.csv')).toMatchObject({
      status: 1,
      stderr: 'The file must end in .xlsx, and x.csv does not.\n',
    });
    expect(await sheet('pops-build')).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('npm run sheet -- '),
    });
    expect(spawned(['sheet', '--lst'])).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('--list'),
    });
  });
});
