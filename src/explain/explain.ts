import { NAMESPACE, rowOf } from '../catalogue';
import type { Quantity } from '../catalogue/quantities';
import { type AnyRow, type Arg, isChosen, quantitiesOf } from '../catalogue/types';
import { columnsOf } from '../catalogue/words';
import { chosenQuantity, dependsOn, readArgument } from '../cells/argument';
import { type Answer, type AnswerCell, call } from '../cells/call';
import { cellError, isCellError } from '../formula/errors';
import { type Constant, type Piece, readFormula } from '../formula/tree';
import { type Came, formulaWithNumbers, type Where, whereLines } from './formulaNumbers';
import { cellsOf, type CellRange, cellRange } from '../cells/cellRange';
import { isReadToDecimals } from '../cells/lists';
import { at } from '../exposure/core/at';
import { errorOfCell } from './errorSentences';
import { type CellReading, describeReading } from './reading';
import { worth } from './figures';

/** Values of a reference, in rows. */
export type CellRows = readonly (readonly unknown[])[];

/** One argument as it stands in the formula, and how its cells were read. */
export interface ArgumentReading {
  readonly arg: Arg;
  /** As typed; empty where it is left out. */
  readonly given: string;
  /** The first cells, in their order. */
  readonly cells: readonly CellReading[];
  /** How many cells follow. */
  readonly more: number;
  /** Why nothing can be said of the cells. */
  readonly unknown?: string;
}

/** One cell of an answer in words: a value with its unit, or an error with the sentence that says what to do. */
export interface AnswerText {
  readonly text: string;
  readonly error?: string;
}

/** One call of a function of ours. */
export interface Step {
  readonly row: AnyRow;
  /** As typed. */
  readonly text: string;
  readonly arguments: readonly ArgumentReading[];
  /** The formula with the numbers of the first cell in it, where it has such a form. */
  readonly numbers?: string;
  /** What the signs of the formula stand for, in the first cell, where numbers cannot take their place. */
  readonly where: readonly Where[];
  /** The first cells of the answer. */
  readonly answers: readonly AnswerText[];
  readonly moreAnswers: number;
  /** Why there is no answer here; the sheet has it all the same. */
  readonly unknown?: string;
}

/** A formula, call by call, the inner ones before those they stand in. */
export interface Explanation {
  readonly steps: readonly Step[];
  /** What cannot be explained, in sentences. */
  readonly remarks: readonly string[];
}

const FIRST = 3;

interface Unknown {
  readonly unknown: string;
}
type Content = CellRows | Unknown;
const isUnknown = (content: Content): content is Unknown => 'unknown' in content;

/**
 * Explains a formula: how the cells of each call were read, its formula with the numbers in it, and the answer or the
 * refusal. Answers come from `call`, the same path by which the sheet gets them.
 *
 * @param look - the values of a reference as typed in the formula; undefined where the host does not know them.
 */
export function explain(formula: string, look: (reference: string) => CellRows | undefined): Explanation {
  const piece = readFormula(formula);
  return piece ? new Explainer(look).explanation(piece) : { steps: [], remarks: [] };
}

type Calculation = Extract<Piece, { kind: 'calculation' }>;

const OURS = `${NAMESPACE}.`;
const isOurs = (piece: Piece): boolean => piece.kind === 'call' && piece.name.startsWith(OURS);

class Explainer {
  readonly #look: (reference: string) => CellRows | undefined;
  readonly #steps: Step[] = [];
  readonly #noSuch = new Set<string>();

  constructor(look: (reference: string) => CellRows | undefined) {
    this.#look = look;
  }

