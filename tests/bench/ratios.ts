import * as formulas from '@formulajs/formulajs';
import { rowOf } from '../../src/catalogue';
import type { AnyRow } from '../../src/catalogue/types';
import { call } from '../../src/cells/call';
import { exactMark } from '../../src/exposure/stops/marks';
import { traceTable } from '../../src/exposure/trace/traceTable';
import { traceTime } from '../../src/exposure/trace/traceTime';
import { calculated } from '../engine/book';
import { median, medianOf, medians, ms, say, times } from './measure';

/**
 * How long our functions take beside other ways to the same answer, in one run: medians of five. The engine of the workbench
 * is given the same sum in its own functions.
 */
const ROWS = 100_000;
const SAMPLES = 1_000_000;

const stopDiff = rowOf('STOPDIFF') as AnyRow;
/** Marks and numbers between them, as a column of readings holds both. */
const readings = Float64Array.from({ length: ROWS }, (_, i) =>
  i % 2 === 0 ? ([8, 11, 16, 22, 32][i % 5] as number) : 4 + (i % 997) / 17,
);
const column = Array.from(readings, (n) => [n]);
const texts = Array.from(readings, (_, i) => [
  `f/${[8, 11, 16, 22, 32][i % 5]}${i % 3 === 0 ? '' : ` +0.${i % 10}`}`,
]);

/** No text twice, so that each has to be read. */
const differing = Array.from(readings, (_, i) => [`f/${(4 + i / 4096).toFixed(4)} +0.${(i % 9) + 1}`]);

/** What the answer alone costs, whoever calculates it: a spreadsheet takes rows, here of one cell each. */
const rowsAlone = (): unknown => Array.from(readings, (n) => [n]);

/** The same arithmetic on plain numbers: each is the mark it equals, or itself. */
function typedArrays(): Float64Array {
  const out = new Float64Array(ROWS);
  for (let i = 0; i < ROWS; i++) {
    const n = readings[i] as number;
    out[i] = 2 * Math.log2((exactMark('aperture', n) ?? n) / 8);
  }
  return out;
}

/** From rows to rows, as a loop for this column alone would go that knows marks: each is the mark it equals, or itself. */
function bareLoop(): unknown {
  const out = Array<number[]>(ROWS);
  for (let i = 0; i < ROWS; i++) {
    const n = (column[i] as number[])[0] as number;
    out[i] = [2 * Math.log2((exactMark('aperture', n) ?? n) / 8)];
  }
  return out;
}

/** The sum in spreadsheet functions, without marks. */
const byLibrary = (): unknown => column.map(([n]) => 2 * (formulas.LOG((n as number) / 8, 2) as number));

/** Milliseconds that a workbook takes to calculate: cells of formulas, or one formula over the column. */
async function inEngine(formulasOf: (row: number) => readonly string[]): Promise<number> {
  const rows = column.map(([n], i) => [n as number, ...formulasOf(i + 1)]);
  const start = performance.now();
  const book = await calculated({ Data: rows });
  const took = performance.now() - start;
  book.dispose();
  return took;
}

async function columns(): Promise<void> {
  const { ours, oursText, oursDiffering, plain, bare, alone, library } = medians({
    ours: () => call(stopDiff, [8, column]),
    oursText: () => call(stopDiff, [8, texts]),
    oursDiffering: () => call(stopDiff, [8, differing]),
    plain: typedArrays,
    bare: bareLoop,
    alone: rowsAlone,
    library: byLibrary,
  });
  const empty = await medianOf(() => inEngine(() => []));
  const native = (await medianOf(() => inEngine((row) => [`=2*LOG(A${row}/8,2)`]))) - empty;
  const array =
    (await medianOf(() => inEngine((row) => (row === 1 ? [`=2*LOG(A1:A${ROWS}/8,2)`] : [])))) - empty;
  say(`a column of ${ROWS} rows: numbers`, {
    ms: ms(ours),
    'typed arrays ms': ms(plain),
    'times typed arrays (goal 3)': times(ours, plain),
    'bare loop from rows to rows ms': ms(bare),
    'times bare loop (goal 2.5)': times(ours, bare),
    'rows of the answer alone ms': ms(alone),
    'library ms': ms(library),
    'times library': times(ours, library),
  });
  say(`a column of ${ROWS} rows: texts`, {
    ms: ms(oursText),
    'times typed arrays (goal 10)': times(oursText, plain),
    'all different ms': ms(oursDiffering),
    'all different, times typed arrays': times(oursDiffering, plain),
    'all different, times bare loop (goal 5)': times(oursDiffering, bare),
  });
  say(`a column of ${ROWS} rows: the engine's own functions`, {
    'as cells ms': ms(native),
    'as cells, times ours (goal 50)': times(native, ours),
    'as one array ms': ms(array),
    'as one array, times ours': times(array, ours),
  });
  const one = median(() => {
    for (let i = 0; i < ROWS; i++) call(stopDiff, [8, readings[i]]);
  });
  say('calls of one cell', { 'a second': Math.round((ROWS / one) * 1000) });
}

/** A two-time-constant pulse after a tenth of lead. */
function recording(): { times: Float64Array; values: Float64Array } {
  const seconds = new Float64Array(SAMPLES);
  const values = new Float64Array(SAMPLES);
  for (let i = 0; i < SAMPLES; i++) {
    const t = (i - SAMPLES / 10) * 1e-8;
    seconds[i] = i * 1e-8;
    values[i] = t < 0 ? 0 : Math.exp(-t / 7e-4) - Math.exp(-t / 5e-5);
  }
  return { times: seconds, values };
}

function traces(): void {
  const { times: seconds, values } = recording();
  const [down, across] = [Array.from(seconds, (t) => [t]), Array.from(values, (v) => [v])];
  const row = rowOf('TRACETIME') as AnyRow;
  say(`a trace of ${SAMPLES} samples`, {
    'one duration ms (goal 15)': ms(median(() => traceTime(seconds, values))),
    'nine levels ms': ms(median(() => traceTable(seconds, values))),
    'through the call path ms (goal 60)': ms(median(() => call(row, [down, across]))),
  });
}

async function main(): Promise<void> {
  traces();
  await columns();
}

void main();
