import { Q } from '../../catalogue/quantities';
import { BLANK } from '../../cells/quantityReader';
import { at } from '../../exposure/core/at';
import { fail, type Fail, isFail, type Result } from '../../exposure/core/result';
import { METER_STEP } from '../../exposure/light/lightMinusRange';
import { lightUnmix } from '../../exposure/light/unmix/lightUnmix';
import {
  type Band,
  bandOf,
  belowReading,
  type MeteredPoint,
  NO_LIGHT,
} from '../../exposure/balance/heads/bands';
import { POINT_KINDS, type PointKind } from '../../exposure/balance/heads/points';
import { type Block, cellIn } from './block';
import { COLUMNS, type Layout, type PointColumn } from './layout';
import { type MeterRead, readAs, readMeter, readWord } from './readCell';

export interface TablePoint {
  readonly name: string;
  readonly row: number;
  /** Where it lies, as seen from the camera, in any unit; undefined where the table does not say. */
  readonly place: { readonly across: number; readonly up: number } | undefined;
  readonly metered: MeteredPoint;
  /** Heads of which the meter showed that there is too little light. */
  readonly below: readonly string[];
  /** ± stops of each head, where they were metered with one off. */
  readonly plusMinus: readonly number[] | undefined;
}

const KINDS = POINT_KINDS as readonly [PointKind, ...PointKind[]];
const HALF_STEP = METER_STEP / 2;
/** A tolerance that is not said. */
const NO_TOLERANCE = 0;

const bandOfRead = (read: MeterRead): Band =>
  read === 'none' ? NO_LIGHT : 'reads' in read ? bandOf(read.reads, HALF_STEP) : belowReading(read.below);

/** The names of heads, and of what was metered, in place of their numbers, in a sentence of a function that knows none. */
function withNames(sentence: string, names: readonly string[]): string {
  const measured = ['all lit', ...names.map((name) => `without “${name}”`)];
  return sentence
    .replace(/\b[Hh]eads? (\d+(?:(?:, | and )\d+)*)/g, (_, numbers: string) =>
      numbers.replace(/\d+/g, (number) => {
        const name = names[Number(number) - 1];
        return name === undefined ? 'the ambient light' : `“${name}”`;
      }),
    )
    .replace(
      /measurement (\d+)/g,
      (_, number: string) => measured[Number(number) - 1] ?? 'the ambient light',
    );
}

interface Metered {
  readonly heads: readonly Band[];
  readonly below: readonly string[];
  readonly plusMinus: readonly number[] | undefined;
}

/** Reads the cells of one point. */
class PointReader {
  readonly #block: Block;
  readonly #layout: Layout;
  readonly #floor: number;
  readonly #point: { readonly name: string; readonly row: number };

  constructor(block: Block, layout: Layout, point: { name: string; row: number }, floor: number) {
    this.#block = block;
    this.#layout = layout;
    this.#point = point;
    this.#floor = floor;
  }

