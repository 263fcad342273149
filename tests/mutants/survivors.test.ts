import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import explanations from './explained.json';
import { type Explanations, findingsOf, type Mutant, type MutationReport } from './survivors';

const ROOT = resolve(import.meta.dirname, '../..');
const SOURCE = ['const stop = 2;', '  if (power > most) return { power,', '    most };', ''].join('\n');

const mutant = (
  status: string,
  replacement: string,
  [line, column]: readonly [number, number],
  [endLine, endColumn]: readonly [number, number],
): Mutant => ({
  status,
  replacement,
  location: { start: { line, column }, end: { line: endLine, column: endColumn } },
});
const EDGE = mutant('Survived', 'power >= most', [2, 7], [2, 19]);
const EMPTY = mutant('NoCoverage', '{}', [2, 28], [3, 11]);
const report = (...mutants: readonly Mutant[]): MutationReport => ({
  files: { 'a.ts': { source: SOURCE, mutants } },
});

const LINE = 'if (power > most) return { power,';
const edge = {
  line: LINE,
  became: 'if (power >= most) return { power,',
  why: 'A tolerance has no exact edge.',
};

describe('a change that no test notices', () => {
  it('is told with its place, its line and what became of it', () => {
    expect(findingsOf(report(EDGE, EMPTY), {}).unexplained).toEqual([
      { file: 'a.ts', at: 2, line: LINE, became: edge.became },
      { file: 'a.ts', at: 2, line: LINE, became: 'if (power > most) return {};' },
    ]);
  });

  it('is not told where it is explained, wherever its line stands by now', () => {
    const { source, mutants } = report(EDGE).files['a.ts'] as MutationReport['files'][string];
    const moved = mutants.map((m) => mutant(m.status, m.replacement as string, [3, 7], [3, 19]));
    for (const files of [
      { 'a.ts': { source, mutants } },
      { 'a.ts': { source: `\n${source}`, mutants: moved } },
    ])
      expect(findingsOf({ files }, { 'a.ts': [edge] })).toEqual({
        counted: 1,
        noticed: 0,
        explained: 1,
        unexplained: [],
        stale: [],
      });
  });

  it('may share its reason with other changes of its line, each of which is told as stale by itself', () => {
    const shared = { ...edge, became: [edge.became, 'if (power < most) return { power,'] };
    expect(findingsOf(report(EDGE), { 'a.ts': [shared] })).toMatchObject({
      explained: 1,
      unexplained: [],
      stale: [{ file: 'a.ts', line: LINE, became: 'if (power < most) return { power,' }],
    });
  });

  it('needs an explanation of its own, and one for its own file', () => {
    expect(findingsOf(report(EDGE, EDGE), { 'a.ts': [edge] }).unexplained).toHaveLength(1);
    expect(findingsOf(report(EDGE, EDGE), { 'a.ts': [edge, edge] }).unexplained).toEqual([]);
    expect(findingsOf(report(EDGE), { 'b.ts': [edge] }).unexplained).toHaveLength(1);
  });
});

describe('an explanation', () => {
  it.each([
    ['a test notices the change by now', report({ ...EDGE, status: 'Killed' })],
    ['the code reads differently', report(mutant('Survived', 'power == most', [2, 7], [2, 19]))],
  ])('is stale where %s', (_, made) => {
    const { stale } = findingsOf(made, { 'a.ts': [edge] });
    expect(stale).toEqual([{ file: 'a.ts', line: edge.line, became: edge.became }]);
  });

  it('is left alone where its file was not changed at all', () => {
    expect(findingsOf({ files: {} }, { 'a.ts': [edge] }).stale).toEqual([]);
  });
});

describe('the count', () => {
  it('is of changes that a test notices or might, not of those that never ran', () => {
    const all = ['Killed', 'Timeout', 'Ignored', 'RuntimeError', 'CompileError', 'Survived'];
    const made = findingsOf(report(...all.map((status) => ({ ...EDGE, status }))), { 'a.ts': [edge] });
    expect(made).toMatchObject({ counted: 3, noticed: 2, explained: 1 });
  });
});

describe('each explanation kept', () => {
  const kept: Explanations = explanations;
  const all = Object.entries(kept).flatMap(([file, list]) => list.map((entry) => ({ file, ...entry })));

  it('is of a line that stands in its file, and changes it', () => {
    expect(all.length).toBeGreaterThan(0);
    for (const { file, line, became } of all) {
      const path = resolve(ROOT, file);
      expect(existsSync(path), file).toBe(true);
      const lines = readFileSync(path, 'utf8')
        .split('\n')
        .map((text) => text.replace(/\s+/g, ' ').trim());
      expect(lines, file).toContain(line);
      expect(became).not.toBe(line);
    }
  });

  it('gives its reason', () => {
    for (const { file, line, why } of all) expect(why.length, `${file}: ${line}`).toBeGreaterThan(20);
  });
});
