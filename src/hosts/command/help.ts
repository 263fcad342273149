import { CATALOGUE, NAMESPACE, rowOf } from '../../catalogue';
import { SOURCES } from '../../catalogue/sources';
import { type AnyRow, type Arg, type Example, FAMILIES } from '../../catalogue/types';
import { argumentHelp, exampleFormula, functionName, resultText, signature } from '../../catalogue/words';
import { nearest } from '../../formula/nearestNames';
import { either } from './sentences';

/** Text in columns: the first as wide as its widest entry. */
function columns(rows: readonly (readonly [string, string])[]): string {
  const width = Math.max(...rows.map(([left]) => left.length));
  return rows.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`).join('\n');
}

/** Every function in a line, by family. */
export function functionList(): string {
  return Object.entries(FAMILIES)
    .map(([family, heading]) => {
      const rows = CATALOGUE.filter((row) => row.family === family);
      return `${heading}\n${columns(rows.map((row) => [functionName(row), row.gives]))}`;
    })
    .join('\n\n');
}

/** All that the catalogue says of one function; or the names that come near, where there is none of that name. */
export function functionHelp(name: string): { readonly text: string; readonly found: boolean } {
  const id = name.trim().toUpperCase().replace(`${NAMESPACE}.`, '');
  const row = rowOf(id);
  if (row) return { text: explain(row), found: true };
  const near = nearest(id, CATALOGUE.map(functionName));
  const hint = near.length > 0 ? `Did you mean ${either(near)}?` : '--help alone lists them all.';
  return { text: `There is no function ${NAMESPACE}.${id}. ${hint}`, found: false };
}

function explain(row: AnyRow): string {
  const args = columns((row.args as readonly Arg[]).map((arg) => [arg.name, argumentHelp(arg)]));
  const examples = row.examples.map((example) => [exampleFormula(row, example), given(example)] as const);
  return [
    `${NAMESPACE}.${signature(row)}`,
    `${row.gives} (${resultText(row)})`,
    args,
    `Formula: ${row.formula}`,
    row.notes,
    row.caution && `Caution: ${row.caution}`,
    `Examples:\n${columns(examples)}`,
    `Sources:\n${row.sources.map((key) => `  ${sourceText(key)}`).join('\n')}`,
  ]
    .filter(Boolean)
    .join('\n\n');
}

const given = ({ gives }: Example): string => (Array.isArray(gives) ? gives.join('; ') : String(gives));

function sourceText(key: AnyRow['sources'][number]): string {
  const source: { readonly title: string; readonly place?: string } = SOURCES[key];
  return source.place ? `${source.title}; ${source.place}` : source.title;
}
