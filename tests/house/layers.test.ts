import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { FAMILIES } from '../../src/catalogue/types';

const SRC = resolve(import.meta.dirname, '../../src');

/** Below the hosts, the lowest floor first: each may import from those named, besides itself. */
const FLOORS = {
  exposure: [],
  catalogue: ['exposure'],
  formula: ['catalogue', 'exposure'],
  cells: ['formula', 'catalogue', 'exposure'],
  book: ['formula'],
  sheets: ['book', 'formula', 'catalogue', 'exposure'],
  set: ['cells', 'formula', 'catalogue', 'exposure'],
  explain: ['cells', 'formula', 'catalogue', 'exposure'],
  engine: ['cells', 'formula', 'catalogue', 'exposure'],
  xlsx: ['book', 'formula', 'catalogue'],
  pane: ['set', 'explain', 'sheets', 'book', 'cells', 'formula', 'catalogue', 'exposure'],
} satisfies Record<string, readonly string[]>;
const HOSTS = ['excel', 'workbench', 'command', 'script'].map((host) => `hosts/${host}`);
/** What a folder may import from. A host imports no host: what two of them share lies below them. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  ...FLOORS,
  ...Object.fromEntries(HOSTS.map((host) => [host, Object.keys(FLOORS)])),
  build: [...Object.keys(FLOORS), ...HOSTS],
  published: [],
};
/** Folders that know no host: they import no package at all. */
const PURE = ['exposure', 'catalogue', 'formula', 'cells', 'book', 'sheets', 'set', 'explain'];
/** The packages that a folder may import; one that is not named here may import any. */
const PACKAGES: Readonly<Record<string, RegExp>> = {
  ...Object.fromEntries(PURE.map((folder) => [folder, /^(?!)/])),
  engine: /^@univerjs\//,
  xlsx: /^@cj-tech-master\/excelts(?:\/|$)/,
};

const files = (folder: string): string[] =>
  readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((f) => f.isFile() && /\.[cm]?[jt]sx?$/.test(f.name) && !f.name.endsWith('.d.ts'))
    .map((f) => join(f.parentPath, f.name));
/** Expressions that name a file or package: import(…), require(…), require.resolve(…), and the file of a worker, new URL(…). */
const NAMING = /^(?:import|require|require\.resolve|URL)$/;
/** What stands in a node for another file or a package; the expression itself where only running it tells which. */
function importedBy(node: ts.Node): ts.Node | undefined {
  if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return node.moduleSpecifier;
  if (ts.isExternalModuleReference(node)) return node.expression;
  if (ts.isImportTypeNode(node)) return node.argument;
  if ((ts.isCallExpression(node) || ts.isNewExpression(node)) && NAMING.test(node.expression.getText()))
    return node.arguments?.[0];
  return undefined;
}
function imports(text: string): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const imported = importedBy(node);
    if (imported) found.push(imported.getText().replace(/^(['"`])(.*)\1$/, '$2'));
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('x.ts', text, ts.ScriptTarget.Latest, true));
  return found;
}
function folderOf(path: string): string {
  const [first = '', second = ''] = relative(SRC, path).split(/[\\/]/);
  return first === 'hosts' ? `${first}/${second}` : first;
}

function breach(file: string, imported: string): string | undefined {
  const from = folderOf(file);
  if (!imported.startsWith('.')) {
    const allowed = PACKAGES[from];
    return !allowed || allowed.test(imported) ? undefined : `${from} imports the package ${imported}`;
  }
  const target = resolve(dirname(file), imported);
  if (!target.startsWith(SRC)) return `${from} reaches out of src: ${imported}`;
  const to = folderOf(target);
  if (to === from || MAY_IMPORT[from]?.includes(to)) return undefined;
  return `${from} imports from ${to}`;
}

const foldersIn = (folder: string): string[] =>
  readdirSync(join(SRC, folder), { withFileTypes: true })
    .filter((f) => f.isDirectory())
    .map(({ name }) => name);

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
  test('each folder of src and each host is known here', () => {
    const known = [
      ...foldersIn('').filter((name) => name !== 'hosts'),
      ...foldersIn('hosts').map((h) => `hosts/${h}`),
    ];
    for (const name of known) expect(MAY_IMPORT[name], name).toBeDefined();
    expect(readdirSync(join(SRC, 'hosts')).sort()).toEqual(foldersIn('hosts').sort());
  });
  test.each([
    "import { a } from '../a';",
    "import '../a';",
    "import type { A } from '../a';",
    'import a, { type B } from "../a";',
    "import {\n  a, // the host's\n} from '../a';",
    "import a from '../a' with { type: 'json' };",
    "import a = require('../a');",
    "export * from '../a';",
    "export * as a from '../a';",
    "export type { A } from '../a';",
    "const a = import('../a');",
    'const a = import(`../a`);',
    'const a = await import(/* webpackChunkName: "a" */ \'../a\');',
    "let a: import('../a').A;",
    "type A = typeof import('../a');",
    "const { a } = require(\n  '../a',\n);",
    "require.resolve('../a');",
    "new Worker(new URL('../a', import.meta.url));",
    "const quote = /['\"`]/;\nimport('../a');",
  ])('the check sees what is imported by %j', (text) => expect(imports(text)).toEqual(['../a']));
  test('and lets words be', () =>
    expect(imports("one('from', '../a'); // import('../b')\nconst c = \"import('../c')\";")).toEqual([]));
  test('and finds a breach', () => {
    expect(breach(join(SRC, 'exposure/stops/marks.ts'), '../../cells/call')).toBeDefined();
    expect(breach(join(SRC, 'cells/call.ts'), 'rxjs')).toBeDefined();
    expect(breach(join(SRC, 'cells/call.ts'), 'name')).toBeDefined();
    expect(breach(join(SRC, 'engine/patches.ts'), '@univerjs/engine-formula')).toBeUndefined();
    expect(breach(join(SRC, 'engine/patches.ts'), 'uplot')).toBeDefined();
    expect(breach(join(SRC, 'xlsx/write.ts'), '@cj-tech-master/excelts/chart')).toBeUndefined();
    expect(breach(join(SRC, 'xlsx/write.ts'), '@univerjs/core')).toBeDefined();
    expect(breach(join(SRC, 'build/pages-plugin.cjs'), '../published/loss.json')).toBeDefined();
    expect(breach(join(SRC, 'build/start.cjs'), '../../tests/full')).toBeDefined();
    expect(breach(join(SRC, 'cells/call.ts'), '../catalogue/types')).toBeUndefined();
    expect(breach(join(SRC, 'sheets/checkTemplate.ts'), '../cells/call')).toBeDefined();
    expect(breach(join(SRC, 'hosts/command/calcCommand.ts'), '../excel/lay')).toBeDefined();
    expect(breach(join(SRC, 'hosts/workbench/page/files.ts'), '../grid/grid')).toBeUndefined();
  });
});