  explanation(piece: Piece): Explanation {
    this.#contentOf(piece);
    const remarks = [...this.#noSuch].map(
      (name) => `There is no function ${name}. The tab “Functions” has them all.`,
    );
    const isAll = isOurs(piece) || (piece.kind === 'calculation' && piece.sign === '@');
    if (!isAll && this.#steps.length > 0)
      remarks.push(
        `${piece.kind === 'call' ? piece.name : 'A calculation'} stands around this and is the spreadsheet’s own, so the cell may show something else.`,
      );
    return { steps: this.#steps, remarks };
  }

  /** What a piece comes to; on the way every call of ours in it becomes a step. */
  #contentOf(piece: Piece): Content {
    switch (piece.kind) {
      case 'value':
        return [[piece.value]];
      case 'list':
        return piece.rows;
      case 'left out':
        return [[undefined]];
      case 'reference':
        return (
          this.#look(piece.text) ?? { unknown: `What is in ${piece.text} cannot be looked up from here.` }
        );
      case 'calculation':
        return this.#joined(piece);
      case 'call': {
        const args = piece.args.map((arg) => this.#contentOf(arg));
        if (!isOurs(piece)) return bySpreadsheet(piece.text);
        const row = rowOf(piece.name.slice(OURS.length));
        if (row) return this.#step(row, piece.text, piece.args, args);
        this.#noSuch.add(piece.name);
        return { unknown: `There is no function ${piece.name}.` };
      }
    }
  }

  /** From the left, without a call for each sign: a sum of thousands is nested as deep as it is long. */
  #joined(piece: Calculation): Content {
    const around: Calculation[] = [];
    let inner: Piece = piece;
    while (inner.kind === 'calculation' && inner.parts[0]) {
      around.push(inner);
      [inner] = inner.parts as [Piece];
    }
    return around.reduceRight<Content>(
      (content, { parts }, i) =>
        calculated(at(around, i), [content, ...parts.slice(1).map((part) => this.#contentOf(part))]),
      inner.kind === 'calculation' ? calculated(inner, []) : this.#contentOf(inner),
    );
  }

  #step(row: AnyRow, text: string, given: readonly Piece[], contents: readonly Content[]): Content {
    const readings = new Readings(row, given, contents);
    const missing = contents.find(isUnknown);
    if (missing) {
      const unknown = 'The answer cannot be worked out here, because not all that goes in is known.';
      this.#steps.push({
        row,
        text,
        arguments: readings.all,
        where: [],
        answers: [],
        moreAnswers: 0,
        unknown,
      });
      return { unknown: `The answer of ${row.id} is not known here.` };
    }
    const answer = call(row, contents);
    const cells: AnswerCell[][] = Array.isArray(answer) ? answer : [[answer]];
    const texts = answerTexts(row, answer, readings.resultQuantity);
    // Where an argument was not read, or there are too many, no formula was worked out.
    const came = texts[0]?.error === '#VALUE!' ? undefined : readings.ofFirstCell();
    const numbers = came && formulaWithNumbers(row, came);
    this.#steps.push({
      row,
      text,
      arguments: readings.all,
      ...(numbers === undefined ? {} : { numbers }),
      where: came && numbers === undefined ? whereLines(row, came) : [],
      answers: texts.slice(0, FIRST),
      moreAnswers: Math.max(0, texts.length - FIRST),
    });
    return cells;
  }
}

const bySpreadsheet = (text: string): Unknown => ({ unknown: `${text} is calculated by the spreadsheet.` });

const SUMS: Readonly<Record<string, (a: number, b: number) => number>> = {
  '+': (a, b) => a + b,
  '-': (a, b) => a - b,
  '*': (a, b) => a * b,
  '/': (a, b) => a / b,
  '^': (a, b) => a ** b,
};

/** Plain sums of single numbers, such as 1/60 and -1/3, come out here; everything else is the spreadsheet's. */
function calculated(piece: Calculation, parts: readonly Content[]): Content {
  const [first, second] = parts;
  const { sign } = piece;
  const isOne = (content: Content): boolean =>
    !isUnknown(content) && content.length === 1 && content[0]?.length === 1;
  if (sign === undefined || !parts.every(isOne)) return bySpreadsheet(piece.text);
  const [a, b] = [first, second].map((content) =>
    content === undefined || isUnknown(content) ? undefined : (at(at(content, 0), 0) as Constant),
  );
  const error = [a, b].find(isCellError);
  if (error) return [[error]];
  if (sign === '@' || (sign === '+' && second === undefined)) return [[a]];
  if (typeof a !== 'number') return bySpreadsheet(piece.text);
  if (second === undefined) return [[sign === '%' ? a / 100 : -a]];
  const sum = SUMS[sign];
  if (typeof b !== 'number' || !sum) return bySpreadsheet(piece.text);
  if (sign === '/' && b === 0) return [[cellError('#DIV/0!')]];
  return [[sum(a, b)]];
}

/** A piece of a formula, with its cells where they are known. */
interface Given {
  readonly text: string;
  readonly grid: CellRange | Unknown;
}

/** How the cells of one call were read. */
class Readings {
  readonly #row: AnyRow;
  readonly #args: readonly Arg[];
  /** The piece of each argument. */
  readonly #given: readonly Given[];
  readonly all: readonly ArgumentReading[];

