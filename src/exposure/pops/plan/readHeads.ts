import { log2Ratio, SLACK, spoken } from '../../core/numbers';
import { fail, isFail, type Result } from '../../core/result';
import { aboveMost, lastMark } from '../../distance/settle';
import type { Head } from './head';

/** A column with one cell a head; undefined where the cell is blank. */
export type HeadValues = readonly (number | undefined)[];

/** The columns of a plan, as `popsPlan` describes them. */
export interface Columns {
  readonly readings: HeadValues;
  readonly powers: HeadValues;
  readonly targets: HeadValues;
  readonly least: HeadValues;
  readonly most: HeadValues;
  readonly recycleFull: HeadValues;
}

type Line = { readonly [Name in keyof Columns]: number };

const NAMES = ['readings', 'powers', 'targets', 'least', 'most', 'recycleFull'] as const;

/** One head's cells; undefined where the head is off. */
function readLine(columns: Columns, i: number, called: (name: string) => string): Result<Line | undefined> {
  if (columns.readings[i] === undefined || columns.targets[i] === undefined) return undefined;
  const blank = NAMES.find((name) => columns[name][i] === undefined);
  if (blank === undefined)
    return Object.fromEntries(NAMES.map((name) => [name, columns[name][i]])) as unknown as Line;
  const why = blank === 'powers' ? 'the power at which it was read' : 'it';
  return fail('unreadable', `${called(blank)} is missing: a head with a reading and a target needs ${why}.`);
}

function headOf(line: Line, called: (name: string) => string, loss: number, step: number): Result<Head> {
  const { readings: reading, powers: power, targets: target, least, most, recycleFull } = line;
  const turned = aboveMost(called('least'), least, most);
  if (turned) return turned;
  const half = step / 2 + SLACK;
  if (log2Ratio(power, most) > half || log2Ratio(least, power) > half)
    return fail(
      'domain',
      `No head is set to ${spoken(power)} Ws that goes from ${spoken(least)} up to ${spoken(most)} Ws: see ${called('powers')}.`,
    );
  return {
    over: 2 * log2Ratio(reading, target) + log2Ratio(most, power) - loss,
    step,
    steps: lastMark(least, most, step),
    most,
    recycleFull,
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
export function readHeads(
  columns: Columns,
  loss: number,
  step: number,
): Result<readonly (Head | undefined)[]> {
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
    const head = line === undefined || isFail(line) ? line : headOf(line, called, loss, step);
    if (isFail(head)) return head;
    heads.push(head);
  }
  return heads;
}
