import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { rowOf } from '../../src/catalogue';
import { SOURCES, type SourceKey } from '../../src/catalogue/sources';
import { columnsOf } from '../../src/catalogue/words';
import { call } from '../../src/cells/call';

/** How sure a check is: printed and read, known from memory, or worked out apart from this code. */
type CheckKind = 'published' | 'memory' | 'analytic';

/**
 * One value that somebody other than this code gives for a function.
 * `call`: the cells as typed, so that a mark means the exact value behind it. `pure`: plain numbers that count as printed.
 */
interface Check {
  readonly id: string;
  readonly source: SourceKey;
  readonly place?: string;
  readonly kind: CheckKind;
  readonly via: 'call' | 'pure';
  readonly function: string;
  readonly cells: readonly unknown[];
  /** Which of several answers side by side. */
  readonly part?: string;
  readonly gives: number | string;
  /** Half of the last printed digit, or relative where many digits are known. Texts are exact and have none. */
  readonly tolerance?: number | { readonly relative: number };
  readonly note?: string;
}

interface Topic {
  readonly topic: string;
  readonly checks: readonly Check[];
}

const FOLDER = resolve(import.meta.dirname, '../../src/published');

/** Every topic file, and the fewest checks that it may hold: a file that loses some has been cut, not corrected. */
const FEWEST: Readonly<Record<string, number>> = {
  'stop-series': 128,
  'exposure-value': 55,
  calibration: 19,
  'guide-numbers': 43,
  'fall-off': 28,
  'close-up': 45,
  filters: 62,
  motion: 23,
  combining: 64,
  magnification: 20,
  'depth-of-field': 44,
  diffraction: 50,
  'stacking-and-tilt': 38,
  reciprocity: 19,
  'flash-duration': 28,
  electrical: 11,
  heads: 14,
  evenness: 16,
  repeatability: 32,
  mired: 30,
  'pulse-shapes': 63,
};

const topics = Object.keys(FEWEST).map((file) => {
  const text = readFileSync(resolve(FOLDER, `${file}.json`), 'utf8');
  return { file, ...(JSON.parse(text) as Topic) };
});
const all = topics.flatMap((t) => t.checks);

const margin = ({ gives, tolerance }: Check): number =>
  typeof tolerance === 'object' ? tolerance.relative * Math.abs(Number(gives)) : (tolerance ?? 0);

function outcome({ function: id, cells, via, part }: Check): unknown {
  const row = rowOf(id);
  if (row === undefined) return undefined;
  const came: unknown =
    via === 'call' ? call(row, cells) : row.run(...cells.map((cell) => cell ?? undefined));
  return part === undefined ? came : [came].flat(2)[columnsOf(row).findIndex(({ name }) => name === part)];
}

describe.each(topics)('$file: $topic', ({ checks }) => {
  it.each(checks)('$id: $function $cells gives $gives [$source]', (check) => {
    const came = outcome(check);
    if (typeof check.gives === 'string') expect(came).toBe(check.gives);
    else {
      expect(typeof came, JSON.stringify(came)).toBe('number');
      expect(Math.abs((came as number) - check.gives)).toBeLessThanOrEqual(margin(check));
    }
  });
});

describe('the published checks themselves', () => {
  it('lie in the topic files that are listed, and in no other', () => {
    const files = readdirSync(FOLDER).filter((name) => name.endsWith('.json'));
    expect(new Set(files)).toEqual(new Set(Object.keys(FEWEST).map((name) => `${name}.json`)));
  });

  it.each(Object.entries(FEWEST))('%s has at least %i checks', (file, fewest) => {
    expect(topics.find((t) => t.file === file)?.checks.length).toBeGreaterThanOrEqual(fewest);
  });

  it('are at least 100, of which at least 100 were read in print', () => {
    expect(all.length).toBeGreaterThanOrEqual(100);
    expect(all.filter((c) => c.kind === 'published').length).toBeGreaterThanOrEqual(100);
  });

  it('have no two alike', () => {
    expect(new Set(all.map((c) => c.id)).size).toBe(all.length);
    const sums = all.map((c) => JSON.stringify([c.source, c.via, c.function, c.cells, c.part]));
    expect(new Set(sums).size).toBe(all.length);
  });

  /** Ids of the checks that break a rule: none, in the end. */
  const breaking = (rule: (check: Check) => boolean): string[] =>
    all.filter((check) => !rule(check)).map((check) => check.id);

  it('name a source of the list, of a kind that agrees', () => {
    const wanted = { published: 'published', memory: 'memory', analytic: 'derived' };
    expect(breaking((c) => SOURCES[c.source]?.kind === wanted[c.kind])).toEqual([]);
  });

  it('name a function of the catalogue and a way to call it', () => {
    expect(breaking((c) => rowOf(c.function) !== undefined && ['call', 'pure'].includes(c.via))).toEqual([]);
  });

  it('allow more than nothing, and at most a tenth of a stop or a tenth of the value', () => {
    const inStops = (c: Check): boolean => ['stops', 'EV'].includes(rowOf(c.function)?.result.unit ?? '');
    const widest = (c: Check): number => Math.max(Math.abs(Number(c.gives)) / 10, inStops(c) ? 0.1 : 0);
    const numbers = (c: Check): boolean => typeof c.gives === 'number';
    expect(breaking((c) => !numbers(c) || (margin(c) > 0 && margin(c) <= widest(c)))).toEqual([]);
  });

  it('are exact where they are texts', () => {
    expect(
      breaking((c) => typeof c.gives === 'number' || (c.tolerance === undefined && c.via === 'call')),
    ).toEqual([]);
  });

  it('are held to 1e-9 or better where they were worked out', () => {
    const scale = (c: Check): number => Math.max(1, Math.abs(Number(c.gives)));
    expect(
      breaking(
        (c) => c.kind !== 'analytic' || typeof c.gives === 'string' || margin(c) <= 1.0001e-9 * scale(c),
      ),
    ).toEqual([]);
  });
});
