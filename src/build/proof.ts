import { rowOf } from '../catalogue';
import { SOURCES, type Source, type SourceKey } from '../catalogue/sources';
import {
  type AnyRow,
  type Arg,
  type ExampleCell,
  isChoice,
  isChosen,
  isTruth,
  quantitiesOf,
} from '../catalogue/types';
import { cellText, columnsOf, functionName, unitOf } from '../catalogue/words';
import { at } from '../exposure/core/at';
import { bareNumber, bareOf } from '../cells/bare';
import { exactMark } from '../exposure/stops/marks';
import { plainNumber } from '../pane/numberText';
import type { TemplateColumn, Template, TemplateValue } from '../sheets/template';

/** A published check as its file says it (see `src/published`). */
export interface PublishedCheck {
  readonly source: SourceKey;
  readonly place?: string;
  readonly via: 'call' | 'pure';
  readonly function: string;
  readonly cells: readonly ExampleCell[];
  readonly part?: string;
  readonly gives: number | string;
  readonly tolerance?: number | { readonly relative: number };
}

const isSome = (cell: ExampleCell | undefined): boolean => cell !== null && cell !== undefined;

/**
 * A cell that is read as the plain number it is. A spreadsheet's cell that equals a mark means the exact value behind it,
 * one that is 0 may be missing, and one that no studio has needs its unit.
 */
function asTyped(cell: ExampleCell, arg: Arg): ExampleCell {
  if (Array.isArray(cell)) return cell.map((member: ExampleCell) => asTyped(member, arg)) as ExampleCell;
  if (typeof cell !== 'number' || isChoice(arg.kind) || isTruth(arg.kind) || isChosen(arg.kind)) return cell;
  const { marks, blank, words, grammar, prefixes, unit } = arg.kind;
  if (cell === 0 && blank === 'missing') return words?.infinity === 0 ? 'infinity' : 'none';
  if (marks !== undefined && exactMark(marks, cell) !== undefined) return `${cell} exact`;
  if (!Number.isNaN(bareNumber(cell, bareOf(arg.kind, true)))) return cell;
  // so large or so small it is believed with its unit
  return grammar === 'aperture' ? `f/${cell}` : prefixes ? `${unit} ${cell}` : `${cell} ${unit}`;
}

/** The cells of a check as they stand in a formula. */
const typedCells = ({ cells, via }: PublishedCheck, row: AnyRow): readonly ExampleCell[] =>
  via === 'call' ? cells : cells.map((cell, i) => asTyped(cell, at<Arg>(row.args, i)));

/** "=SWEEP.POPSFORTARGET(16,45,1)". Of several answers side by side, the one that the check names. */
function liveFormula(check: PublishedCheck, row: AnyRow): string {
  const call = `${functionName(row)}(${typedCells(check, row).map(cellText).join(',')})`;
  if (check.part === undefined) return `=${call}`;
  const column = columnsOf(row).findIndex(({ name }) => name === check.part);
  return `=INDEX(${call},1,${column + 1})`;
}

/** The unit after a value, where neither the argument's name says it (mostPops 4) nor the number itself (an f-number). */
function unitAfter(arg: Arg): string {
  const unit = unitOf(arg);
  const isPlain = quantitiesOf(arg.kind).some(({ grammar, prefixes }) => grammar === 'aperture' || prefixes);
  const words = arg.name.replace(/[A-Z]/g, ' $&').toLowerCase().split(' ');
  return unit === '' || isPlain || words.includes(unit) ? '' : ` ${unit}`;
}

/** A number with as many figures as a reader needs; the formula beside it has them all. */
const short = (member: unknown): string =>
  typeof member === 'number' ? plainNumber(member) : String(member);

const listed = (members: readonly unknown[]): string => {
  const more = members.length > SHOWN ? ` … (${members.length} values)` : '';
  return `${members.slice(0, SHOWN).map(short).join('; ')}${more}`;
};
const SHOWN = 5;

/** "reading 16, target 45, loss 1". */
function inputWords({ cells, part }: PublishedCheck, row: AnyRow): string {
  const words = cells.flatMap((cell, i) => {
    if (!isSome(cell)) return [];
    const arg = at<Arg>(row.args, i);
    const said = listed([cell].flat(2));
    return [`${arg.name} ${said}${typeof cell === 'number' ? unitAfter(arg) : ''}`];
  });
  return [...words, ...(part === undefined ? [] : [`→ ${part}`])].join(', ');
}

const allowance = ({ gives, tolerance }: PublishedCheck): number =>
  typeof tolerance === 'object' ? tolerance.relative * Math.abs(Number(gives)) : (tolerance ?? 0);

