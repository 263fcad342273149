import { Q, type Quantity } from '../../catalogue/quantities';
import { BLANK } from '../../cells/quantityReader';
import { at } from '../../exposure/core/at';
import { fail, type Fail, isFail, type Result } from '../../exposure/core/result';
import { outside, POPS } from '../../exposure/core/range';
import { log2Ratio, SLACK, spoken } from '../../exposure/core/numbers';
import { headPower } from '../../exposure/distance/headPower';
import { HEAD_SCALES, type HeadScale, wrongTop } from '../../exposure/distance/headScale';
import type { Head } from '../../exposure/balance/heads/settings';
import { type Block, cellIn } from './block';
import { type HeadColumn, type HeadRow, type Layout, ROWS } from './layout';
import { readAs, readWord, readYes } from './readCell';

/** What the sheet Heads says of a model, cell by cell as it stands there. */
export type KnownModel = Readonly<Record<'most' | 'least' | 'step' | 'scale' | 'top', unknown>>;
/** The models of Heads by their names in small letters; nothing where the workbook has no such sheet. */
export type KnownModels = ReadonlyMap<string, KnownModel> | undefined;

/** A head of the table, and what its display shows. */
export interface TableHead {
  readonly name: string;
  readonly column: number;
  readonly scale: HeadScale;
  readonly top: number | undefined;
  readonly head: Head;
}

const SCALE_QUANTITY: Readonly<Record<HeadScale, Quantity>> = {
  energy: Q.energy,
  stops: Q.stops,
  fraction: Q.fullFraction,
  percent: Q.fullPercent,
};
const SCALES = HEAD_SCALES as readonly [HeadScale, ...HeadScale[]];

/** What is known of one head: first what the table says, then what Heads does. */
class HeadReader {
  readonly #block: Block;
  readonly #layout: Layout;
  readonly #column: HeadColumn;
  readonly #model: KnownModel | undefined;
  readonly faults: string[] = [];

  constructor(block: Block, layout: Layout, column: HeadColumn, models: KnownModels) {
    this.#block = block;
    this.#layout = layout;
    this.#column = column;
    const model = String(this.typed('model') ?? '').trim() || column.name;
    this.#model = models?.get(model.toLowerCase());
  }

