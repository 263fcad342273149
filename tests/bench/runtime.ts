import { CATALOGUE } from '../../src/catalogue';
import { register } from '../../src/hosts/excel/register';
import { FakeWorkbook } from '../hosts/excel/support/fake-workbook';
import { excelCaller, type Invocation, loadOffice } from '../hosts/excel/support/office-host';
import { medianOf, ms, say } from './measure';

/**
 * Our functions through Microsoft's own runtime, its file for Excel on the web, in Node: from the message that Excel sends to
 * the answers that come back. The runtime rests half a second between two replies; a function that does nothing shows what
 * is its own.
 */
const CELLS = 20_000;
const NOTHING = 'NOTHING';

const readings = Array.from({ length: CELLS }, (_, i) => (i % 2 === 0 ? 11 : 4 + (i % 997) / 17));
const cells = (id: string): Invocation[] => readings.map((n) => [id, [[8]], [[n]], null]);
const column = (id: string): Invocation[] => [[id, [[8]], readings.map((n) => [n]), null]];

/** Milliseconds in a fresh runtime: one that has just replied would rest first. */
async function arrives(invocations: readonly Invocation[]): Promise<number> {
  const workbook = new FakeWorkbook('Sheet1');
  const office = loadOffice(workbook, {
    whileLoading(functions) {
      register(functions, CATALOGUE);
      functions.associate(NOTHING, () => [[1]]);
    },
  });
  const ask = excelCaller(office, workbook);
  const start = performance.now();
  const arrivals = await ask(invocations);
  const took = performance.now() - start;
  if (!arrivals.every((arrival) => 'value' in arrival)) throw new Error('an error arrived');
  return took;
}

async function main(): Promise<void> {
  for (const [what, invocations] of [
    [`${CELLS} cells`, cells],
    [`one call of ${CELLS} rows`, column],
  ] as const) {
    const ours = await medianOf(() => arrives(invocations('STOPDIFF')));
    const nothing = await medianOf(() => arrives(invocations(NOTHING)));
    say(`${what} through the custom-functions runtime`, {
      ms: ms(ours),
      'a function that does nothing ms': ms(nothing),
    });
  }
}

void main();
