import { CATALOGUE } from '../../src/catalogue';
import { register } from '../../src/hosts/excel/register';
import { depthOf } from '../../src/sheets/checkTemplate';
import { TEMPLATES } from '../../src/sheets/templates';
import type { Template } from '../../src/sheets/template';
import { makePlan } from '../../src/sheets/makePlan';
import { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import { excelCaller, type Invocation, loadOffice } from '../hosts/excel/support/office-host';
import { medianOf, ms, say, times } from './measure';

/**
 * A sheet's answers through Microsoft's own runtime while the pane is open, and while it is closed: a browser then lets the
 * timers of the page go off once a second only (HTML Standard, "Timers": it may wait longer; common practice are 1000 ms).
 * The runtime rests between two replies, and Excel asks for what uses an answer only when it has that answer, so that each
 * of our functions behind another costs a rest.
 */
const SECOND = 1000;

const clamped = ((run: () => void, wait = 0) => setTimeout(run, Math.max(SECOND, wait))) as typeof setTimeout;

const callsOf = (template: Template): number =>
  makePlan(template, { filled: true, sheets: [], tables: [], names: [] }).sheet.cells.filter(({ formula }) =>
    formula?.includes('SWEEP.'),
  ).length;

/** Milliseconds until all cells of a sheet have been asked for and answered, one level after the other. */
async function answered(levels: number, calls: number, timer: typeof setTimeout): Promise<number> {
  const workbook = new FakeWorkbook('Sheet1');
  const office = loadOffice(workbook, { timer, whileLoading: (functions) => register(functions, CATALOGUE) });
  const ask = excelCaller(office, workbook);
  const asked: Invocation[] = Array.from({ length: calls }, () => ['STOPDIFF', [[8]], [[11]], null]);
  const start = performance.now();
  for (let level = 0; level < levels; level++) await ask(asked);
  return performance.now() - start;
}

async function main(): Promise<void> {
  for (const template of TEMPLATES) {
    const [levels, calls] = [depthOf(template), callsOf(template)];
    if (levels === 0) continue;
    const open = await medianOf(() => answered(levels, calls, setTimeout));
    const closed = await medianOf(() => answered(levels, calls, clamped));
    say(`answers of ${template.id} in Excel, while the pane is closed`, {
      ms: ms(closed),
      'pane open ms': ms(open),
      'times as long': times(closed, open),
      'functions one behind the other': levels,
      'calls of each level': calls,
    });
  }
}

void main();
