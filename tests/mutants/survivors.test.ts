import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import explanations from './explained.json';
import { canonical } from './places';
import {
  type Explanation,
  type Explanations,
  findingsOf,
  type Mutant,
  type MutationReport,
  readExplanations,
} from './survivors';

const ROOT = resolve(import.meta.dirname, '../..');

/** A change of the first such text after another, as Stryker reports it. */
function mutant(source: string, [after, text]: readonly [string, string], replacement: string, status = 'Survived'): Mutant {
  const from = source.indexOf(text, source.indexOf(after));
  expect(from, `${after} … ${text}`).toBeGreaterThanOrEqual(0);
  const place = (offset: number) => {
    const before = source.slice(0, offset).split('\n');
    return { line: before.length, column: (before.at(-1) as string).length + 1 };
  };
  return { status, replacement, location: { start: place(from), end: place(from + text.length) } };
} // prettier-ignore
const report = (source: string, ...mutants: readonly Mutant[]): MutationReport => ({
  files: { 'a.ts': { source, mutants } },
});

const CODE = `
const stop = 2;
export function wanted(power: number, most: number) {
  if (power > most) return { power: most };
  for (const head of heads) {
    add(head, stop);
  }
  return { power };
}
`;
const edge = (source = CODE, status = 'Survived') =>
  mutant(source, ['', 'power > most'], 'power >= most', status);
const empty = mutant(CODE, ['heads)', '{\n    add(head, stop);\n  }'], '{}', 'NoCoverage');

const EDGE: Explanation = {
  code: 'if (power > most) return { power: most };',
  became: 'if (power >= most) return { power: most };',
  why: 'Equal: as much is no more.',
};
const TOLD = { code: EDGE.code, became: EDGE.became };

describe('a change that no test notices', () => {
  it('is told with its place, all its lines and what became of them', () => {
    expect(findingsOf(report(CODE, edge(), empty), {}).unexplained).toEqual([
      { file: 'a.ts', at: 4, ...TOLD },
      {
        file: 'a.ts',
        at: 5,
        code: 'for (const head of heads) { add(head, stop); }',
        became: 'for (const head of heads) {}',
      },
    ]);
  });

  it('is not told where it is explained', () => {
    expect(findingsOf(report(CODE, edge()), { 'a.ts': [EDGE] })).toEqual({
      counted: 1,
      noticed: 0,
      explained: 1,
      unexplained: [],
      lost: [],
      stale: [],
    });
  });

  it('needs an explanation of its own, and one for its own file', () => {
    const never = mutant(CODE, ['', 'power > most'], 'false');
    expect(findingsOf(report(CODE, edge(), never), { 'a.ts': [EDGE] })).toMatchObject({
      explained: 1,
      unexplained: [{ became: 'if (false) return { power: most };' }],
    });
    expect(findingsOf(report(CODE, edge()), { 'b.ts': [EDGE] }).unexplained).toHaveLength(1);
  });

  it('may share its reason with other changes of its code, each of which is told as stale by itself', () => {
    const shared = { ...EDGE, became: [EDGE.became as string, 'if (power < most) return { power: most };'] };
    expect(findingsOf(report(CODE, edge()), { 'a.ts': [shared] })).toMatchObject({
      explained: 1,
      unexplained: [],
      stale: [{ file: 'a.ts', code: EDGE.code, became: 'if (power < most) return { power: most };' }],
    });
  });

  it('may be explained by less than its lines, or by more', () => {
    for (const [code, became] of [
      ['power > most', 'power >= most'],
      ['most: number) { if (power > most)', 'most: number) { if (power >= most)'],
    ] as const)
      expect(findingsOf(report(CODE, edge()), { 'a.ts': [{ ...EDGE, code, became }] })).toMatchObject({
        explained: 1,
        lost: [],
        stale: [],
      });
  });
});

describe('an explanation stays with its code', () => {
  const LINE = '  if (power > most) return { power: most };\n';
  it.each([
    ['lower in the file', `\n// more\nconst more = 1;\n${CODE}`],
    ['to another function', `${CODE.replace(LINE, '')}function other() {\n${LINE}}\n`],
    ['into a block', CODE.replace(LINE, `  if (power > 0) {\n    ${LINE}  }\n`)],
    ['where it is too long for one line', CODE.replace(LINE, '  if (power > most)\n    return {\n      power: most,\n    };\n')],
  ])('when it moves %s', (_where, source) => {
    expect(source).not.toBe(CODE);
    const moved = findingsOf(report(source, edge(source)), { 'a.ts': [EDGE] });
    expect(moved).toMatchObject({ explained: 1, unexplained: [], lost: [], stale: [] });
  }); // prettier-ignore

  it('and told on one line again, where it was explained on several', () => {
    const wrapped = { ...EDGE, code: 'if (power > most) return { power: most, };', became: 'if (power >= most) return { power: most, };' }; // prettier-ignore
    expect(findingsOf(report(CODE, edge()), { 'a.ts': [wrapped] })).toMatchObject({ explained: 1, lost: [] });
  });
});

