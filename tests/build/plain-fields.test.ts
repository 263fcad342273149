import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';

const require = createRequire(import.meta.url);
const { GRID, withPlainFields } = require('../../src/build/plain-fields-loader.cjs') as {
  GRID: RegExp;
  withPlainFields: (source: string) => string;
};
const fileOf = (name: string): string => require.resolve(`@univerjs/${name}`).replace('cjs', 'es');

test('a field is assigned, but for one that a getter or a setter has the name of', () => {
  const source = `
    class A { constructor() { _defineProperty(this, "a", [1, (2)]); _defineProperty(this, "b", 3); _defineProperty(A, "c", 4); } }
    class B { get b() { return 1; } }`;
  expect(withPlainFields(source)).toBe(
    source.replace('_defineProperty(this, "a", [1, (2)])', 'this.a = ([1, (2)])'),
  );
});

test.each(['core', 'engine-formula', 'engine-render', 'sheets', 'sheets-ui'])(
  'the package %s is a script with few fields set through a function',
  (name) => {
    const file = fileOf(name);
    expect(file).toMatch(GRID);
    const count = (text: string): number => text.split('_defineProperty(this, ').length - 1;
    const before = readFileSync(file, 'utf8');
    const after = withPlainFields(before);
    // otherwise the package is made by another compiler now, and this does nothing
    expect(count(before)).toBeGreaterThan(100);
    expect(count(after)).toBeLessThan(60);
  },
);
