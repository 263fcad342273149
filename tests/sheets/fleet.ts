import type { TemplateTable, TemplateValue } from '../../src/sheets/template';
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

/**
 * The sheet with other inputs, and other models.
 * @param without - tables that are left out, as nobody looks at them
 */
export async function fleet(
  models: readonly Model[] = demoModels,
  job: Typed = {},
  without: readonly string[] = [],
) {
  for (const model of models)
    for (const id of Object.keys(model)) if (!given.includes(id)) throw new Error(`Fleet has no ${id}.`);
  const smaller = {
    ...template,
    blocks: template.blocks.filter((block) => block.kind === 'form' || !without.includes(block.id)),
  };
  const rows = models.map((model) => given.map((id) => model[id] ?? null));
  const made = await calculated(typedOver(smaller, job, { Fleet: rows }));
  return {
    ...made,
    beside: (id: string) => wordsBeside(template, made, id),
    of: (row: number, column: string) => made.column('Fleet', column)[row],
    verdicts: () => made.column('Fleet', 'Verdict'),
    ranking: (column: string) => made.column('Ranking', column),
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
