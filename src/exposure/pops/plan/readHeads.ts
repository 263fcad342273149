import { at } from '../../core/at';
import { log2Ratio, SLACK, spoken } from '../../core/numbers';
import { fail, isFail, type Result } from '../../core/result';
import { aboveMost, stepsDown } from '../../distance/nearestSetting';
import type { Head } from './head';

/** A column with one cell a head; undefined where the cell is blank. */
export type HeadValues = readonly (number | undefined)[];
/** Seconds from a pop to ready at full power, and at least power; undefined where the cell is blank. */
export type RecycleTimes = readonly [full: number | undefined, least: number | undefined];

/** What a plan needs to know of the heads, as `popsPlan` describes it. */
export interface Columns {
  readonly readings: HeadValues;
  readonly powers: HeadValues;
  readonly targets: HeadValues;
  readonly least: HeadValues;
  readonly most: HeadValues;
  readonly recycleFull: readonly RecycleTimes[];
  readonly step: readonly number[];
  readonly allowed: HeadValues;
  readonly switchable: readonly boolean[];
}

const NEEDED = ['readings', 'powers', 'targets', 'least', 'most'] as const;
const NAMES = [...NEEDED, 'recycleFull', 'step', 'allowed', 'switchable'] as const;
type Line = { readonly [Name in (typeof NEEDED)[number]]: number };

/** What holds for all heads. */
export interface Shared {
  readonly loss: number;
  /** Stops that a head may end from its target; half of its step where none is given. */
  readonly tolerance: number | undefined;
}

/** What a head is called in a refusal: "powers (number 2 of the list)". */
type Called = (name: string) => string;

/** One head's cells; undefined where the head is off. */
function readLine(columns: Columns, i: number, called: Called): Result<Line | undefined> {
  if (columns.readings[i] === undefined || columns.targets[i] === undefined) return undefined;
  const blank =
    NEEDED.find((name) => columns[name][i] === undefined) ??
    (at(columns.recycleFull, i)[0] === undefined ? 'recycleFull' : undefined);
  if (blank === undefined) {
    const cell = (name: keyof Line): number => columns[name][i] as number;
    return {
      readings: cell('readings'),
      powers: cell('powers'),
      targets: cell('targets'),
      least: cell('least'),
      most: cell('most'),
    };
  }
  const why = blank === 'powers' ? 'the power at which it was read' : 'it';
  return fail('unreadable', `${called(blank)} is missing: a head with a reading and a target needs ${why}.`);
}

function headOf(line: Line, columns: Columns, i: number, called: Called, shared: Shared): Result<Head> {
  const { readings: reading, powers: power, targets: target, least, most } = line;
  const turned = aboveMost(called('least'), least, most);
  if (turned) return turned;
  const step = columns.step[i] as number;
  const half = step / 2 + SLACK;
  if (log2Ratio(power, most) > half || log2Ratio(least, power) > half)
    return fail(
      'domain',
      `No head is set to ${spoken(power)} Ws that goes from ${spoken(least)} up to ${spoken(most)} Ws: see ${called('powers')}.`,
    );
  const [recycleFull, recycleLeast] = at(columns.recycleFull, i);
  return {
    over: 2 * log2Ratio(reading, target) + log2Ratio(most, power) - shared.loss,
    step,
    steps: stepsDown(least, most, step),
    tolerance: shared.tolerance ?? step / 2,
    most,
    least,
    recycleFull: recycleFull as number,
    recycleLeast,
    allowed: columns.allowed[i],
    isSwitchable: at(columns.switchable, i),
    target,
  };
}

/**
 * The heads of a plan from its columns; undefined for a head that is off.
 *
 * Only a head that is on needs all its cells. A power may lie half a step outside `least` to `most`: the lowest mark of a
 * head may lie so far from its least energy, and a power read off a head is not known any closer.
 *
 * @returns one entry a head; a refusal that names the column and the head.
 */
export function readHeads(columns: Columns, shared: Shared): Result<readonly (Head | undefined)[]> {
  const count = columns.readings.length;
  if (count === 0) return fail('unreadable', 'readings is blank: give at least one.');
  const odd = NAMES.find((name) => columns[name].length !== count);
  if (odd)
    return fail(
      'unreadable',
      `${odd} must be as many as the readings: ${columns[odd].length} for ${count} ${count === 1 ? 'reading' : 'readings'}.`,
    );
  const heads: (Head | undefined)[] = [];
  for (let i = 0; i < count; i++) {
    const called = (name: string): string => (count === 1 ? name : `${name} (number ${i + 1} of the list)`);
    const line = readLine(columns, i, called);
    const head = line === undefined || isFail(line) ? line : headOf(line, columns, i, called, shared);
    if (isFail(head)) return head;
    heads.push(head);
  }
  return heads;
}
