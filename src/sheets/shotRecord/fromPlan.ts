import { tenthsShown } from './tenthsShown';
import { allRows, type SheetRead, tableCalled, valuesOf } from '../sheetRead';
import type { TemplateValue } from '../template';
import { labelled, type ShotRecord, type Values } from './shotRecord';

/** The tables that lights are planned in: of Pops plan, and of Lights on set. */
const PLANNED = 'Plan';
const BALANCED = 'Lights';
/** What a record takes over as it stands. */
const ALIKE = ['Head', 'At the subject', 'Most', 'Least', 'Step', 'Scale', 'Top', 'Distance', 'Width'];
/** Cells of the camera, by what the sheets call them, wherever rows and columns have moved them. */
const CAMERA = {
  aperture: 'Lens setting', focal: 'Focal length', draw: 'Bellows draw', filters: 'Lost in filters', pops: 'Pops',
  open: 'Shutter stands open',
} as const; // prettier-ignore
const AMBIENT = { reading: 'Ambient light alone', time: '… metered at' } as const;

/** Whether a sheet has lights that a record could be laid from: what is to be turned stands beside them. */
export const hasLights = ({ tables }: Pick<SheetRead, 'tables'>): boolean =>
  [
    [PLANNED, 'Dial'],
    [BALANCED, 'Turn'],
  ].some((ids) => ids.every((id) => tableCalled(id, tables) !== undefined));

/** What a record takes of the lights of a plan. */
export interface FromPlan {
  readonly record: ShotRecord;
  /** Lights whose reading the plan has worked out and nobody has metered. */
  readonly unmetered: number;
}

/** Key, or where two lights play one part the part with the head. */
function nameOf(row: Values, rows: readonly Values[]): string {
  const [part, head] = [String(row['Part'] ?? ''), String(row['Head'] ?? '')];
  const others = rows.filter((other) => String(other['Part'] ?? '') === part);
  return others.length === 1 && part !== '' ? part : [part, head].filter((word) => word !== '').join(': ');
}

/** A row that waits to be filled: its formulas may answer something all the same. */
const isUntyped = (row: Values): boolean =>
  ['Part', 'Head', 'Power', 'Reading', 'Most'].every((id) => (row[id] ?? null) === null);

/** What is set and read once a plan is followed: the check reading where there is one, or what the plan has worked out. */
function asPlanned(row: Values, dial: TemplateValue, pops: TemplateValue): Values | undefined {
  if (dial === null) return undefined;
  const metered = row['Measured'] ?? null;
  const shown = typeof row['Pop reads'] === 'number' ? tenthsShown(row['Pop reads']) : undefined;
  if (metered === null && !shown) return undefined;
  return metered === null
    ? { Shows: dial, Pops: pops, Reading: shown?.full ?? null, Tenths: shown?.tenths ?? null }
    : { Shows: dial, Pops: pops, Reading: metered, Tenths: row['Its tenths'] ?? null };
}

/** What stands so many columns right of a label. */
type Beside = (label: string, right?: number) => TemplateValue;

/**
 * The light of the room that a plan has beside its table. On the grey card it is the light of the open time, and not of the time at
 * which it was metered: it does not count there.
 */
function ambientOf(beside: Beside): Values[] {
  const [reading, time] = [beside(AMBIENT.reading), beside(AMBIENT.time)];
  if (reading === null) return [];
  const metered = time === null ? 'subject' : `subject, at ${typeof time === 'number' ? `${time} s` : time}`;
  return [{ Light: 'ambient', Reading: reading, Tenths: beside(AMBIENT.reading, 2), Metered: metered, 'At the subject': 'no' }]; // prettier-ignore
}

/**
 * A record of the lights that a sheet plans, as values of the day: it has no link to the plan. Places are not known there.
 *
 * @param sheet - a Lights on set, or a Pops plan.
 */
export function recordFromPlan(sheet: SheetRead): FromPlan {
  const at = valuesOf(sheet);
  const rowsIn = (id: string): readonly Values[] => {
    const table = tableCalled(id, sheet.tables);
    return table ? allRows(table, at) : [];
  };
  const planned = rowsIn(PLANNED);
  const rows = planned.length > 0 ? planned : rowsIn(BALANCED);
  const dials = rowsIn('Dial');
  // what is to be set names its light by its row: somebody may have sorted it
  const dialOf = (i: number): TemplateValue =>
    dials.find((dial) => dial['Row'] === i + 1)?.['Set to'] ?? null;
  const pops = rows.map((row) => row['Pops'] ?? null);
  const most = Math.max(...pops.map(Number));
  const lights = rows.flatMap((row, i): Values[] => {
    if (isUntyped(row)) return [];
    const power = row['Part'] === 'ambient' ? null : (row['Power'] ?? null);
    const own = pops[i] === most ? null : (pops[i] ?? null);
    const light = {
      Light: nameOf(row, rows),
      Shows: power,
      Reading: row['Reading'] ?? null,
      Tenths: row['Tenths'] ?? null,
      ...Object.fromEntries(ALIKE.map((id) => [id, row[id] ?? null])),
      ...asPlanned(row, dialOf(i), own),
    };
    return [light];
  });
  const isWorked = (row: Values, i: number): boolean =>
    row['Measured'] === null && asPlanned(row, dialOf(i), null) !== undefined;
  const beside: Beside = (label, right = 1) => {
    const found = labelled(sheet, label);
    return found ? at(found.row, found.column + right) : null;
  };
  const set = Object.fromEntries(Object.entries(CAMERA).map(([id, label]) => [id, beside(label)]));
  // one pop needs no time, and a record takes none of 0
  const isOpen = typeof set['open'] === 'number' && set['open'] > 0;
  return {
    record: {
      set: { ...set, open: isOpen ? (set['open'] ?? null) : null },
      lights: [...lights, ...ambientOf(beside)],
    },
    unmetered: rows.filter(isWorked).length,
  };
}