describe('an explanation is lost, and its change told', () => {
  it.each([
    ['its line has changed', CODE.replace('return { power: most }', 'return { power: most - stop }')],
    ['a name in it is longer', CODE.replace('power: most }', 'power: mostOfAll }')],
    ['its line is gone, and one like it is there', CODE.replace('power: most }', 'power: (most) }')],
  ])('where %s', (_, source) => {
    expect(source).not.toBe(CODE);
    expect(findingsOf(report(source, edge(source)), { 'a.ts': [EDGE] })).toMatchObject({
      explained: 0,
      unexplained: [{ file: 'a.ts', at: 4 }],
      lost: [{ file: 'a.ts', ...TOLD, lost: 'its code is not there any more' }],
      stale: [],
    });
  });

  it('where a line within it has changed', () => {
    const loop = { code: 'for (const head of heads) { add(head, stop); }', became: 'for (const head of heads) {}', why: 'For speed alone.' }; // prettier-ignore
    expect(findingsOf(report(CODE, empty), { 'a.ts': [loop] }).explained).toBe(1);
    const source = CODE.replace('add(head, stop)', 'add(head, power)');
    const changed = mutant(source, ['heads)', '{\n    add(head, power);\n  }'], '{}');
    expect(findingsOf(report(source, changed), { 'a.ts': [loop] })).toMatchObject({
      explained: 0,
      lost: [{ code: loop.code }],
    });
  });

  it('where its code stands a second time by now', () => {
    const source = CODE + CODE;
    expect(findingsOf(report(source, edge(source)), { 'a.ts': [EDGE] })).toMatchObject({
      explained: 0,
      unexplained: [{ ...TOLD, place: '1 of 2' }],
      lost: [{ ...TOLD, lost: 'its code stands at 2 places, and it says none of them' }],
    });
  });
});

describe('of code that stands more than once', () => {
  const [first, second] = [
    { ...EDGE, place: '1 of 2' },
    { ...EDGE, place: '2 of 2' },
  ];
  const twice = CODE + CODE;
  const one = edge(twice);
  const other = mutant(twice, ['}\n\nconst', 'power > most'], 'power >= most');

  it('each place has an explanation of its own', () => {
    expect(one.location).not.toEqual(other.location);
    expect(findingsOf(report(twice, one, other), { 'a.ts': [first, second] })).toMatchObject({ explained: 2, stale: [] });
    expect(findingsOf(report(twice, one, other), { 'a.ts': [second] })).toMatchObject({
      explained: 1,
      unexplained: [{ at: 4, place: '1 of 2' }],
      stale: [],
    });
    expect(findingsOf(report(twice, other), { 'a.ts': [first] })).toMatchObject({
      explained: 0,
      unexplained: [{ at: 13, place: '2 of 2' }],
      stale: [{ place: '1 of 2' }],
    });
  }); // prettier-ignore

  it.each([
    ['fewer', CODE, edge(), 'its code stands at one place, and it says 1 of 2'],
    ['more', twice + CODE, one, 'its code stands at 3 places, and it says 1 of 2'],
  ])('it is lost where there are %s by now', (_, source, made, lost) => {
    const found = findingsOf(report(source, made), { 'a.ts': [first] });
    expect(found).toMatchObject({ explained: 0, unexplained: [{ at: 4 }], lost: [{ lost }] });
  });
});

describe('an explanation', () => {
  it.each([
    ['a test notices the change by now', report(CODE, edge(CODE, 'Killed'))],
    ['its code is changed otherwise', report(CODE, mutant(CODE, ['', 'power > most'], 'power == most'))],
  ])('is stale where %s', (_, made) => {
    const { lost, stale } = findingsOf(made, { 'a.ts': [EDGE] });
    expect({ lost, stale }).toEqual({ lost: [], stale: [{ file: 'a.ts', ...TOLD }] });
  });

  it('is left alone where its file was not changed at all', () => {
    expect(findingsOf({ files: {} }, { 'a.ts': [EDGE] })).toMatchObject({ lost: [], stale: [] });
  });
});

describe('the count', () => {
  it('is of changes that a test notices or might, not of those that never ran', () => {
    const all = ['Killed', 'Timeout', 'Ignored', 'RuntimeError', 'CompileError', 'Survived'];
    const made = findingsOf(report(CODE, ...all.map((status) => edge(CODE, status))), { 'a.ts': [EDGE] });
    expect(made).toMatchObject({ counted: 3, noticed: 2, explained: 1 });
  });
});

describe('each explanation kept', () => {
  const kept: Explanations = explanations;

  it('finds its code, and changes it as no other does', () => {
    expect(Object.keys(kept).length).toBeGreaterThan(0);
    for (const [file, list] of Object.entries(kept)) {
      const path = resolve(ROOT, file);
      expect(existsSync(path), file).toBe(true);
      const source = readFileSync(path, 'utf8');
      const { lost, found } = readExplanations(file, source, list);
      expect(lost, file).toEqual([]);
      const codes = [canonical(source), ...found.map(({ leadsTo }) => leadsTo)];
      expect(codes.filter((code, i) => codes.indexOf(code) !== i).length, file).toBe(0);
    }
  });

  it('gives its reason', () => {
    for (const [file, list] of Object.entries(kept))
      for (const { code, why } of list) expect(why.length, `${file}: ${code}`).toBeGreaterThan(20);
  });
});