  constructor(row: AnyRow, given: readonly Piece[], contents: readonly Content[]) {
    this.#row = row;
    this.#args = row.args as readonly Arg[];
    const pieces = given.map(({ text }, i) => {
      const content = at(contents, i);
      return { text, grid: isUnknown(content) ? content : cellRange(content) };
    });
    const leftOut = { text: '', grid: cellRange(undefined) };
    this.#given = this.#args.map((_, i) => pieces[i] ?? leftOut);
    this.all = this.#args.flatMap((arg, i) => {
      const { text, grid } = this.#pieceOf(i);
      // further lists of the same kind need a word only where they are there
      return arg.takes === 'pool' && arg.optional && text === '' ? [] : [this.#reading(arg, text, grid)];
    });
  }

  #pieceOf(place: number): Given {
    return at(this.#given, place);
  }

  #reading(arg: Arg, given: string, grid: CellRange | Unknown): ArgumentReading {
    if ('unknown' in grid) return { arg, given, cells: [], more: 0, unknown: grid.unknown };
    const count = grid.rows * grid.columns;
    const cells: CellReading[] = [];
    for (let i = 0; i < Math.min(count, FIRST); i++) {
      const [row, column] = [Math.floor(i / grid.columns), i % grid.columns];
      const quantity = this.#quantity(arg, row, column);
      if (quantity === 'not known')
        return {
          arg,
          given,
          cells: [],
          more: 0,
          unknown: `How it is read depends on ${dependsOn(arg)}, which is not known here.`,
        };
      const exact = isReadToDecimals(cellsOf(grid), arg, quantity);
      cells.push(describeReading(grid.at(row, column), arg, quantity, exact));
    }
    return { arg, given, cells, more: count - cells.length };
  }

  /** What an argument is read as in one place; another argument may decide it. */
  #quantity(arg: Arg, row: number, column: number): Quantity | undefined | 'not known' {
    if (!isChosen(arg.kind)) return quantitiesOf(arg.kind)[0];
    const index = this.#args.findIndex(({ name }) => name === dependsOn(arg));
    const { grid } = this.#pieceOf(index);
    if ('unknown' in grid) return 'not known';
    const decider = at(this.#args, index);
    const cell = grid.at(grid.rows === 1 ? 0 : row, grid.columns === 1 ? 0 : column);
    if (isCellError(cell)) return 'not known';
    const given = quantitiesOf(decider.kind)[0];
    return chosenQuantity(arg.kind, readArgument(cell, decider, given)) ?? 'not known';
  }

  /** What each argument came to for the first cell of the answer, where all cells are known; nothing where one has no value. */
  ofFirstCell(): readonly Came[] | undefined {
    const came: Came[] = [];
    for (const [i, arg] of this.#args.entries()) {
      const quantity = this.#quantity(arg, 0, 0);
      if (quantity === 'not known') return undefined;
      const grid = this.#pieceOf(i).grid as CellRange;
      if (arg.takes === 'one') {
        const { value, isMissing } = describeReading(grid.at(0, 0), arg, quantity);
        if (isMissing) return undefined;
        came.push({ arg, quantity, value });
        continue;
      }
      if (arg.takes === 'series' || arg.takes === 'grid') {
        came.push({ arg, quantity, value: undefined });
        continue;
      }
      const exact = isReadToDecimals(cellsOf(grid), arg, quantity);
      const members = [...cellsOf(grid)].map((cell) => describeReading(cell, arg, quantity, exact).value);
      came.push({ arg, quantity, value: members.filter((value) => typeof value === 'number') });
    }
    return came;
  }

  /** What the answer is; where it lies on the scale of the first argument, as that is. */
  get resultQuantity(): Quantity {
    const { result } = this.#row;
    if (!result.asFirst) return result;
    const first = this.#quantity(at(this.#args, 0), 0, 0);
    return typeof first === 'object' ? first : result;
  }
}

const FIGURES = 6;

function cellText(cell: AnswerCell, quantity: Quantity): AnswerText {
  if (isCellError(cell)) return { text: errorOfCell(cell), error: cell.error };
  if (cell === '') return { text: 'blank, as nothing is given in its row' };
  if (typeof cell === 'string') return { text: cell };
  const said = worth(cell, quantity, FIGURES);
  if (quantity.grammar !== 'aperture') return { text: said };
  return { text: cell === 0 ? `${said} (no light)` : `f/${said}` };
}

/** The cells of an answer in their order; where several stand side by side, each with its name. */
function answerTexts(row: AnyRow, answer: Answer, quantity: Quantity): AnswerText[] {
  const cells = Array.isArray(answer) ? answer : [[answer]];
  const columns = Array.isArray(answer) ? columnsOf(row) : [];
  return cells.flatMap((line) =>
    line.map((cell, column) => {
      const { name, quantity: own } = columns[column] ?? {};
      const said = cellText(cell, own ?? quantity);
      return name === undefined ? said : { ...said, text: `${name} ${said.text}` };
    }),
  );
}
