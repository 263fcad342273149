import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readXlsx } from '../../src/hosts/xlsx/read';
import { TEMPLATES } from '../../src/sheets/templates';

const RUNNER = resolve(import.meta.dirname, '../../src/build/command.cjs');
let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'sheet-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** Runs the command as `npm run sheet -- …` does. It may have to be built first. */
function sheet(...args: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [RUNNER, 'sheet', ...args], {
    encoding: 'utf8',
    cwd: folder,
  });
  return { status, stdout, stderr: stderr.replace(/^Building .*\n/, '') };
}
const fileAt = async (name: string) => (await readXlsx(readFileSync(join(folder, name)))).book.sheets[0];

describe('npm run sheet', { timeout: 120_000 }, () => {
  test('writes the demo job with its values', async () => {
    const { status, stdout, stderr } = sheet('pops-build', 'demo.xlsx');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toMatch(
      /^Wrote demo\.xlsx: the sheet "Pops build" with the demo job in its inputs, \d+ formulas/,
    );
    const pops = (await fileAt('demo.xlsx'))?.cells.find(({ row, column }) => row === 15 && column === 1);
    expect(pops).toMatchObject({ value: 36, formula: expect.stringContaining('SWEEP.POPSFORTARGET(') });
  });

  test('--empty leaves the inputs blank', async () => {
    expect(sheet('pops-build', 'empty.xlsx', '--empty').status).toBe(0);
    const cells = (await fileAt('empty.xlsx'))?.cells ?? [];
    expect(
      cells.filter(({ value }) => typeof value === 'number').every(({ formula }) => formula !== undefined),
    ).toBe(true);
    expect(cells.find(({ row, column }) => row === 15 && column === 1)?.value).toBe('');
  });

  test('writes over a file only with --force', () => {
    writeFileSync(join(folder, 'mine.xlsx'), 'mine');
    expect(sheet('pops-build', 'mine.xlsx')).toEqual({
      status: 1,
      stdout: '',
      stderr: 'There is a file mine.xlsx already: nothing was written. --force writes over it.\n',
    });
    expect(readFileSync(join(folder, 'mine.xlsx'), 'utf8')).toBe('mine');
    expect(sheet('pops-build', 'mine.xlsx', '--force').status).toBe(0);
    expect(readFileSync(join(folder, 'mine.xlsx')).subarray(0, 2).toString()).toBe('PK');
  });

  test('lists the sheets, and says which one may be meant', () => {
    const { status, stdout } = sheet('--list');
    expect(status).toBe(0);
    for (const { id, answers } of TEMPLATES)
      expect(stdout).toMatch(new RegExp(`  ${id} +${answers.replace('?', '\\?')}\n`));
    const unknown = sheet('pop-build', 'x.xlsx');
    expect(unknown).toMatchObject({ status: 1, stdout: '' });
    expect(unknown.stderr).toContain(
      'There is no sheet pop-build. Did you mean pops-build? The sheets are:\n',
    );
    expect(sheet('pops-build', 'x.csv')).toMatchObject({
      status: 1,
      stderr: 'The file must end in .xlsx, and x.csv does not.\n',
    });
    expect(sheet('pops-build')).toMatchObject({
      status: 2,
      stderr: expect.stringContaining('npm run sheet -- '),
    });
    expect(sheet('--lst')).toMatchObject({ status: 2, stderr: expect.stringContaining('--list') });
  });
});