const CHECK_COLUMNS: readonly TemplateColumn[] = [
  { id: 'Function', quantity: 'text', fixed: 'values' },
  { id: 'Inputs', quantity: 'text', fixed: 'values' },
  { id: 'Printed', quantity: 'number', fixed: 'values', note: 'The value that the source gives.' },
  {
    id: 'Live',
    quantity: 'number',
    fixed: 'formulas',
    note: 'Calculated now, in this workbook, by the function. Point at the cell to see the formula.',
  },
  {
    id: 'Difference',
    quantity: 'difference',
    note: 'Below the twelfth figure it is none: spreadsheets drop such differences, each in its own way.',
    formula:
      '=IF(AND(ISNUMBER([@Printed]),ISNUMBER([@Live])),IF(ABS([@Live]-[@Printed])<=ABS([@Printed])/1E12,0,[@Live]-[@Printed]),"")',
  },
  {
    id: 'Allowed',
    quantity: 'difference',
    fixed: 'values',
    note: 'Half of the last digit printed; where many digits are known, a small part of the value. A text must be the same.',
  },
  {
    id: 'Verdict',
    quantity: 'text',
    formula:
      '=IF(IF(ISNUMBER([@Printed]),IF(ISNUMBER([@Difference]),ABS([@Difference])<=[@Allowed],FALSE),IFERROR([@Live]=[@Printed],FALSE)),"agrees","DIFFERS")',
    warning: { when: '=[@Verdict]<>"agrees"', text: 'differs' },
  },
  { id: 'Source', quantity: 'text', fixed: 'values', note: 'Its title stands in the list at the end.' },
  { id: 'Place', quantity: 'text', fixed: 'values' },
];

const SOURCE_COLUMNS: readonly TemplateColumn[] = [
  { id: 'Key', quantity: 'text', fixed: 'values' },
  { id: 'Kind', quantity: 'text', fixed: 'values' },
  {
    id: 'Checks',
    quantity: 'count',
    formula: '=COUNTIF(Checks[Source],[@Key])',
  },
  { id: 'Title', quantity: 'text', fixed: 'values' },
];

/** Widths of the columns: texts have the room that the longest of them needs. */
function widths(rows: readonly (readonly TemplateValue[])[], keys: readonly string[]): readonly number[] {
  const longest = (column: number): number =>
    Math.max(...rows.map((row) => String(row[column] ?? '').length)) * LETTER;
  const key = Math.max(...keys.map(({ length }) => length));
  const name = Math.max(...rows.map(([id]) => String(id).length)) * CAPITAL;
  return [Math.max(key, name), longest(1), 16, 16, 12, 12, 10, key, longest(6)].map((width) =>
    Math.min(WIDEST, Math.ceil(width) + 1),
  );
}

/** Widths of letters against that of a figure, in which a sheet counts: without them, words would get too much room or too little. */
const LETTER = 0.78;
const CAPITAL = 1.2;
const WIDEST = 80;
const TOP = 10;

/**
 * The sheet *Proof*: every published check, calculated again where the sheet stands.
 *
 * @param checks - of all topics, in the order of the sheet.
 */
export function proofTemplate(checks: readonly PublishedCheck[]): Template {
  const rows = checks.map((check): readonly TemplateValue[] => {
    const row = rowOf(check.function);
    if (row === undefined) throw new Error(`A published check names ${check.function}, which is no function`);
    return [
      check.function,
      inputWords(check, row),
      check.gives,
      liveFormula(check, row),
      allowance(check),
      check.source,
      check.place ?? null,
    ];
  });
  const keys = [...new Set(checks.map(({ source }) => source))].sort();
  const sources = keys.map((key): readonly TemplateValue[] => {
    const { kind, title }: Source = SOURCES[key];
    return [key, kind, title];
  });
  return {
    id: 'proof',
    name: 'Proof',
    answers: 'Why should I trust these numbers?',
    start:
      'Nothing needs typing. Each row is a value that somebody else printed or worked out, and beside it the value that our function gives in this workbook now. A row that differs is marked, and counted above.',
    words: ['check', 'source', 'published', 'test', 'accuracy'],
    columns: widths(rows, keys),
    freezeRows: TOP + 1,
    landscape: true,
    blocks: [
      {
        kind: 'form',
        title: 'All together',
        at: 'A4',
        fields: [
          { id: 'all', label: 'Checks', quantity: 'count', formula: '=COUNTA(Checks[Function])' },
          { id: 'agree', label: 'Agree', quantity: 'count', formula: '=COUNTIF(Checks[Verdict],"agrees")' },
          {
            id: 'differ',
            label: 'Differ',
            quantity: 'count',
            answer: true,
            formula: '={all}-{agree}',
            remark: 'within what the source prints',
            warning: { when: '={differ}>0', text: 'look for the marked rows' },
          },
        ],
      },
      { kind: 'table', title: 'Every check', at: `A${TOP}`, id: 'Checks', columns: CHECK_COLUMNS, rows },
      {
        kind: 'table',
        title: 'The sources',
        at: `A${TOP + rows.length + 4}`,
        id: 'Sources',
        columns: SOURCE_COLUMNS,
        rows: sources,
      },
    ],
    charts: [],
    cautions: [
      'A value that agrees proves the sum, not the set: a meter, a lamp and a shutter have tolerances of their own. Meter, and make a test exposure.',
    ],
  };
}
