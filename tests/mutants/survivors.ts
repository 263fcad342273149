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

/** A change that no test notices. Known by its text, as lines move. */
export interface Change {
  /** The first line that it touches. */
  readonly line: string;
  /** What all lines that it touches became, in one. */
  readonly became: string;
}

export interface Survivor extends Change {
  readonly file: string;
  readonly at: number;
}

/** Changes of a line that no test can or should notice, for one reason. */
export interface Explanation {
  readonly line: string;
  readonly became: string | readonly string[];
  readonly why: string;
}
/** By file. */
export type Explanations = Readonly<Record<string, readonly Explanation[]>>;

export interface Findings {
  /** Changes that count, those of them that a test notices, and those that are explained. */
  readonly counted: number;
  readonly noticed: number;
  readonly explained: number;
  readonly unexplained: readonly Survivor[];
  /** Explanations of changes that are made no more, or that a test notices by now. */
  readonly stale: readonly (Change & { readonly file: string })[];
}

const NOTICED = ['Killed', 'Timeout'];
const UNNOTICED = ['Survived', 'NoCoverage'];

const inOneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();

/** A mutant as the lines that it touches, before and after. */
function changeOf(source: string, { replacement = '', location: { start, end } }: Mutant): Change {
  const lines = source.split('\n');
  const first = lines[start.line - 1] ?? '';
  const last = lines[end.line - 1] ?? '';
  return {
    line: inOneLine(first),
    became: inOneLine(first.slice(0, start.column - 1) + replacement + last.slice(end.column - 1)),
  };
}

const keyOf = ({ line, became }: Change): string => `${line}\n${became}`;

/** Compares a report with the explanations. Each explains one change: of two alike, two explanations stand. */
export function findingsOf({ files }: MutationReport, explanations: Explanations): Findings {
  let noticed = 0;
  let explained = 0;
  const unexplained: Survivor[] = [];
  const stale: (Change & { file: string })[] = [];
  for (const [file, { source, mutants }] of Object.entries(files)) {
    const left = (explanations[file] ?? []).flatMap(({ line, became }) =>
      [became].flat().map((one): Change => ({ line, became: one })),
    );
    noticed += mutants.filter(({ status }) => NOTICED.includes(status)).length;
    for (const mutant of mutants.filter(({ status }) => UNNOTICED.includes(status))) {
      const change = changeOf(source, mutant);
      const place = left.findIndex((known) => keyOf(known) === keyOf(change));
      if (place < 0) unexplained.push({ file, at: mutant.location.start.line, ...change });
      else {
        explained += 1;
        left.splice(place, 1);
      }
    }
    stale.push(...left.map((change) => ({ file, ...change })));
  }
  return { counted: noticed + explained + unexplained.length, noticed, explained, unexplained, stale };
}
