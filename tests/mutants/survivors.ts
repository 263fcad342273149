import { canonical, inOneLine, placesOf, type Range } from './places';

/** A place in the code, counted from 1. */
interface Place {
  readonly line: number;
  readonly column: number;
}

/** A change made to the code, and what became of it. */
export interface Mutant {
  readonly status: string;
  readonly replacement?: string;
  readonly location: { readonly start: Place; readonly end: Place };
}

/** The part of Stryker's report that is read here. */
export interface MutationReport {
  readonly files: Readonly<Record<string, { readonly source: string; readonly mutants: readonly Mutant[] }>>;
}

/** A change that no test notices, told by what the code says: lines move. */
export interface Change {
  /** The code that is changed, with enough beside it to be found; how its lines are broken is all the same. */
  readonly code: string;
  readonly became: string;
  /** Where the same code stands more than once, which of them it is: "2 of 3". */
  readonly place?: string;
}

export interface Survivor extends Change {
  readonly file: string;
  readonly at: number;
}

/** Changes of some code that no test can or should notice, for one reason. */
export interface Explanation extends Omit<Change, 'became'> {
  readonly became: string | readonly string[];
  readonly why: string;
}
/** By file. */
export type Explanations = Readonly<Record<string, readonly Explanation[]>>;

interface Explained extends Change {
  readonly file: string;
}
/** An explanation that does not find its code, and why. */
export interface Lost extends Explained {
  readonly lost: string;
}

export interface Findings {
  /** Changes that count, those of them that a test notices, and those that are explained. */
  readonly counted: number;
  readonly noticed: number;
  readonly explained: number;
  readonly unexplained: readonly Survivor[];
  readonly lost: readonly Lost[];
  /** Explanations of changes that are made no more, or that a test notices by now. */
  readonly stale: readonly Explained[];
}

const NOTICED = ['Killed', 'Timeout'];
const UNNOTICED = ['Survived', 'NoCoverage'];

const nth = (index: number, places: readonly Range[]): string => `${index + 1} of ${places.length}`;
const edited = (source: string, { start, end }: Range, text: string): string =>
  canonical(source.slice(0, start) + text + source.slice(end));

function rangeOf(source: string, { location }: Mutant): Range {
  const lines = source.split('\n');
  const offset = ({ line, column }: Place): number =>
    lines.slice(0, line - 1).reduce((sum, { length }) => sum + length + 1, column - 1);
  return { start: offset(location.start), end: offset(location.end) };
}

/** A mutant as the lines that it touches, before and after. */
function changeOf(source: string, mutant: Mutant): Change {
  const { start, end } = rangeOf(source, mutant);
  const from = source.lastIndexOf('\n', start - 1) + 1;
  const to = `${source}\n`.indexOf('\n', end);
  const code = inOneLine(source.slice(from, to));
  const became = inOneLine(source.slice(from, start) + (mutant.replacement ?? '') + source.slice(end, to));
  const places = placesOf(source, code);
  const index = places.findIndex((place) => place.start <= start && end <= place.end);
  return { code, became, ...(places.length > 1 && { place: nth(index, places) }) };
}

/** Where the code of an explanation stands, or why that cannot be said. */
function placeOf(source: string, { code, place }: Change): Range | string {
  const places = placesOf(source, code);
  if (places.length === 0) return 'its code is not there any more';
  if (places.length === 1 && place === undefined) return places[0] as Range;
  const which = places.findIndex((_, i) => place === nth(i, places) && places.length > 1);
  const count = places.length === 1 ? 'at one place' : `at ${places.length} places`;
  return places[which] ?? `its code stands ${count}, and it says ${place ?? 'none of them'}`;
}

/** The changes that the explanations of a file tell of, each with the code that it leads to. */
export function readExplanations(file: string, source: string, explanations: readonly Explanation[]) {
  const lost: Lost[] = [];
  const found: (Explained & { readonly leadsTo: string })[] = [];
  for (const { code, place, became } of explanations)
    for (const one of [became].flat()) {
      const explained = { file, code, became: one, ...(place !== undefined && { place }) };
      const range = placeOf(source, explained);
      if (typeof range === 'string') lost.push({ ...explained, lost: range });
      else found.push({ ...explained, leadsTo: edited(source, range, one) });
    }
  return { lost, found };
}

/** Compares a report with the explanations: a change is explained where one of them leads to the same code. */
export function findingsOf({ files }: MutationReport, explanations: Explanations): Findings {
  let noticed = 0;
  let explained = 0;
  const unexplained: Survivor[] = [];
  const lost: Lost[] = [];
  const stale: Explained[] = [];
  for (const [file, { source, mutants }] of Object.entries(files)) {
    const known = readExplanations(file, source, explanations[file] ?? []);
    lost.push(...known.lost);
    noticed += mutants.filter(({ status }) => NOTICED.includes(status)).length;
    const alive = new Set<string>();
    for (const mutant of mutants.filter(({ status }) => UNNOTICED.includes(status))) {
      const leadsTo = edited(source, rangeOf(source, mutant), mutant.replacement ?? '');
      alive.add(leadsTo);
      if (known.found.some((one) => one.leadsTo === leadsTo)) explained += 1;
      else unexplained.push({ file, at: mutant.location.start.line, ...changeOf(source, mutant) });
    }
    for (const { leadsTo, ...change } of known.found) if (!alive.has(leadsTo)) stale.push(change);
  }
  return { counted: noticed + explained + unexplained.length, noticed, explained, unexplained, lost, stale };
}