  typed(row: HeadRow): unknown {
    const place = this.#layout.rows[row];
    return place === undefined ? '' : cellIn(this.#block, place, this.#column.column).value;
  }

  name(row: HeadRow): string {
    return `${ROWS[row]} of “${this.#column.name}”`;
  }

  known(row: HeadRow): unknown {
    const typed = this.typed(row);
    if (typed !== '' && typed !== null && typed !== undefined) return typed;
    return this.#model && row in this.#model ? this.#model[row as keyof KnownModel] : '';
  }

  /** Notes a refusal; gives the value, or what stands in its place so that reading can go on. */
  keep<T>(read: T | Fail, instead: T): T {
    if (!isFail(read)) return read;
    this.faults.push(read.message);
    return instead;
  }

  number(row: HeadRow, quantity: Quantity): number | undefined {
    const read = readAs(this.known(row), quantity, this.name(row));
    return read === BLANK ? undefined : this.keep<number | undefined>(read, undefined);
  }

  get isInHeads(): boolean {
    return this.#model !== undefined;
  }
}

/** Finer no head is set; the settings are gone through one by one, and a slip would make millions of them. */
const FINEST = { least: 0.01 };

const aboveZero = (name: string, value: number): Fail | undefined =>
  value > 0 ? undefined : fail('domain', `${name} must be above 0.`);

/** What a head shows, as its energy: 0 for off. */
function powerOf(
  shown: unknown,
  name: string,
  display: { most: number; scale: HeadScale; top: number | undefined; step: number },
): Result<number> | typeof BLANK {
  if (typeof shown === 'string' && shown.trim().toLowerCase() === 'off') return 0;
  const read = readAs(shown, SCALE_QUANTITY[display.scale], name);
  if (read === BLANK) return read;
  if (isFail(read))
    return read.fail === 'domain'
      ? fail('domain', `${name} must be above 0: where it is off, type off.`)
      : read;
  const power = headPower(read, display.most, display.scale, display.top, display.step);
  return isFail(power) ? fail(power.fail, `${name}: ${power.message}`) : power;
}

export function readHead(
  block: Block,
  layout: Layout,
  column: HeadColumn,
  models: KnownModels,
): TableHead | readonly string[] {
  const reader = new HeadReader(block, layout, column, models);
  const { name } = column;
  const scale = reader.keep(readWord(reader.known('scale'), SCALES, reader.name('scale')), 'energy');
  const top = scale === 'stops' ? (reader.number('top', Q.stops) ?? 0) : undefined;
  const most = reader.number('most', Q.energy);
  const least = reader.number('least', Q.energy);
  const step = reader.number('step', Q.stopsStep);
  const mostPops = reader.number('mostPops', Q.pops) ?? 1;
  const isLocked = reader.keep(readYes(reader.typed('locked'), reader.name('locked')), false);
  const mayGoOff = reader.keep(readYes(reader.typed('mayGoOff'), reader.name('mayGoOff')), false);
  if (reader.faults.length > 0) return reader.faults;
  const missing = [most === undefined ? 'most' : '', least === undefined ? 'least' : '', step === undefined ? 'step' : ''].filter(Boolean); // prettier-ignore
  if (most === undefined || least === undefined || step === undefined) {
    const where = reader.isInHeads ? 'has none in Heads' : 'is not in Heads';
    return [`“${name}” ${where}: type its ${missing.join(', ')} into the table, or add it there.`];
  }
  const wrong =
    aboveZero(reader.name('least'), least) ??
    outside(reader.name('step'), step, FINEST) ??
    wrongTop(scale, top) ??
    outside(reader.name('mostPops'), mostPops, { ...POPS, most: 99 });
  if (wrong) return [wrong.message];
  if (least > most * (1 + SLACK))
    return [`${reader.name('least')} is ${spoken(least)} Ws, more than its most, ${spoken(most)} Ws.`];
  return withPowers(reader, column, { most, least, step, scale, top, mostPops, isLocked, mayGoOff });
}

interface Facts {
  readonly most: number;
  readonly least: number;
  readonly step: number;
  readonly scale: HeadScale;
  readonly top: number | undefined;
  readonly mostPops: number;
  readonly isLocked: boolean;
  readonly mayGoOff: boolean;
}

/** Half a step below its least a head may still stand, as its settings end there. */
const isBelow = (power: number, { least, step }: Facts): boolean =>
  power > 0 && log2Ratio(least, power) > step / 2 + SLACK;

function withPowers(reader: HeadReader, { name, column }: HeadColumn, facts: Facts): TableHead | string[] {
  const metered = powerOf(reader.typed('metered'), reader.name('metered'), facts);
  if (metered === BLANK)
    return [`${reader.name('metered')} is blank: type the power that it showed while it was metered.`];
  if (isFail(metered)) return [metered.message];
  if (metered === 0) return [`“${name}” was off while it was metered: it brings no light that could be turned.`]; // prettier-ignore
  const set = powerOf(reader.typed('setTo'), reader.name('setTo'), facts);
  if (set !== BLANK && isFail(set)) return [set.message];
  const power = set === BLANK ? metered : set;
  for (const [row, shown] of [['metered', metered], ['setTo', power]] as const)
    if (isBelow(shown, facts))
      return [`${reader.name(row)} is ${spoken(shown)} Ws, less than its least, ${spoken(facts.least)} Ws.`]; // prettier-ignore
  const shownPops = reader.number('pops', Q.pops) ?? 1;
  if (set === BLANK && shownPops !== 1)
    return [`${reader.name('pops')} is filled and ${ROWS.setTo} is blank: type the power that it is set to.`];
  const pops = power === 0 ? 1 : shownPops;
  const wrong = outside(reader.name('pops'), pops, { ...POPS, most: 99 });
  if (wrong) return [wrong.message];
  if (reader.faults.length > 0) return reader.faults;
  const { scale, top, ...head } = facts;
  return { name, column, scale, top, head: { ...head, metered, power, pops } };
}

/** The models of Heads from the columns of its table. */
export function knownModels(
  names: readonly unknown[],
  columns: Readonly<Record<keyof KnownModel, readonly unknown[]>>,
): KnownModels {
  const models = new Map<string, KnownModel>();
  for (const [i, name] of names.entries()) {
    const key = String(name ?? '').trim().toLowerCase(); // prettier-ignore
    if (key === '' || models.has(key)) continue;
    models.set(key, {
      most: at(columns.most, i),
      least: at(columns.least, i),
      step: at(columns.step, i),
      scale: at(columns.scale, i),
      top: at(columns.top, i),
    });
  }
  return models;
}
