import { parseArgs } from 'node:util';
import { CATALOGUE } from '../../src/catalogue';
import { BOMBS, bombs } from './bombs';
import { hostileCalls } from './calls';
import { hostileFiles } from './files';
import { Report } from './report';
import { hostileTemplates } from './templates';
import { hostileTraces } from './traces';
import { watch } from './watch';

const SIZES = { cells: 400, arguments: 300 };
/** Templates, files and recordings take longer than calls: there are fewer of them. */
const FEWER = 4;
/** An escape is told with so many letters of what was given. */
const SHOWN = 2000;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { seed: { type: 'string', default: '1' }, only: { type: 'string' } },
});
const { only } = values;
const seed = Number(values.seed);
const calls = Number(positionals[0] ?? 200);
const fewer = Math.ceil(calls / FEWER);
const rows = CATALOGUE.filter(({ id }) => only === undefined || id === only);
if (!Number.isInteger(calls) || calls < 1 || !Number.isInteger(seed))
  throw new Error('npm run hostile -- [--seed WHOLE_NUMBER] [--only FUNCTION|templates|files] CALLS');
if (rows.length === 0 && only !== 'templates' && only !== 'files')
  throw new Error(`There is no function ${only}.`);

const watcher = watch();
let escapes = 0;

/** One kind of thing that is tried, and its line. */
async function part(
  name: string,
  count: number,
  run: (report: Report) => void | Promise<void>,
): Promise<void> {
  const report = new Report(watcher.begins);
  const before = performance.now();
  await run(report);
  const seconds = ((performance.now() - before) / 1000).toFixed(1);
  for (const { what, name: of, seed: own, given } of report.escapes.slice(0, 20)) {
    console.log(`\n${of}, seed ${own}: ${what}\n  ${given.slice(0, SHOWN)}`);
    console.log(`  again: npm run hostile -- --seed ${own} --only ${of} 1\n`);
  }
  escapes += report.escapes.length;
  const { answers, refusals, longest } = report;
  console.log(
    `${name}: ${count}, ${answers} answered, ${refusals} refused, ${report.escapes.length} escapes, in ${seconds} s, the longest ${longest.seconds.toFixed(2)} s (${longest.name})`,
  );
  for (const [exception, times] of report.exceptions)
    console.log(`  refusals without a name, ${exception}: ${times}`);
}

const isWhole = only === undefined;
if (isWhole || only === 'templates')
  await part('templates', fewer, (report) => hostileTemplates({ count: fewer, seed }, report));
if (isWhole || only === 'files') {
  await part('files', fewer, (report) => hostileFiles({ count: fewer, seed }, report));
  await part('small files that mean to be large', BOMBS.length, (report) => bombs(BOMBS, {}, report));
}
const trial = { calls, seed, sizes: SIZES };
await part('traces as texts', fewer, (report) => hostileTraces(rows, { ...trial, calls: fewer }, report));
await part('calls of each function', calls, (report) => hostileCalls(rows, trial, report));
watcher.end();
console.log(`${calls} × ${rows.length} calls, ${escapes} escapes`);
if (escapes > 0) process.exitCode = 1;
