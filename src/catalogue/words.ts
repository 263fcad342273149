import { rangeText } from '../exposure/core/range';
import { NAMESPACE } from './index';
import type { Source, SourceKind } from './sources';
import {
  type AnyRow,
  type Arg,
  type Example,
  type ExampleCell,
  isChoice,
  isChosen,
  isTable,
  isTruth,
  quantitiesOf,
  type AnswerColumn,
} from './types';

/** How a cell of this argument is read: 11, f/11, f/8 2/3. Where another argument decides, by its words. */
export function formsText(arg: Arg): string {
  const { kind } = arg;
  if (isChoice(kind)) return kind.choices.map((c) => `"${c}"`).join(', ');
  if (isTruth(kind)) return 'TRUE or FALSE';
  if (isChosen(kind) && 'by' in kind && Object.keys(kind.of).length > 2)
    return Object.entries(kind.of)
      .map(([word, quantity]) => `for ${word}: ${quantity.forms.slice(0, 4).join(', ')}`)
      .join('; ');
  return [...new Set(quantitiesOf(kind).flatMap((q) => q.forms))].join(', ');
}

/** What stands in for an argument that is left out. */
export function fallbackText(arg: Arg): string {
  if (!arg.optional) return '';
  const { fallback } = arg;
  if (fallback === undefined) return 'Optional.';
  const said = typeof fallback === 'boolean' ? String(fallback).toUpperCase() : String(fallback);
  const unit = unitOf(arg);
  return `Left out: ${said}${unit ? ` ${unit}` : ''}.`;
}

/** The unit of an argument; empty where it has none or another argument decides. */
export function unitOf(arg: Arg): string {
  const [unit, ...others] = new Set(quantitiesOf(arg.kind).map((q) => q.unit));
  return unit === undefined || others.length > 0 ? '' : unit;
}

/** An argument in one line: what it is, its unit and range, how a cell is read, what stands in for it. */
export function argumentHelp(arg: Arg): string {
  const measure = [unitOf(arg), rangeText(arg.range)].filter(Boolean).join(', ');
  const parts = [
    `${arg.about}${measure ? ` (${measure})` : ''}.`,
    `Write ${formsText(arg)}.`,
    fallbackText(arg),
  ];
  return parts.filter(Boolean).join(' ');
}

const literal = (cell: number | string | boolean | null): string =>
  cell === null
    ? ''
    : typeof cell === 'string'
      ? `"${cell.replace(/"/g, '""')}"`
      : typeof cell === 'boolean'
        ? String(cell).toUpperCase()
        : String(cell);
/** A cell of an example as it is typed; a list, or rows, as an array constant. */
export const cellText = (cell: ExampleCell): string =>
  Array.isArray(cell)
    ? `{${cell.map((row) => [row].flat().map(literal).join(',')).join(';')}}`
    : literal(cell as number);

export const functionName = (row: AnyRow): string => `${NAMESPACE}.${row.id}`;

/** An example as it is typed: =SWEEP.STOPDIFF(8,11). */
export const exampleFormula = (row: AnyRow, example: Example): string =>
  `=${functionName(row)}(${example.cells.map(cellText).join(',')})`;

/** What an example gives: members of a list or rows after semicolons, cells of a row after commas. */
export const exampleAnswer = ({ gives }: Example, number: (value: number) => string): string =>
  [gives]
    .flat()
    .map((row) =>
      [row]
        .flat()
        .map((cell) => (typeof cell === 'number' ? number(cell) : cell))
        .join(', '),
    )
    .join('; ');

/** The columns of an answer that has several side by side, with their names; none for one answer or a list. */
export function columnsOf({ answers, result }: AnyRow): readonly AnswerColumn[] {
  if (typeof answers === 'string') return [];
  return isTable(answers) ? answers.table : answers.map((name) => ({ name, quantity: result }));
}

/** What a function gives, with its unit: "a number of stops in stops" is said as "stops". */
export const resultText = (row: AnyRow): string => row.result.unit || row.result.title;

/** The call as shown in lists: POPSFORTARGET(reading, target, [loss], …). */
export const signature = (row: AnyRow): string =>
  `${row.id}(${(row.args as readonly Arg[]).map((a) => (a.optional ? `[${a.name}]` : a.name)).join(', ')})`;

/** The answer in one line, with its unit and its shape. */
export function answerText(row: AnyRow): string {
  if (row.answers === 'one') return `Answer: ${resultText(row)}.`;
  if (row.answers === 'list') return `Answer: ${resultText(row)}, one for each member of the list.`;
  if (!isTable(row.answers)) return `Answer, side by side: ${row.answers.join(', ')}.`;
  const columns = row.answers.table.map(({ name, quantity: { unit } }) =>
    unit ? `${name} (${unit})` : name,
  );
  return `Answer, rows: ${row.answers.each}, with ${columns.join(', ')}.`;
}

const KINDS: Readonly<Record<SourceKind, string>> = {
  published: 'Published',
  derived: 'Derived',
  'common practice': 'Common practice',
  memory: 'From memory',
};

/** What kind of source it is, and what is said after that; a title may begin with the kind already. */
export function sourceWords({ kind, title, place }: Source): readonly [kind: string, rest: string] {
  const label = KINDS[kind];
  const said = title.toLowerCase().startsWith(label.toLowerCase());
  return [
    label,
    `${said ? title.slice(label.length) : `: ${title}`}${place === undefined ? '' : `; ${place}`}.`,
  ];
}
