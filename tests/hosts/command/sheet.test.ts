import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sheet as command } from '../../../src/hosts/command/sheet';
import { readXlsx } from '../../../src/xlsx/read';
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

describe('npm run sheet', { timeout: 120_000 }, () => {
  test('writes the demo job with its values', async () => {
    const { status, stdout, stderr } = spawned(['sheet', 'pops-build', 'demo.xlsx'], { cwd: folder });
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toMatch(
      /^Wrote demo\.xlsx: the sheet "Pops build" with the demo job in its inputs, \d+ formulas/,
    );
    const pops = (await fileAt('demo.xlsx'))?.cells.find(({ row, column }) => row === 15 && column === 1);
    expect(pops).toMatchObject({ value: 36, formula: expect.stringContaining('SWEEP.POPSFORTARGET(') });
  });

  test('--empty leaves the inputs blank', async () => {
    expect(await sheet('pops-build', at('empty.xlsx'), '--empty')).toMatchObject({ status: 0 });
    const cells = (await fileAt('empty.xlsx'))?.cells ?? [];
    expect(
      cells.filter(({ value }) => typeof value === 'number').every(({ formula }) => formula !== undefined),
    ).toBe(true);
    expect(cells.find(({ row, column }) => row === 15 && column === 1)?.value).toBe('');
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