  cell(key: PointColumn): unknown {
    const column = this.#layout.columns[key];
    return column === undefined ? '' : cellIn(this.#block, this.#point.row, column).value;
  }

  name(key: PointColumn): string {
    return `${COLUMNS[key]} at “${this.#point.name}”`;
  }

  /** A reading that must be there; `what` says of what. */
  reading(value: unknown, what: string): MeterRead | Fail {
    const read = readMeter(value, what, this.#floor);
    if (read !== BLANK) return read;
    return fail('unreadable', `${what} is not measured: meter it, type E where the meter shows E, or none.`);
  }

  has(key: PointColumn): boolean {
    return this.#layout.columns[key] !== undefined;
  }

  ambient(): MeterRead | Fail {
    return this.has('ambient') ? this.reading(this.cell('ambient'), this.name('ambient')) : 'none';
  }

  heads(): (MeterRead | Fail)[] {
    const { isOneOff, heads } = this.#layout;
    return heads.map(({ name, column }) =>
      this.reading(
        cellIn(this.#block, this.#point.row, column).value,
        `${isOneOff ? 'The light without ' : ''}“${name}” at “${this.#point.name}”`,
      ),
    );
  }

  alone(reads: readonly MeterRead[]): Metered {
    const { heads } = this.#layout;
    return {
      heads: reads.map(bandOfRead),
      below: heads.filter((_, h) => typeof reads[h] === 'object' && 'below' in reads[h]).map(({ name }) => name), // prettier-ignore
      plusMinus: undefined,
    };
  }

  /** All lit, and all but one: what each head brings alone, with what is open of it. */
  unmixed(reads: readonly MeterRead[], ambient: MeterRead): Metered | Fail {
    const names = this.#layout.heads.map(({ name }) => name);
    const all = this.reading(this.cell('all'), this.name('all'));
    if (isFail(all)) return all;
    const isAmbientRead = ambient !== 'none';
    const rows = [all, ...reads, ...(isAmbientRead ? [ambient] : [])];
    const faint = rows.find((read) => typeof read !== 'object' || !('reads' in read));
    if (faint !== undefined)
      return fail(
        'no-answer',
        `At “${this.#point.name}” a reading with heads lit shows E or none: light cannot be taken off what was not read.`,
      );
    const lit = [names.map(() => 1), ...names.map((_, off) => names.map((__, h) => (h === off ? 0 : 1)))];
    const pattern = isAmbientRead ? [...lit.map((row) => [...row, 1]), [...names.map(() => 0), 1]] : lit;
    const answer = lightUnmix(pattern, rows.map((read) => (read as { reads: number }).reads)); // prettier-ignore
    const said = ({ message, fail: kind }: Fail): Fail =>
      fail(kind, `At “${this.#point.name}”: ${withNames(message, names)}`);
    if (isFail(answer)) return said(answer);
    const heads: Band[] = [];
    const plusMinus: number[] = [];
    for (const [h] of names.entries()) {
      const { reading, plusMinus: stops } = at(answer, h);
      if (isFail(reading)) return said(reading);
      if (isFail(stops)) return said(stops);
      heads.push(bandOf(reading, stops));
      plusMinus.push(stops);
    }
    return { heads, below: [], plusMinus };
  }

  wanted(kind: PointKind): number | Fail {
    const read = readMeter(this.cell('wanted'), this.name('wanted'), this.#floor);
    if (read !== BLANK && isFail(read)) return read;
    if (read !== BLANK && read !== 'none' && 'reads' in read) return read.reads;
    // what is ignored is shown beside any target; f/1 is as good as another
    if (kind === 'ignore') return 1;
    const what = read === BLANK ? 'is blank' : 'is no f-number';
    return fail(
      'unreadable',
      `${this.name('wanted')} ${what}: say what it shall read, or put ignore under ${COLUMNS.kind}.`,
    );
  }

  place(): TablePoint['place'] | Fail {
    const [across, up] = (['across', 'up'] as const).map((key) =>
      readAs(this.cell(key), Q.signal, this.name(key)),
    ) as [Result<number> | typeof BLANK, Result<number> | typeof BLANK];
    if (across === BLANK || up === BLANK) return undefined;
    if (isFail(across)) return across;
    return isFail(up) ? up : { across, up };
  }
}

/** Reads a point of the table; or says what is wrong with it. */
export function readPoint(
  block: Block,
  layout: Layout,
  point: { readonly name: string; readonly row: number },
  floor: number,
): TablePoint | readonly string[] {
  const reader = new PointReader(block, layout, point, floor);
  const kind = readWord(reader.cell('kind'), KINDS, reader.name('kind'));
  if (isFail(kind)) return [kind.message];
  const faults: string[] = [];
  const kept = <T>(read: T | Fail): T | undefined => {
    if (!isFail(read)) return read;
    faults.push(read.message);
    return undefined;
  };
  const wanted = kept(reader.wanted(kind));
  const within = readAs(reader.cell('within'), Q.tolerance, reader.name('within'));
  const tolerance = within === BLANK ? NO_TOLERANCE : kept(within);
  if (tolerance !== undefined && tolerance < 0) faults.push(`${reader.name('within')} must not be below 0.`);
  const place = kept(reader.place());
  const ambient = kept(reader.ambient());
  const reads = reader.heads().map((read) => kept(read));
  if (faults.length > 0 || wanted === undefined || tolerance === undefined || ambient === undefined)
    return faults;
  const all = reads.filter((read) => read !== undefined);
  const metered = layout.isOneOff ? reader.unmixed(all, ambient) : reader.alone(all);
  if (isFail(metered)) return [metered.message];
  if (kind !== 'ignore' && metered.heads.every(({ least }) => least === 0))
    return [`No head is measured at “${point.name}” above E: meter it nearer, or put ignore under ${COLUMNS.kind}.`]; // prettier-ignore
  const { heads, below, plusMinus } = metered;
  return {
    ...point,
    place,
    metered: { target: wanted, tolerance, kind, heads, ambient: bandOfRead(ambient) },
    below,
    plusMinus,
  };
}

/** What was measured at a point after the powers were set; BLANK where the cell is empty. */
export function readMeasured(
  block: Block,
  layout: Layout,
  point: { readonly name: string; readonly row: number },
): Band | Fail | typeof BLANK {
  const reader = new PointReader(block, layout, point, 1);
  const read = readMeter(reader.cell('measured'), reader.name('measured'), 1);
  if (read === BLANK || isFail(read)) return read;
  if (typeof read === 'object' && 'reads' in read) return bandOf(read.reads, HALF_STEP);
  return fail(
    'no-answer',
    `${reader.name('measured')} shows too little light to start from: check what was lit.`,
  );
}
