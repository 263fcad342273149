import { area } from '../../src/formula/area';
import { areaText } from '../../src/formula/areaText';
import { blockPlace, layout, tableTop } from '../../src/sheets/layout';
import { planAlone } from '../../src/sheets/makePlan';
import type { Block, TemplateTable, TemplateValue } from '../../src/sheets/template';
import { openedBook } from './openedBook';
import { calculated, templateOf, type Typed, typedOver, wordsBeside } from './support';
import { typedData } from './typedData';

const template = templateOf('shot-record');
const table = template.blocks.find(
  (block): block is TemplateTable => block.kind === 'table' && block.id === 'Record',
) as TemplateTable;
const given = table.columns.filter(({ formula }) => formula === undefined).map(({ id }) => id);

/** What is typed of a light, by column. */
export type Light = Readonly<Record<string, TemplateValue>>;
export const demoLights: readonly Light[] = table.rows.map((row) =>
  Object.fromEntries(given.map((id, i) => [id, row[i] ?? null])),
);

const rowsOf = (lights: readonly Light[]): TemplateValue[][] => {
  for (const light of lights)
    for (const id of Object.keys(light)) if (!given.includes(id)) throw new Error(`Record has no ${id}.`);
  return lights.map((light) => given.map((id) => light[id] ?? null));
};

/** Rows for so many lights at least: a sheet of one size stays open from one test to the next. */
const ROOMS = 8;
const padded = (lights: readonly Light[], rooms = ROOMS): Light[] => [
  ...lights,
  ...Array.from({ length: Math.max(0, rooms - lights.length) }, () => ({})),
];

/** The sheet with other inputs, and other lights. */
export async function record(lights: readonly Light[] = demoLights, typed: Typed = {}) {
  const made = await calculated(typedOver(template, typed, { Record: rowsOf(padded(lights)) }));
  return {
    ...made,
    beside: (id: string) => wordsBeside(template, made, id),
    of: (column: string, row = 0) => made.column('Record', column)[row],
    again: (column: string) => made.column('Again', column).slice(0, lights.length),
    notes: () => made.column('Again', 'Note').slice(0, lights.length),
  };
}

/** A light with a head of tenths that shows fractions of 600 Ws, at half power, with other cells where they are given. */
export const light = (name: string, other: Light = {}): Light => ({
  Light: name, Shows: '1/2', Reading: 11, Tenths: 0, Today: 11, 'Its tenths': 0, 'At the subject': 'yes',
  Most: 600, Least: 9.375, Step: '0.1', Scale: 'fraction', ...other,
}); // prettier-ignore

/** What a grey card does not say. */
export const NO_CARD: Typed = { cardThen: null, blackThen: null, cardToday: null, blackToday: null };

/** What is only said of a light: nothing is worked out from it. */
const TOLD = [
  'Words',
  'Instead',
  'Moved',
  'Stand at',
  'Far',
  'Miss',
  'Out',
  'Stands',
  'Aims',
  'Front',
  'Colour',
];

/** The table alone with room for so many lights, opened once: what is typed into it is calculated each time. */
export async function openRecord(rooms: number) {
  const blocks = template.blocks.flatMap((block): Block[] => {
    if (block.kind === 'form') return [block];
    const kept = block.columns.filter(({ id }) => (block.id === 'Record' ? !TOLD.includes(id) : ['Light', 'Row'].includes(id))); // prettier-ignore
    return block.id === 'Again' ? [] : [{ ...block, columns: kept }];
  });
  const empty = rowsOf(padded([], rooms));
  const smaller = typedOver({ ...template, blocks }, NO_CARD, { Record: empty, AsLit: [[1]] });
  const { sheet } = planAlone(smaller, true);
  const found = layout(smaller).tables.get('Record') as TemplateTable;
  const book = await openedBook([sheet]);
  const here = book.workbook.getSheetByName(sheet.name);
  const [top, left] = [tableTop(found) + 1, blockPlace(found).column];
  const at = (id: string) => left + found.columns.findIndex((column) => column.id === id);
  const common = layout(smaller).cells.get('common')?.place;
  if (!here || !common) throw new Error('The sheet is not there.');
  /** What stands in each column: only what changes is typed. */
  const typed = new Map<string, string>();
  return {
    async type(lights: readonly Light[]) {
      const values = rowsOf(padded(lights, rooms));
      for (const [i, id] of given.entries()) {
        const column = values.map((row) => row[i] ?? null);
        if (typed.get(id) === JSON.stringify(column)) continue;
        typed.set(id, JSON.stringify(column));
        here.getRange(top, at(id), rooms, 1).setValues(column.map((value) => [typedData({ value })]));
      }
      await book.calculate();
    },
    read: (id: string) =>
      book.read(sheet.name, areaText(area({ row: top, column: at(id) }, rooms, 1))).flat(),
    common: () => book.read(sheet.name, areaText(area(common, 1, 1)))[0]?.[0],
    dispose: () => book.dispose(),
  };
}
