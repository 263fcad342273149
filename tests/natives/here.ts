import { headless } from '../../src/engine/headless';
import { snapshot } from '../engine/book';
import { unmended } from '../engine/mends/unmended';
import type { Answer } from './answers';
import { placeOf, sheetsOf } from './places';

/** What each formula gives in its cell by the engine with its mends. */
export async function mendedHere(formulas: readonly string[]): Promise<Answer[]> {
  const book = headless(snapshot(sheetsOf(formulas)));
  await book.calculate();
  const given = formulas.map((_, i): Answer => {
    const { sheet, a1 } = placeOf(i);
    const [[value = null] = []] = book.read(sheet, a1);
    return typeof value === 'object' && value !== null ? { error: value.error } : value;
  });
  book.dispose();
  return given;
}

/** What each formula gives in its cell by the engine as its makers ship it. */
export async function unmendedHere(formulas: readonly string[]): Promise<Answer[]> {
  const sheets = await unmended(Object.values(sheetsOf(formulas)));
  return formulas.map((_, i) => {
    const { sheet, row, column } = placeOf(i);
    return sheets[Number(sheet.slice('Sheet'.length))]?.[row]?.[column] ?? null;
  });
}
