import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { beforeAll, describe, expect, test } from 'vitest';
import { builtAddIn, LONGEST_BUILD } from '../hosts/excel/support/built-add-in';

/**
 * The oldest webview that the pane has to run in is Safari 15.4, on Macs whose Office is still current. What came later, from memory of MDN's
 * tables: look-behind and blocks of classes with 16.4, sorting of copies with 16.0, groups with 17.4, the flag v with
 * 17.0, light-dark() with 17.5, nested rules with 16.5, color-mix() with 16.2, container queries with 16.0.
 */
const YOUNGER_MEMBERS = /^(?:toSorted|toReversed|toSpliced|groupBy|isWellFormed|fromAsync|withResolvers)$/;
const LOOK_BEHIND = /\(\?<[=!]/;

/** What a script has that the oldest webview does not read. */
function younger(script: string): string[] {
  const file = ts.createSourceFile('x.js', script, ts.ScriptTarget.Latest, false, ts.ScriptKind.JS);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isClassStaticBlockDeclaration(node)) found.push('a block of a class');
    if (
      ts.isRegularExpressionLiteral(node) &&
      (LOOK_BEHIND.test(node.text) || /\/[a-u]*v[a-z]*$/.test(node.text))
    )
      found.push(node.text);
    if (ts.isStringLiteralLike(node) && LOOK_BEHIND.test(node.text)) found.push(node.text.slice(0, 40));
    if (ts.isPropertyAccessExpression(node) && YOUNGER_MEMBERS.test(node.name.text))
      found.push(node.name.text);
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

/** The rules of a style sheet without those for who knows light-dark(). */
const forAll = (css: string): string =>
  css.replace(/\/\*[^]*?\*\//g, '').replace(/@supports \(color: ?light-dark\([^{]*\{(?:[^{}]*\{[^{}]*\})*\s*\}/g, ''); // prettier-ignore
const YOUNGER_CSS = /light-dark\(|color-mix\(|@container|@scope|@starting-style|[{;]\s*&/;

describe('the oldest webview', () => {
  let built: string;
  const read = (name: string): string => readFileSync(join(built, name), 'utf8');
  beforeAll(async () => {
    built = await builtAddIn();
  }, LONGEST_BUILD);

  test.each([
    'functions.js',
    'taskpane.js',
    'long-sheets.js',
    'balance.js',
    'balance-worker.js',
    'set-picture.js',
  ])('reads %s', (name) => expect(younger(read(name))).toEqual([]));
  test('reads the styles of the pane', () => {
    expect(read('taskpane.css')).toContain('light-dark(');
    expect(forAll(read('taskpane.css'))).not.toMatch(YOUNGER_CSS);
    expect(forAll(read('taskpane.css'))).toContain('.pane {');
  });
});

test('and the look at it is not blind', () => {
  expect(younger('class A { static { x(); } }')).toHaveLength(1);
  expect(younger('a.replace(/(?<!b)c/, "")')).toHaveLength(1);
  expect(younger('new RegExp("(?<=b)c")')).toHaveLength(1);
  expect(younger('[2, 1].toSorted(); /a/v')).toHaveLength(2);
  expect(younger('class A { #b = 1; c = this.#b ?? Object.hasOwn(this, "c"); } /(?<name>a)/u')).toEqual([]);
  expect(forAll('a { color: red; }\n@supports (color: light-dark(#000, #fff)) {\n  a { color: light-dark(red, blue); }\n\n  b { c: d; }\n}\n\n.z { x: y; }').trim()).not.toMatch(YOUNGER_CSS); // prettier-ignore
  expect('a { color: light-dark(red, blue); }').toMatch(YOUNGER_CSS);
});