describe('the inside of the grid is touched in one folder of the workbench', () => {
  const GRID = 'hosts/workbench/grid/';
  /** The grid itself beside its facade, a method of a class, and what the grid does on a command. */
  const INSIDE = /__getInjector|\buniver\b(?!-)|\.handler\b|(?<!\b(?:Object|Array))\.prototype\b/;
  /** The names of its parts, imported to ask for them. */
  const PARTS =
    /^import\b[^;]*?\b(\w+(?:Service|Model|Manager|TreeBuilder)|Injector|IAccessor)\b[^;]*\bfrom '@univerjs\/(?!engine-formula')/m;
  const touched = (text: string): string | undefined => PARTS.exec(text)?.[1] ?? INSIDE.exec(text)?.[0];
  const touching = (wanted: (file: string) => boolean): string[] =>
    files(SRC)
      .map((file) => relative(SRC, file).replaceAll('\\', '/'))
      .filter(wanted)
      .flatMap((file) => {
        const what = touched(readFileSync(join(SRC, file), 'utf8'));
        return what === undefined ? [] : [`${file}: ${what}`];
      });

  test('and in the engine, and nowhere else', () => {
    expect(touching((file) => file.startsWith(GRID)).length).toBeGreaterThan(5);
    expect(touching((file) => !file.startsWith(GRID) && !file.startsWith('engine/'))).toEqual([]);
  });
  test.each([
    'grid.univer.__getInjector()',
    '{ univer, api }: Grid',
    "import { X } from './x';\nimport {\n  Y,\n  FormulaDataModel,\n} from '@univerjs/preset-sheets-core';",
    "import { type IAccessor } from '@univerjs/core';",
    'Lexer.prototype.treeBuilder = mine',
    'InsertRowCommand.handler = mine',
  ])('the check finds %j', (text) => expect(touched(text)).toBeDefined());
  test.each([
    "import { Direction } from '@univerjs/core';",
    "import { Service } from './ours';\nimport { Direction } from '@univerjs/core';",
    'Object.prototype.toString.call(cell)',
    'commands(grid)',
  ])('and lets %j be', (text) => expect(touched(text)).toBeUndefined());
});

describe('families, their folders and their rows are called alike', () => {
  /** Folders that several families use, or that have no function of their own. */
  const SHARED = ['core', 'balance'];
  test('a folder of the library for each family', () =>
    expect(
      foldersIn('exposure')
        .filter((name) => !SHARED.includes(name))
        .sort(),
    ).toEqual(Object.keys(FAMILIES).sort()));
  test('a file of rows for each family', () =>
    expect(
      readdirSync(join(SRC, 'catalogue/rows'))
        .map((file) => file.replace(/\.ts$/, ''))
        .filter((name) => name !== 'shared')
        .sort(),
    ).toEqual(Object.keys(FAMILIES).sort()));
});

test('published values are data alone', () => {
  const all = readdirSync(join(SRC, 'published'));
  expect(all.length).toBeGreaterThan(15);
  expect(all.filter((name) => !name.endsWith('.json'))).toEqual([]);
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
