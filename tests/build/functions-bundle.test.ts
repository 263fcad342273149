import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import vm from 'node:vm';
import { beforeAll, describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import type { AnyRow, Arg } from '../../src/catalogue/types';
import { register } from '../../src/hosts/excel/register';
import { builtAddIn, LONGEST_BUILD } from '../hosts/excel/support/built-add-in';
import { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import { excelCaller, type Invocation, loadOffice } from '../hosts/excel/support/office-host';

/** Each argument blank and each unreadable in turn, the others as in the first example; and all examples. */
function invocationsOf({ id, args, examples }: AnyRow): Invocation[] {
  const block = (cell: unknown): unknown[][] =>
    Array.isArray(cell) ? (cell as unknown[]).map((member) => [member].flat()) : [[cell]];
  const sent = (cells: readonly unknown[]): Invocation => [
    id,
    ...(args as readonly Arg[]).map((_, i) => (i < cells.length ? block(cells[i]) : null)),
  ];
  const first = examples[0]?.cells ?? [];
  const changed = (args as readonly Arg[]).flatMap((_, i) =>
    [null, 'a kumquat', -1, [8, 11]].map((cell) => {
      const cells = Array.from({ length: Math.max(first.length, i + 1) }, (__, k) => first[k] ?? null);
      return sent(cells.map((own, k) => (k === i ? cell : own)));
    }),
  );
  return [...examples.map(({ cells }) => sent(cells)), ...changed];
}

function callerWith(load: (functions: typeof CustomFunctions) => void) {
  const workbook = new FakeWorkbook('Sheet1');
  return excelCaller(loadOffice(workbook, { whileLoading: load }), workbook);
}

describe('the script of the functions', () => {
  let built: string;
  const script = (): string => readFileSync(join(built, 'functions.js'), 'utf8');
  beforeAll(async () => {
    built = await builtAddIn();
  }, LONGEST_BUILD);

  test('answers and refuses in the same words as the sources do', async () => {
    const invocations = CATALOGUE.flatMap(invocationsOf);
    const ours = callerWith((functions) => register(functions, CATALOGUE));
    const theirs = callerWith((functions) => vm.runInNewContext(script(), { CustomFunctions: functions }));
    const [wanted, came] = await Promise.all([ours(invocations), theirs(invocations)]);
    expect(came).toEqual(wanted);
  });

  test('leaves out what only people read', () => {
    const text = script();
    for (const { gives, caution, notes } of CATALOGUE)
      for (const words of [gives, caution, notes])
        if (words !== undefined) expect(text).not.toContain(words.slice(0, 40));
  });

  test('keeps the words of the pane', () => {
    const pane = readFileSync(join(built, 'taskpane.js'), 'utf8');
    for (const { gives } of CATALOGUE) expect(pane).toContain(gives.slice(0, 15));
  });
});
