import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { calc } from '../../../src/hosts/command/calcCommand';
import { cells, workbook, zip } from '../../xlsx/parts';
import { ran } from '../excel/support/command';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'bad-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** What is told of a file with these cells: its formula cells with other values by address, and the sentences. */
async function told(inside: string, names = '') {
  const path = join(folder, 'bad.xlsx');
  writeFileSync(path, zip(workbook(cells(`<row r="1">${inside}</row>`), {}, names)));
  const { stdout, stderr } = await ran(calc, ['--book', path]);
  const found = stdout
    .split('\n')
    .filter(Boolean)
    .map((line) => JSON.parse(line) as { cell: string; calculated: unknown; message?: string });
  return { cells: new Map(found.map((each) => [each.cell, each])), stderr };
}
const formula = (a1: string, text: string, last: string, type = ''): string =>
  `<c r="${a1}"${type && ` t="${type}"`}><f>${text}</f><v>${last}</v></c>`;

describe('a workbook with what nobody wants in it', () => {
  test('functions that are not known', async () => {
    const { cells: found, stderr } = await told(
      formula('A1', 'GETPIVOTDATA(&quot;x&quot;,B1)', '7') + formula('C1', 'NOSUCH(1)', '9'),
    );
    expect(found.get('A1')).toMatchObject({ calculated: '#NAME?' });
    expect(found.get('A1')?.message).toMatch(/^This grid has no function GETPIVOTDATA\./);
    expect(found.get('C1')).toMatchObject({ calculated: '#NAME?', message: 'There is no function NOSUCH.' });
    expect(stderr).toContain('This grid has no function GETPIVOTDATA, NOSUCH: their formulas stay');
  });

  test('formulas that go round in a circle', async () => {
    const { stderr } = await told(formula('A1', 'B1+1', '4') + formula('B1', 'A1+1', '5'));
    expect(stderr).toContain('Formulas go round in a circle');
  });

  test('links to other files keep what they last gave', async () => {
    const { cells: found, stderr } = await told(
      formula('A1', '[1]Sheet1!A1', '4') + formula('B1', 'A1+1', '5') + formula('C1', 'A1*2', '9'),
    );
    expect(stderr).toContain('Links to other files are left out; what they last gave stays as plain values.');
    expect([...found.keys()]).toEqual(['C1']);
    expect(found.get('C1')).toMatchObject({ calculated: 8 });
  });

  test('names and references that point nowhere', async () => {
    const names =
      '<definedNames><definedName name="Hole">#REF!</definedName><definedName name="Gone">Sheet9!$A$1</definedName></definedNames>';
    const { cells: found } = await told(
      `<c r="A1"><v>1</v></c>${formula('B1', 'Hole', '#REF!', 'e')}${formula('C1', 'SUM(#REF!)', '3')}${formula('D1', 'Gone+1', '3')}${formula('E1', 'Nowhere', '3')}`,
      names,
    );
    expect(found.has('B1')).toBe(false);
    expect(found.get('C1')).toMatchObject({ calculated: '#REF!' });
    expect(found.get('D1')?.calculated).toMatch(/^#(?:REF|VALUE)!$/);
    expect(found.get('E1')).toMatchObject({ calculated: '#NAME?' });
  });

  test('a stored error goes on into what uses it', async () => {
    const { cells: found } = await told(
      `<c r="A1" t="e"><v>#DIV/0!</v></c>${formula('B1', 'A1+1', '3')}${formula('C1', 'IFERROR(A1,5)', '5')}`,
    );
    expect(found.get('B1')).toMatchObject({ calculated: '#DIV/0!' });
    expect(found.has('C1')).toBe(false);
  });

  test('a text where a number should be is a text, and adds nothing to a sum', async () => {
    const { cells: found, stderr } = await told(
      `<c r="A1"><v>1,5</v></c><c r="B1"><v>2</v></c>${formula('C1', 'SUM(A1:B1)', '2')}${formula('D1', 'A1+B1', '3.5')}`,
    );
    expect(stderr).toContain('are kept as texts');
    expect(found.has('C1')).toBe(false);
    expect(found.has('D1')).toBe(true);
  });

  test('formulas that cannot be read', async () => {
    const { cells: found } = await told(formula('A1', 'SUM(1;2)', '3') + formula('B1', 'SUM(1,2', '3'));
    expect(found.get('A1')?.message).toMatch(/write a comma there, and a point in numbers/);
    expect(found.get('B1')?.message).toMatch(/^This is not a whole formula/);
  });
});
