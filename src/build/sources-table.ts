import type { AnyRow } from '../catalogue/types';
import type { Source } from '../catalogue/sources';

/** Checks of one function against one source. */
export interface CheckCount {
  readonly function: string;
  /** A key of the sources, or `oracle`. */
  readonly source: string;
  readonly checks: number;
}

type Sources = Readonly<Record<string, Source>>;

/** The second calculation of a closed formula in the tests: outside of the code, but in no document. */
export const ORACLE = 'oracle';

/** Titles, and not keys: two places in one document are one witness. */
const witnesses = (id: string, checks: readonly CheckCount[], sources: Sources): ReadonlySet<string> =>
  new Set(checks.filter((c) => c.function === id).map((c) => sources[c.source]?.title ?? c.source));

/** How many independent witnesses outside of the code a function is checked against. */
export const outsideChecks = (id: string, checks: readonly CheckCount[], sources: Sources): number =>
  witnesses(id, checks, sources).size;

/** What a function with fewer than two outside checks has to say for itself: where no more is to be had. */
export const excuses = (row: AnyRow, sources: Sources): readonly string[] =>
  row.sources.flatMap((key) => {
    const source = sources[key];
    if (source === undefined || source.kind === 'published') return [];
    return [source.kind === 'memory' ? `From memory: ${source.title}` : source.title];
  });

/** A table as the formatter of the project leaves it. */
function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = head.map((cell, i) => Math.max(3, ...[cell, ...rows.map((row) => row[i] ?? '')].map(width)));
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell, i) => cell + ' '.repeat((widths[i] ?? 0) - width(cell))).join(' | ')} |\n`;
  return line(head) + line(widths.map((n) => '-'.repeat(n))) + rows.map(line).join('');
}
const width = (text: string): number => [...text].length;

function functionRows(row: AnyRow, checks: readonly CheckCount[], sources: Sources): string[][] {
  const own = checks.filter((c) => c.function === row.id);
  const keys = [...new Set([...row.sources, ...own.map((c) => c.source)])];
  return keys.map((key) => {
    const count = own.find((c) => c.source === key)?.checks ?? 0;
    const said = row.sources.some((source) => source === key) ? 'yes' : '';
    const kind = key === ORACLE ? 'second calculation' : (sources[key]?.kind ?? '');
    return [row.id, key, kind, said, key === ORACLE ? 'drawn' : count === 0 ? '' : String(count)];
  });
}

/** Which function rests on which source, and how it is checked, as a page of Markdown. */
export function sourcesTable(
  rows: readonly AnyRow[],
  sources: Sources,
  checks: readonly CheckCount[],
): string {
  const few = rows.filter((row) => outsideChecks(row.id, checks, sources) < 2);
  const fewRows = few.map((row) => [
    row.id,
    String(outsideChecks(row.id, checks, sources)),
    excuses(row, sources).join('; '),
  ]);
  return `# Functions and their sources

Written by \`npm run sources\` from the catalogue, its sources and the checks of the tests: change those, not this page.

"In the row" are the sources that the catalogue names. "Checks" counts the values of that source that a function is held
to; \`${ORACLE}\` is the second calculation in decimal numbers of 50 digits, whose arguments are drawn. Two places in one
document count as one outside check.

${table(
  ['Function', 'Source', 'Kind', 'In the row', 'Checks'],
  rows.flatMap((row) => functionRows(row, checks, sources)),
)}
## Functions with fewer than two outside checks

${few.length === 0 ? 'None.\n' : table(['Function', 'Outside checks', 'Why'], fewRows)}
## Sources

${table(
  ['Source', 'Kind', 'Title', 'Place'],
  Object.entries(sources).map(([key, { kind, title, place }]) => [key, kind, title, place ?? '']),
)}`;
}
