import type { TemplateTable, TemplateValue } from '../../src/sheets/template';
import { area } from '../../src/formula/area';
import { areaText } from '../../src/formula/areaText';
import { blockPlace, layout, tableTop } from '../../src/sheets/layout';
import { planAlone } from '../../src/sheets/makePlan';
import { openedBook } from './openedBook';
import { typedData } from './typedData';
import { calculated, templateOf, type Typed, typedOver, wordsBeside } from './support';

const template = templateOf('fleet-compare');
const table = template.blocks.find(
  (block): block is TemplateTable => block.kind === 'table' && block.id === 'Fleet',
) as TemplateTable;
const given = table.columns.filter(({ formula }) => formula === undefined).map(({ id }) => id);

/** What is typed of a model, by column. */
export type Model = Readonly<Record<string, TemplateValue>>;
export const demoModels: readonly Model[] = table.rows.map((row) =>
  Object.fromEntries(given.map((id, i) => [id, row[i] ?? null])),
);

/** The sheet with other inputs, and other models. */
export async function fleet(models: readonly Model[] = demoModels, job: Typed = {}) {
  for (const model of models)
    for (const id of Object.keys(model)) if (!given.includes(id)) throw new Error(`Fleet has no ${id}.`);
  const rows = models.map((model) => given.map((id) => model[id] ?? null));
  const made = await calculated(typedOver(template, job, { Fleet: rows }));
  return {
    ...made,
    beside: (id: string) => wordsBeside(template, made, id),
    of: (row: number, column: string) => made.column('Fleet', column)[row],
    verdicts: () => made.column('Fleet', 'Verdict'),
    ranking: (column: string) => made.column('Ranking', column),
  };
}

/**
 * The sheet with room for so many models, opened once: what is typed into it is calculated each time.
 * @param without - tables that are left out
 */
export async function openFleet(rooms: number, without: readonly string[]) {
  const blocks = template.blocks.filter((block) => block.kind === 'form' || !without.includes(block.id));
  const empty = Array.from({ length: rooms }, () => given.map(() => null));
  const smaller = typedOver({ ...template, blocks, charts: [] }, {}, { Fleet: empty });
  const { sheet } = planAlone(smaller, true);
  const { cells, tables } = layout(smaller);
  const book = await openedBook([sheet]);
  const here = book.workbook.getSheetByName(sheet.name);
  if (!here) throw new Error('The sheet is not there.');
  const top = (name: string) => {
    const found = tables.get(name) as TemplateTable;
    return { row: tableTop(found) + 1, column: blockPlace(found).column, columns: found.columns, rows: found.rows.length };
  }; // prettier-ignore
  const places = top('Fleet');
  const at = (name: string, column: string) => {
    const { row, column: left, columns, rows } = top(name);
    return area({ row, column: left + columns.findIndex(({ id }) => id === column) }, rows, 1);
  };
  /** Columns that are typed, as they stand side by side. */
  const stretches: { readonly from: number; readonly ids: string[] }[] = [];
  for (const [c, { id, formula }] of places.columns.entries()) {
    if (formula !== undefined) continue;
    const last = stretches.at(-1);
    if (last && last.from + last.ids.length === c) last.ids.push(id);
    else stretches.push({ from: c, ids: [id] });
  }
  const read = (name: string, column: string) => book.read(sheet.name, areaText(at(name, column))).flat();
  return {
    async type(models: readonly Model[], job: Typed) {
      for (const [id, value] of Object.entries(job)) {
        const place = cells.get(id)?.place;
        if (!place) throw new Error(`There is no cell ${id}.`);
        here.getRange(place.row, place.column).setValue(typedData({ value }));
      }
      for (const { from, ids } of stretches)
        here
          .getRange(places.row, places.column + from, rooms, ids.length)
          .setValues(
            Array.from({ length: rooms }, (_, r) =>
              ids.map((id) => typedData({ value: models[r]?.[id] ?? null })),
            ),
          );
      await book.calculate();
    },
    /** A column of the models, or of the list in order. */
    read,
    dispose: () => book.dispose(),
  };
}

/** One model as a hire house offers it, and as somebody metered it, with other cells where they are given. */
export const model = (name: string, other: Model = {}): Model => ({
  Head: name, From: 'hire', Had: 1, Rate: 40, Most: 600, Least: 9.375, Step: '0.1', Recycle: 1, Plate: 8,
  Reading: 16, Tenths: 0, 'Read at': 600, Distance: 1.5, Modifier: 'dish 18 cm', ...other,
}); // prettier-ignore

/** A still life without a limit for the flash, on a circuit that nobody asks about. */
export const STILL: Typed = {
  target: 32, distance: 1.5, limit: null, mostPops: 8, frames: 180, volts: null, amps: null, crew: 95,
}; // prettier-ignore
