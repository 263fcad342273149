import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { type CheckCount, excuses, ORACLE, outsideChecks, sourcesTable } from '../../src/build/sources-table';
import { CATALOGUE } from '../../src/catalogue';
import { SOURCES } from '../../src/catalogue/sources';
import type { AnyRow } from '../../src/catalogue/types';

const { PAGE, countChecks } = createRequire(import.meta.url)('../../src/build/sources-table.cjs') as {
  PAGE: string;
  countChecks: (rows: readonly AnyRow[]) => readonly CheckCount[];
};
const checks = countChecks(CATALOGUE);
const keys = Object.keys(SOURCES);

describe('sources and checks', () => {
  it('leave no function alone: two outside checks, or the reason why there are not', () => {
    const alone = CATALOGUE.filter(
      (row) => outsideChecks(row.id, checks, SOURCES) < 2 && excuses(row, SOURCES).length === 0,
    );
    expect(alone.map((row) => row.id)).toEqual([]);
  });

  it('check most functions twice', () => {
    const twice = CATALOGUE.filter((row) => outsideChecks(row.id, checks, SOURCES) >= 2);
    expect(twice.length).toBeGreaterThan(0.8 * CATALOGUE.length);
  });

  it('name functions and sources that there are', () => {
    const ids = CATALOGUE.map((row) => row.id);
    expect(checks.filter((c) => !ids.includes(c.function))).toEqual([]);
    expect(checks.filter((c) => c.source !== ORACLE && !keys.includes(c.source))).toEqual([]);
    expect(keys).not.toContain(ORACLE);
  });

  it('use every source, in a row, an example or a check', () => {
    const used = new Set<string>([
      ...CATALOGUE.flatMap((row) => [...row.sources, ...row.examples.flatMap((e) => e.source ?? [])]),
      ...checks.map((c) => c.source),
    ]);
    expect(keys.filter((key) => !used.has(key))).toEqual([]);
  });

  it('count two places of one document once, and the second calculation as one', () => {
    const two = [
      { function: 'DEPTHNEAR', source: 'exif-tests', checks: 2 },
      { function: 'DEPTHNEAR', source: 'exif-depth', checks: 1 },
    ];
    expect(outsideChecks('DEPTHNEAR', two, SOURCES)).toBe(1);
    const more = [...two, { function: 'DEPTHNEAR', source: ORACLE, checks: 1 }];
    expect(outsideChecks('DEPTHNEAR', more, SOURCES)).toBe(2);
    expect(outsideChecks('DEPTHFAR', more, SOURCES)).toBe(0);
  });
});

describe('the table of sources', () => {
  it('is current: npm run sources writes it anew', () => {
    expect(readFileSync(PAGE, 'utf8')).toBe(sourcesTable(CATALOGUE, SOURCES, checks));
  });
});
