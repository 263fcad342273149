import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import ts from 'typescript';
import { expect, test } from 'vitest';

const SRC = resolve(import.meta.dirname, '../../src');
/** Loops that run a million times: there a call for each member takes as long again. Elsewhere `at` says that one is there. */
const FEW = 60;

/** Whether a cast is of a member that was taken out of a list or a map, as `list[i] as number`. */
function isOfMember(node: ts.Node): boolean {
  if (!ts.isAsExpression(node) || ts.isConstTypeReference(node.type)) return false;
  let taken = node.expression;
  while (ts.isParenthesizedExpression(taken)) taken = taken.expression;
  if (ts.isElementAccessExpression(taken)) return true;
  const by =
    ts.isCallExpression(taken) &&
    ts.isPropertyAccessExpression(taken.expression) &&
    taken.expression.name.text;
  return by !== false && ['at', 'find', 'get', 'pop', 'shift'].includes(by);
}

function castsIn(name: string, text: string): string[] {
  // most files have none, and need not be parsed
  if (!/[\])]\s+as\b/.test(text)) return [];
  const file = ts.createSourceFile(name, text, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (isOfMember(node)) found.push(`${name}: ${node.getText()}`);
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

test('few members of lists are cast to what they are thought to be', () => {
  const files = readdirSync(SRC, { withFileTypes: true, recursive: true })
    .filter((file) => file.isFile() && file.name.endsWith('.ts'))
    .map((file) => join(file.parentPath, file.name));
  const casts = files.flatMap((file) => castsIn(relative(SRC, file), readFileSync(file, 'utf8')));
  expect(casts.length, casts.join('\n')).toBeLessThan(FEW);
});

test('the count knows a cast of a member from another', () => {
  const text =
    'a[i] as number; (b[0]) as string; m.get(k) as T; l.pop() as T; f(x) as T; x as T; [1] as const; at(l, 0);';
  expect(castsIn('x.ts', text)).toHaveLength(4);
});
