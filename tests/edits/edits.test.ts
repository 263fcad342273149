import { afterAll, beforeAll, test, vi } from 'vitest';
import { caseNumbers, FULL } from '../full';
import { writeXlsx } from '../../src/xlsx/write';
import { bookOf, Chance, edit, opened, start, valuesInFile, valuesOf } from './play';
import { asInFile, type Model } from './model';

/** Edits in a row. */
const STEPS = 30;
/** So many sequences in the full run, or as many as `npm run edits` asks for; a few for every commit. */
const SEQUENCES = FULL ? Number(process.env['SWEEPTABLE_EDITS'] ?? 25) : 5;

// The engine tells the console of formulas that name what is gone.
beforeAll(() => {
  vi.spyOn(console, 'warn').mockImplementation(() => {});
  vi.spyOn(console, 'error').mockImplementation(() => {});
});
afterAll(() => vi.restoreAllMocks());

/** What a workbook holds that is built in this form from the start. */
async function anew(model: Model): Promise<Record<string, unknown>> {
  const book = await opened(model);
  const values = await valuesOf(book, model);
  book.dispose();
  return values;
}

// the engine rests between its answers: meanwhile others go on
test.concurrent.for(caseNumbers(SEQUENCES))(
  'a workbook is after each of thirty edits as if it were built so: %i',
  async (number, { expect }) => {
    const chance = new Chance(number);
    let model = start(chance);
    const book = await opened(model);
    let values = await valuesOf(book, model);
    const told: string[] = [];
    for (let step = 0; step < STEPS;) {
      const next = edit(model, chance);
      if (!next) continue;
      step++;
      told.push(next.told);
      await next.perform(book);
      const wanted = await anew(next.model);
      expect(await valuesOf(book, next.model), told.join('; ')).toEqual(wanted);
      const commands = next.commands ?? 1;
      for (let i = 0; i < commands; i++) await book.workbook.undo();
      expect(await valuesOf(book, model), `${told.join('; ')}; undone`).toEqual(values);
      for (let i = 0; i < commands; i++) await book.workbook.redo();
      expect(await valuesOf(book, next.model), `${told.join('; ')}; done again`).toEqual(wanted);
      [model, values] = [next.model, wanted];
    }
    expect(Object.keys(values).length).toBeGreaterThan(0);
    const file = await writeXlsx(bookOf(book, model));
    expect(await valuesInFile(file), `${told.join('; ')}; from a file`).toEqual(await anew(asInFile(model)));
    book.dispose();
  },
);
