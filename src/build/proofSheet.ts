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
import { bareNumber, bareOf } from '../cells/bareNumber';
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
  /** Why print and value may differ, or how the one became the other. */
  readonly note?: string;
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

/** What the last digit that is printed stands for: 1 for 45, 0.01 for 0.63, 100 for 10600, whose noughts only say how large it is. */
function lastDigit(printed: number): number {
  const [digits = '', exponent = '0'] = String(printed).split('e');
  const [whole = '', decimals = ''] = digits.split('.');
  const noughts = decimals === '' ? (/(?<=[1-9])0*$/.exec(whole)?.[0].length ?? 0) : -decimals.length;
  return 10 ** (noughts + Number(exponent));
}

/** Where it stands in the source, and why a value may be further from it than its last digit. */
function placeAndReason(check: PublishedCheck): string | null {
  const { gives, note, place } = check;
  const isWide = typeof gives === 'number' && allowance(check) > lastDigit(gives);
  const said = [...(place === undefined ? [] : [place]), ...(isWide && note !== undefined ? [note] : [])];
  return said.length > 0 ? said.join('; ') : null;
}

const CHECK_COLUMNS: readonly TemplateColumn[] = [
  { id: 'Check', quantity: 'text', fixed: 'values', wrap: true },
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
    note: 'Half of the last digit printed, or more for the reason that stands beside it; where many digits are known, a small part of the value. A text must be the same.',
  },
  {
    id: 'Verdict',
    quantity: 'text',
    formula:
      '=IF(IF(ISNUMBER([@Printed]),IF(ISNUMBER([@Difference]),ABS([@Difference])<=[@Allowed],FALSE),IFERROR(AND([@Printed]<>"",[@Live]=[@Printed]),FALSE)),"agrees","DIFFERS")',
    warning: { when: '=[@Verdict]<>"agrees"', text: 'differs' },
  },
  { id: 'Source', quantity: 'text', fixed: 'values', wrap: true },
  {
    id: 'Place and reason',
    quantity: 'text',
    fixed: 'values',
    wrap: true,
    note: 'Where in the source it stands; and why the value may differ by more than the last digit printed.',
  },
];

/** How far a source carries, in a word. */
const KIND_WORDS: Readonly<Record<Source['kind'], string>> = {
  published: 'printed',
  derived: 'apart',
  'common practice': 'practice',
  memory: 'memory',
};

/** Titles come last: there they run on to the edge of the page, a line each. */
const SOURCE_COLUMNS: readonly TemplateColumn[] = [
  { id: 'Kind', quantity: 'text', fixed: 'values' },
  { id: 'Checks', quantity: 'count', formula: '=COUNTIF(Checks[Source],[@Source])' },
  { id: 'Source', quantity: 'text', fixed: 'values' },
];

/** A count of the checks whose sources are of a kind. */
const counted = (id: string, label: string, kind: Source['kind'], remark: string) => ({
  id,
  label,
  quantity: 'count',
  formula: `=SUMIFS(Sources[Checks],Sources[Kind],"${KIND_WORDS[kind]}")`,
  remark,
});

/** Together as wide as a page that prints at its own size; words share what numbers leave so that rows are lowest. */
const WIDTHS: readonly number[] = [28, 10, 10, 10, 9, 8, 34, 22];
const SOURCES_TOP = 10;

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
      `${check.function}: ${inputWords(check, row)}`,
      check.gives,
      liveFormula(check, row),
      allowance(check),
      SOURCES[check.source].title,
      placeAndReason(check),
    ];
  });
  // Several keys may be parts of one work.
  const kinds = new Map(checks.map(({ source }) => [SOURCES[source].title, SOURCES[source].kind]));
  const sources = [...kinds]
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([title, kind]): readonly TemplateValue[] => [KIND_WORDS[kind], title]);
  return {
    id: 'proof',
    name: 'Proof',
    answers: 'Why should I trust these numbers?',
    start:
      'Nothing needs typing. Each row is a value that somebody else printed or worked out, and beside it the value that our function gives in this workbook now. A row that differs is marked, and counted here.',
    inList: { fields: ['printed', 'apart', 'differ'] },
    words: ['check', 'source', 'published', 'test', 'accuracy'],
    columns: WIDTHS,
    freezeRows: 2,
    headsPages: 'Checks',
    landscape: true,
    blocks: [
      {
        kind: 'form',
        title: 'All together',
        at: 'A4',
        fields: [
          counted(
            'printed',
            'Printed by somebody',
            'published',
            'read where it was printed, in the source that is named',
          ),
          counted(
            'apart',
            'Worked apart',
            'derived',
            'by another route than our code, from what the source defines',
          ),
          counted('memory', 'From memory', 'memory', 'known to be printed, but not read again'),
          {
            id: 'differ',
            label: 'Differ',
            quantity: 'count',
            answer: true,
            formula: '=ROWS(Checks[Verdict])-COUNTIF(Checks[Verdict],"agrees")',
            remark: 'of all of them, by more than is allowed',
            warning: { when: '={differ}>0', text: 'look for the marked rows' },
          },
        ],
      },
      {
        kind: 'table',
        title: 'The sources',
        at: `A${SOURCES_TOP}`,
        id: 'Sources',
        columns: SOURCE_COLUMNS,
        rows: sources,
      },
      {
        kind: 'table',
        title: 'Every check',
        at: `A${SOURCES_TOP + sources.length + 3}`,
        id: 'Checks',
        newPage: true,
        columns: CHECK_COLUMNS,
        rows,
      },
    ],
    charts: [],
    cautions: [
      'A value that agrees proves the sum, not the set: a meter, a lamp and a shutter have tolerances of their own. Meter, and make a test exposure.',
    ],
  };
}
