import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const SRC = resolve(import.meta.dirname, '../../src');

/** Which folders a folder may import from, besides itself. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  exposure: [],
  catalogue: ['exposure'],
  cells: ['catalogue', 'exposure'],
  sheets: ['cells', 'catalogue', 'exposure'],
  pane: ['sheets', 'cells', 'catalogue', 'exposure'],
  hosts: ['pane', 'sheets', 'cells', 'catalogue', 'exposure'],
  build: ['hosts', 'pane', 'sheets', 'cells', 'catalogue', 'exposure'],
};
/** Folders that know no host: they import no package at all. */
const PURE = ['exposure', 'catalogue', 'cells', 'sheets'];

const files = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((f) => f.isFile() && /\.(ts|cts|mts)$/.test(f.name) && !f.name.endsWith('.d.ts'))
    .map((f) => join(f.parentPath, f.name));
const imports = (text: string): string[] =>
  [
    ...text.matchAll(
      /^(?:import|export)\b(?:[^'";]*?\bfrom)?\s*['"]([^'"]+)['"]|\b(?:import|require)\(\s*['"]([^'"]+)['"]/gm,
    ),
  ].map((m) => (m[1] ?? m[2]) as string);
const folderOf = (path: string): string => relative(SRC, path).split(/[\\/]/)[0] as string;

function breach(file: string, imported: string): string | undefined {
  const from = folderOf(file);
  if (!imported.startsWith('.'))
    return PURE.includes(from) ? `${from} imports the package ${imported}` : undefined;
  const target = resolve(dirname(file), imported);
  if (!target.startsWith(SRC)) return `${from} reaches out of src: ${imported}`;
  const to = folderOf(target);
  if (to === from || MAY_IMPORT[from]?.includes(to)) return undefined;
  return `${from} imports from ${to}`;
}

describe('arrows between folders point one way', () => {
  test('no file of src breaks the order', () => {
    const all = files(SRC);
    expect(all.length).toBeGreaterThan(40);
    const breaches = all.flatMap((file) =>
      imports(readFileSync(file, 'utf8')).flatMap((i) => {
        const found = breach(file, i);
        return found === undefined ? [] : [`${relative(SRC, file)}: ${found}`];
      }),
    );
    expect(breaches).toEqual([]);
  });
  test('each folder of src is known here', () => {
    const folders = readdirSync(SRC, { withFileTypes: true }).filter((f) => f.isDirectory());
    for (const { name } of folders) expect(MAY_IMPORT[name]).toBeDefined();
  });
  test('and the check finds a breach', () => {
    expect(
      imports(
        "import { a } from '../a';\nimport './b';\nexport * from '../c';\nconst d = import('../d');\none('from', 'x')",
      ),
    ).toEqual(['../a', './b', '../c', '../d']);
    expect(breach(join(SRC, 'exposure/stops/marks.ts'), '../../cells/call')).toBeDefined();
    expect(breach(join(SRC, 'cells/call.ts'), 'rxjs')).toBeDefined();
    expect(breach(join(SRC, 'cells/call.ts'), '../catalogue/types')).toBeUndefined();
  });
});

describe('the top level holds what it may and nothing else', () => {
  test('files and folders', () => {
    const wanted = ['package.json', 'package-lock.json', 'tsconfig.json', 'webpack.config.js', 'manifest.xml', 'src', 'tests', 'templates', 'README.md', 'DEVELOPERS.md', 'LICENSE']; // prettier-ignore
    const made = ['node_modules', 'dist'];
    const found = readdirSync(resolve(SRC, '..')).filter(
      (name) => !name.startsWith('.') && !made.includes(name),
    );
    expect(found.filter((name) => !wanted.includes(name))).toEqual([]);
    expect(wanted.filter((name) => !found.includes(name))).toEqual([]);
  });
});
