import { existsSync } from 'node:fs';
import { UnreadableFile } from '../../xlsx/refused';
import type { Book } from '../../book/book';
import { sayUnknownFunctions } from '../../engine/unknownFunctions';
import { calculate, type Calculated } from './calculateFormulas';
import { checkBook, openBook, saveBook } from './storedDifferences';
import { either } from './sentences';
import type { Terminal } from './terminal';

/** The files and the sheet that a command names. */
export interface Named {
  readonly book: string;
  readonly sheet: string | undefined;
  readonly out: string | undefined;
}
type Say = (results: readonly Calculated[]) => number;

/** Formulas beside the cells of a workbook; without any, all that the workbook holds, compared with what is stored. */
export async function calcBook(
  named: Named,
  formulas: readonly string[],
  terminal: Terminal,
  say: Say,
): Promise<number> {
  const wrong = named.out === undefined ? undefined : whyNot(named.out);
  if (wrong !== undefined) {
    terminal.complain(wrong);
    return 1;
  }
  const opened = await openBook(named.book).catch((reason: unknown) => {
    if (reason instanceof UnreadableFile) return reason;
    throw reason;
  });
  if (opened instanceof UnreadableFile) {
    terminal.complain(opened.message);
    return 1;
  }
  const { book } = opened;
  for (const sentence of [...opened.notUnderstood, ...sayUnknownFunctions(book)]) terminal.complain(sentence);
  const sheet = sheetOf(book, named.sheet);
  if (sheet === undefined) {
    terminal.complain(
      `There is no sheet ${named.sheet}; there is ${either(book.sheets.map(({ name }) => name))}.`,
    );
    return 2;
  }
  const status =
    formulas.length > 0
      ? say(await calculate(formulas, { book, sheet }))
      : await sayDifferences(book, named.sheet === undefined ? undefined : sheet, terminal);
  return named.out === undefined ? status : Math.max(status, await write(named.out, book, terminal));
}

/** The name of a sheet as the workbook spells it. */
function sheetOf({ sheets }: Book, asked: string | undefined): string | undefined {
  const [first] = sheets;
  return asked === undefined
    ? first?.name
    : sheets.find(({ name }) => name.toLowerCase() === asked.toLowerCase())?.name;
}

async function sayDifferences(book: Book, only: string | undefined, terminal: Terminal): Promise<number> {
  const { differences, compared, changing, isCircular } = await checkBook(book, only);
  for (const difference of differences) terminal.say(JSON.stringify(difference));
  const ofAll = `${compared} formula ${compared === 1 ? 'cell' : 'cells'} compared`;
  terminal.complain(
    `${ofAll}: ${differences.length === 0 ? 'none' : differences.length} with another value.`,
  );
  if (changing > 0)
    terminal.complain(
      `${changing} more with NOW, TODAY or RAND: they change each time, and were not compared.`,
    );
  if (isCircular)
    terminal.complain(
      'Formulas go round in a circle, each using what another gives: their values are not to be trusted.',
    );
  return differences.length > 0 || isCircular ? 1 : 0;
}

function whyNot(out: string): string | undefined {
  if (!out.toLowerCase().endsWith('.xlsx')) return `The file must end in .xlsx, and ${out} does not.`;
  return existsSync(out) ? `There is a file ${out} already: nothing was written.` : undefined;
}

async function write(out: string, book: Book, terminal: Terminal): Promise<number> {
  const { recalculated } = await checkBook(book);
  const saved = await saveBook(out, recalculated);
  if ('refused' in saved) {
    terminal.complain(saved.refused);
    return 1;
  }
  for (const sentence of saved.changed) terminal.complain(sentence);
  terminal.complain(`Wrote ${out}, with the values calculated here.`);
  return 0;
}
