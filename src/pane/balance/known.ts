import type { CellRows } from '../../explain/explain';
import type { TemplateValue } from '../../sheets/template';
import { isCellError } from '../../formula/errors';
import type { KnownLight, KnownSet } from './layTable';
import { type KnownModels, knownModels } from './readHeads';

/** Asks the spreadsheet for the values behind references, in their order. */
export type Look = (references: readonly string[]) => Promise<readonly (CellRows | undefined)[]>;

const MODEL_COLUMNS = ['Most', 'Least', 'Step', 'Scale', 'Top'] as const;
const LIGHT_COLUMNS = ['Head', 'Part', 'Power', 'Reading', 'Tenths', 'Most', 'Least', 'Step', 'Scale', 'Top'] as const; // prettier-ignore
type LightColumn = (typeof LIGHT_COLUMNS)[number];

const column = (rows: CellRows | undefined): unknown[] => (rows ?? []).map((line) => line[0]);

/** What the table of Heads says; nothing where the workbook has none. */
export async function lookUpModels(look: Look): Promise<KnownModels> {
  const found = await look(['Head', ...MODEL_COLUMNS].map((name) => `Models[${name}]`));
  if (found[0] === undefined) return undefined;
  const [names = [], most = [], least = [], step = [], scale = [], top = []] = found.map(column);
  return knownModels(names, { most, least, step, scale, top });
}

/** Sheets that know lights, by their tables. Ambient light stands among the lights of the one, in a cell of the other. */
const SHEETS = [
  { name: 'Lights on set', table: 'Lights' },
  { name: 'Pops plan', table: 'Plan' },
] as const;
const AMBIENT = 'ambient';

const plain = (value: unknown): TemplateValue =>
  typeof value === 'number' || (typeof value === 'string' && value !== '' && !isCellError(value))
    ? value
    : null;

function lightsOf(columns: readonly (readonly unknown[])[]): KnownLight[] {
  const cell = (name: LightColumn, row: number): TemplateValue =>
    plain(columns[LIGHT_COLUMNS.indexOf(name)]?.[row]);
  return (columns[0] ?? []).flatMap((head, row) => {
    if (typeof head !== 'string' || head.trim() === '') return [];
    return [
      {
        head: head.trim(),
        part: String(cell('Part', row) ?? ''),
        power: cell('Power', row),
        reading: cell('Reading', row),
        tenths: cell('Tenths', row),
        most: cell('Most', row),
        least: cell('Least', row),
        step: cell('Step', row),
        scale: cell('Scale', row),
        top: cell('Top', row),
      },
    ];
  });
}

/** What the workbook knows of the set, from the first of the sheets that it has; nothing where it has none of them. */
export async function lookUpSet(
  look: Look,
  readingIn: (reading: TemplateValue, tenths: TemplateValue) => TemplateValue,
): Promise<KnownSet | undefined> {
  // prettier-ignore
  const asked = SHEETS.flatMap(({ table }) => LIGHT_COLUMNS.map((name) => `${table}[${name}]`));
  const found = await look([...asked, 'target']);
  const wanted = plain(found[asked.length]?.[0]?.[0]);
  for (const [i, { name }] of SHEETS.entries()) {
    const part = found.slice(i * LIGHT_COLUMNS.length, (i + 1) * LIGHT_COLUMNS.length);
    if (part[0] === undefined) continue;
    const all = lightsOf(part.map(column));
    const lights = all.filter((one) => one.part !== AMBIENT);
    if (lights.length === 0) continue;
    const room = all.find((one) => one.part === AMBIENT);
    return { from: name, lights, wanted, ambient: room ? readingIn(room.reading, room.tenths) : null };
  }
  return undefined;
}
