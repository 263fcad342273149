import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import vm from 'node:vm';
import { beforeAll, describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../../src/catalogue';
import type { Example } from '../../../src/catalogue/types';

const ROOT = resolve(import.meta.dirname, '../../..');
const built = (name: string): string => resolve(ROOT, 'dist/scripts', name);

beforeAll(() => {
  if (existsSync(built('google-sheets.js')) && existsSync(built('onlyoffice.js'))) return;
  execFileSync(
    process.execPath,
    [resolve(ROOT, 'node_modules/webpack/bin/webpack.js'), '--config', 'src/build/webpack-scripts.cjs'],
    { cwd: ROOT },
  );
}, 60_000);

type Functions = Readonly<Record<string, (...cells: unknown[]) => unknown>>;

/** Google Sheets reads the top-level functions of the file. */
function google(): Functions {
  const context: Record<string, unknown> = {};
  vm.createContext(context);
  vm.runInContext(readFileSync(built('google-sheets.js'), 'utf8'), context);
  return context as Functions;
}

/** ONLYOFFICE takes each function as the file hands it over. */
function onlyOffice(): Functions {
  const taken: Record<string, (...cells: unknown[]) => unknown> = {};
  const Api = { AddCustomFunction: (f: (...cells: unknown[]) => unknown) => void (taken[f.name] = f) };
  vm.runInNewContext(readFileSync(built('onlyoffice.js'), 'utf8'), { Api });
  return taken;
}

const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
/** A list comes as a range; every other cell as a lone value, a blank as an empty text. */
const asHostGives = (example: Example): unknown[] =>
  example.cells.map((cell) =>
    Array.isArray(cell) ? cell.map((row: unknown) => [row].flat().map((v) => v ?? '')) : (cell ?? ''),
  );

for (const [host, load] of [
  ['Google Sheets', google],
  ['ONLYOFFICE', onlyOffice],
] as const)
  describe(host, () => {
    test('has every function of the catalogue, under a name the host allows', () => {
      const functions = load();
      for (const { id } of CATALOGUE) expect(typeof functions[`SWEEP_${id}`], id).toBe('function');
    });
    test('gives every example its value', () => {
      const functions = load();
      for (const row of CATALOGUE)
        for (const example of row.examples) {
          const answer = plain(functions[`SWEEP_${row.id}`]?.(...asHostGives(example)));
          const got = Array.isArray(answer) ? answer.flat() : [answer];
          const wanted = [example.gives].flat(2);
          for (const [i, want] of wanted.entries())
            if (typeof want === 'string') expect(got[i]).toBe(want);
            else
              expect(Math.abs((got[i] as number) - want), row.id).toBeLessThanOrEqual(
                1e-12 * Math.max(1, Math.abs(want)),
              );
        }
    });
    test('throws a refusal with its code and sentence', () => {
      const { SWEEP_STOPDIFF: stops, SWEEP_POWERFORDISTANCE: power } = load();
      expect(() => stops?.('abc', 8)).toThrow(/^#VALUE! from: "abc" cannot be read as an f-number/);
      expect(() => stops?.(-8, 8)).toThrow(/^#NUM! from must be above 0/);
      expect(() => stops?.('', 8)).toThrow(/from is missing/);
      expect(() => power?.(400, 1, 2, '', '', 100, 500)).toThrow(/^#N\/A That takes 1.7 stops more/);
    });
    test('takes a range, leaves a blank row blank and an error in its own cell', () => {
      const { SWEEP_STOPDIFF: stops } = load();
      expect(plain(stops?.([[8], [''], ['#N/A'], ['odd'], [16]], 8))).toEqual([
        [0],
        [''],
        ['#N/A'],
        ['#VALUE!'],
        [-2],
      ]);
      expect(() => stops?.('#REF!', 8)).toThrow(/#REF!/);
    });
    test('knows a date for what it is', () => {
      const { SWEEP_SECONDS: seconds } = load();
      expect(() => seconds?.(new Date(2026, 0, 60))).toThrow(/looks like a date/);
    });
    test('describes every function for the host', () => {
      const file = readFileSync(built(host === 'ONLYOFFICE' ? 'onlyoffice.js' : 'google-sheets.js'), 'utf8');
      expect(file.match(/@customfunction/g)).toHaveLength(CATALOGUE.length);
      expect(file.match(/@returns \{any\[\]\[\]\}/g)).toHaveLength(CATALOGUE.length);
    });
  });
