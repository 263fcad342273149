import { rowOf } from '../../src/catalogue';
import { call } from '../../src/cells/call';
import type { EngineValue } from '../../src/engine/headless';
import { evenLight } from '../../src/exposure/balance/evenLight';
import { evenest } from '../../src/exposure/balance/evenest';
import { isFail, type Result } from '../../src/exposure/core/result';
import { parseAddress } from '../../src/formula/address';
import { calculated, type TestCell } from '../engine/book';
import type { Balance, BalanceCall, Cells, Job, Recording, Step } from './job';

/** What a step gives: the rows of its cells, or of a library's numbers. */
export type Answer = readonly (readonly EngineValue[])[];

type Sheet = TestCell[][];

/** Where a formula stands: right of all that jobs type, and nothing lies where it spills. */
const FORMULA = 'L1';

function put(sheet: Sheet, row: number, column: number, value: TestCell): void {
  if (column >= 11) throw new Error(`Cells of a job stand left of ${FORMULA}.`);
  while (sheet.length <= row) sheet.push([]);
  const cells = sheet[row] as TestCell[];
  while (cells.length <= column) cells.push(null);
  cells[column] = value;
}

function type(sheet: Sheet, cells: Cells = {}): void {
  for (const [corner, what] of Object.entries(cells)) {
    const place = parseAddress(corner);
    if (!place) throw new Error(`"${corner}" is no cell.`);
    const rows = Array.isArray(what) ? (what as readonly (readonly TestCell[])[]) : [[what as TestCell]];
    for (const [i, row] of rows.entries())
      for (const [j, value] of row.entries()) put(sheet, place.row + i, place.column + j, value);
  }
}

function samples({ interval, nothing, rise, tail }: Recording): Sheet {
  const light = [
    ...Array.from({ length: nothing }, () => 0),
    ...rise,
    ...Array.from({ length: tail.samples }, (_, i) => Math.exp(-(i + 1) / tail.decay)),
  ];
  return light.map((value, i) => [i * interval, value]);
}

function sheetOf(job: Job, step: Step): Sheet {
  const sheet = job.recording ? samples(job.recording) : [];
  type(sheet, job.cells);
  type(sheet, step.cells);
  while (sheet.length === 0 || (sheet[0] as TestCell[]).length < 11)
    put(sheet, 0, sheet[0]?.length ?? 0, null);
  (sheet[0] as TestCell[])[11] = step.formula as string;
  return sheet;
}

const fNumber = (text: string): number => call(rowOf('FNUMBER') as never, [text]) as number;

function given<T>(result: Result<T>): T {
  if (isFail(result)) throw new Error(result.message);
  return result;
}

/** The powers before they are settled in steps, and the worst error there: what `evenLight` hands to its steps. */
function unsettled(job: Balance, targets: readonly number[]): { powers: number[]; worst: number } {
  const now = job.powers.map((power, h) => power / (job.most[h] as number));
  const { shares, error } = given(
    evenest({
      reach: job.readings.map((row, p) =>
        row.map((text, h) => (fNumber(text) / (targets[p] as number)) ** 2 / (now[h] as number)),
      ),
      now,
      least: job.least.map((least, h) => least / (job.most[h] as number)),
      mayGoOff: now.map(() => false),
    }),
  );
  return { powers: shares.map((share, h) => share * (job.most[h] as number)), worst: error };
}

function balanced(job: Balance, { targets = job.targets, step, answer }: BalanceCall): Answer {
  const wanted = targets.map(fNumber);
  const readings = job.readings.map((row) => row.map(fNumber));
  const { powers, worst } =
    step === null
      ? unsettled(job, wanted)
      : given(evenLight(readings, job.powers, wanted, job.least, job.most, { step }));
  return { 'worst error': [[worst]], powers: [powers], 'powers and worst error': [powers, [worst]] }[answer];
}

/** What every step of a job gives, in its order: each has a sheet of its own. */
export async function answersOf(job: Job): Promise<Answer[]> {
  const sheets = job.steps.flatMap((step, i) =>
    step.formula === undefined ? [] : [[`Step ${i + 1}`, sheetOf(job, step)] as const],
  );
  const book = await calculated(Object.fromEntries(sheets));
  const answers = job.steps.map((step, i) => {
    if (step.formula !== undefined) return book.answer(`Step ${i + 1}`, FORMULA);
    if (step.balance && job.balance) return balanced(job.balance, step.balance);
    throw new Error(`Step ${i + 1} asks nothing that can be calculated.`);
  });
  book.dispose();
  return answers;
}
