import type { EngineValue } from '../../../src/engine/headless';
import type { Place } from '../../../src/formula/address';
import { isCellError } from '../../../src/formula/errors';
import { blockPlace, fieldRow, isInput, tableTop } from '../../../src/sheets/layout';
import type { Form, Template, TemplateTable } from '../../../src/sheets/template';
import { type Seen, warningCells } from './opened';
import type { Slip } from './mishaps';

/** A cell that a formula fills. */
interface Result {
  readonly name: string;
  readonly place: Place;
  /** It says something: a sentence, not a reading in the words of a meter. */
  readonly says: boolean;
  /** It stands among what an answer comes of, where nobody looks for one. */
  readonly inside: boolean;
  /** Where words about it would stand: its remark, or the words and the marks of its row. */
  readonly beside: readonly Place[];
}

const SAYING = ['text', 'onePiece', 'words'];
/** Tables that are drawn and not read: what is wrong with a recording is said above it, once for all of its samples. */
const DRAWN: readonly string[] = ['Trace'];
const isInside = (block: Form | TemplateTable): boolean =>
  /^(How it comes about|…)/.test(block.title) || (block.kind === 'table' && DRAWN.includes(block.id));

function formResults(form: Form): Result[] {
  const column = blockPlace(form).column + 1;
  return form.fields.flatMap((field, i) => {
    const row = fieldRow(form, i);
    const common = { inside: isInside(form), beside: [{ row, column: column + 2 }] };
    const value: Result = {
      ...common,
      name: field.id,
      place: { row, column },
      says: SAYING.includes(field.quantity),
    };
    const words: Result = {
      ...common,
      name: `what is said beside ${field.id}`,
      place: { row, column: column + 2 },
      says: true,
    };
    return [...(field.formula === undefined ? [] : [value]), ...(field.warning ? [words] : [])];
  });
}

function tableResults(table: TemplateTable, warnings: readonly Place[]): Result[] {
  const left = blockPlace(table).column;
  // What stands right of what a row lacks is worked with, and not looked at.
  const lacks = table.columns.findIndex(({ id }) => id === 'Lacks');
  return table.rows.flatMap((_, r) => {
    const row = tableTop(table) + 1 + r;
    const of = (c: number): Place => ({ row, column: left + c });
    const words = table.columns.flatMap((column, c) =>
      column.formula !== undefined && SAYING.includes(column.quantity) ? [of(c)] : [],
    );
    const beside = [...words, ...warnings.filter((place) => place.row === row)];
    return table.columns.flatMap((column, c) =>
      isInput(column) || column.fixed === 'values'
        ? []
        : [
            {
              name: `${table.id}[${column.id}] ${r + 1}`,
              place: of(c),
              says: SAYING.includes(column.quantity),
              inside: isInside(table) || (c > lacks && lacks >= 0),
              beside,
            },
          ],
    );
  });
}

/** Answers that follow from another one, beside which it is said that heads are left out of both. */
const FOLLOWING: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  'freeze-check': { off: 'reads', more: 'reads', nearer: 'reads', open: 'reads', depthLeft: 'reads' },
};

function resultsOf(template: Template): Result[] {
  const warnings = warningCells(template).map(({ place }) => place);
  const results = template.blocks.flatMap((block) =>
    block.kind === 'form' ? formResults(block) : tableResults(block, warnings),
  );
  return results.map((result) => {
    const first = results.find(({ name }) => name === FOLLOWING[template.id]?.[result.name]);
    return first ? { ...result, beside: [...result.beside, ...first.beside] } : result;
  });
}

const same = (one: EngineValue, other: EngineValue): boolean => {
  if (typeof one === 'number' && typeof other === 'number')
    return Math.abs(one - other) <= 1e-9 * Math.max(1e-3, Math.abs(one), Math.abs(other));
  if (isCellError(one) && isCellError(other)) return one.error === other.error;
  return (one ?? '') === (other ?? '');
};

const READING = /^(?:(?:above |below |beyond )?f\/[\d.]+(?: [+−]0\.\d)?|[\d.]+)$/;
/** A number, or a reading as a meter shows it. */
const isAnswer = (value: EngineValue): boolean =>
  typeof value === 'number' || (typeof value === 'string' && READING.test(value));
/** A sentence that begins with the sign of a warning, a line of a table that says something, or a mark. */
const isSaid = (value: EngineValue): boolean =>
  value === true || (typeof value === 'string' && value !== '' && !isAnswer(value));

const shown = (value: EngineValue): string => (isCellError(value) ? value.error : JSON.stringify(value));

/** A sheet after something was typed into it. */
export interface After {
  readonly seen: Seen;
  readonly slip: Slip;
}

export interface Judge {
  /** Answers that are errors, with no words that say why. */
  readonly errors: (seen: Seen) => string[];
  /** Those, and answers that changed without a word. */
  readonly silent: (seen: Seen) => string[];
  /** Whether the sheet shows something other than the demo. */
  readonly moves: (seen: Seen) => boolean;
  /** Whether the sheet says something that it does not say of the demo. */
  readonly speaks: (seen: Seen) => boolean;
  /**
   * What differs in two sheets that should be alike, other than a cell that repeats what was typed. One that refuses in words
   * may leave answers out.
   */
  readonly unlike: (one: After, other: After) => string[];
}

export function judgeOf(template: Template, demo: Seen): Judge {
  const results = resultsOf(template);
  const outside = results.filter(({ inside }) => !inside);
  const isNews = (seen: Seen, place: Place): boolean =>
    isSaid(seen(place)) && !same(seen(place), demo(place));
  const explained = (seen: Seen, { beside }: Result): boolean => beside.some((place) => isNews(seen, place));
  const unexplained = (seen: Seen, isBad: (is: EngineValue, was: EngineValue) => boolean): string[] =>
    outside.flatMap((result) => {
      const [is, was] = [seen(result.place), demo(result.place)];
      if (!isBad(is, was) || explained(seen, result)) return [];
      return [`${result.name} is ${shown(is)}, not ${shown(was)}, without a word`];
    });
  const speaks = (seen: Seen): boolean =>
    outside.some((result) => (result.says && isNews(seen, result.place)) || explained(seen, result));
  return {
    errors: (seen) => unexplained(seen, isCellError),
    silent: (seen) => unexplained(seen, (is, was) => isCellError(is) || (isAnswer(is) && !same(is, was))),
    moves: (seen) => outside.some(({ place }) => !same(seen(place), demo(place))),
    speaks,
    unlike: (one, other) => {
      const refused = speaks(one.seen);
      return results.flatMap(({ name, place }) => {
        const [is, should] = [one.seen(place), other.seen(place)];
        const repeats = is === one.slip && should === other.slip;
        const isFine = same(is, should) || repeats || (refused && !isAnswer(is));
        return isFine ? [] : [`${name} is ${shown(is)}, not ${shown(should)}`];
      });
    },
  };
}
