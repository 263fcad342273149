import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { shown } from './answers';
import { type Fault, findings } from './causes';
import { type Drawn, generate } from './generate';
import { mendedHere, unmendedHere } from './here';
import { type Judged, judged, rightAnswers } from './judged';
import { KNOWN } from './known';

/** As many of the causes as the formulas must find in an engine without mends. */
const FOUND_AT_LEAST = 22;
const SHOWN = 60;
/** So many formulas are kept for the tests. */
const KEPT = 300;

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seed: { type: 'string', default: '1' },
    unmended: { type: 'boolean', default: false },
    excused: { type: 'boolean', default: false },
    write: { type: 'string' },
  },
});
const count = Number(positionals[0] ?? 3000);
const seed = Number(values.seed);
if (!Number.isInteger(count) || count < 1 || !Number.isInteger(seed))
  throw new Error(
    'npm run natives -- [--seed WHOLE_NUMBER] [--unmended] [--excused] [--write FILE] FORMULAS',
  );

const told = ({ family, formula, ours, right, judge }: Fault): string => {
  const says =
    judge.by === 'documentation'
      ? judge.source
      : 'formula' in judge
        ? `${judge.by}, ${judge.formula}`
        : judge.by;
  return `  ${formula.replaceAll('\n', '⏎')}  ours ${shown(ours)}, right ${shown(right)} (${says}; ${family})`;
};

function print({ by, excused, faults }: Judged): void {
  console.log('decided by');
  for (const [judge, decided] of by) console.log(`  ${judge}: ${decided}`);
  console.log('differences that are known');
  for (const known of KNOWN) {
    const times = excused.get(known) ?? [];
    console.log(`  ${times.length} × ${known.name} [${known.of.join(' ')}]`);
    if (values.excused) for (const each of times) console.log(`  ${told(each)}`);
  }
  console.log(`differences without a known reason: ${faults.length}`);
  for (const fault of faults.slice(0, SHOWN)) console.log(told(fault));
}

function printCauses(faults: readonly Fault[]): boolean {
  const all = findings(faults);
  for (const [{ id, says }, shows] of all) {
    const [first] = shows;
    console.log(`${first ? `${shows.length} ×` : 'NOT FOUND:'} ${id} ${says}`);
    if (first) console.log(told(first));
  }
  const found = all.filter(([, shows]) => shows.length > 0).length;
  console.log(`${found} of ${all.length} causes found`);
  return found >= FOUND_AT_LEAST;
}

/** The first formulas without a difference, about as many of each family, with the answers of their judges. */
function kept(asked: readonly Drawn[], { faults, excused }: Judged, right: readonly unknown[]): string {
  const differ = new Set([...faults, ...[...excused.values()].flat()].map(({ formula }) => formula));
  const rows = asked.flatMap(({ formula, judge }, i) => {
    if (differ.has(formula) || (judge.by === 'documentation' && judge.digits !== undefined)) return [];
    return [{ formula, expected: right[i], by: judge.by }];
  });
  return `[\n${rows
    .slice(0, KEPT)
    .map((row) => JSON.stringify(row))
    .join(',\n')}\n]\n`;
}

const before = performance.now();
const asked = generate(count, seed);
const formulas = asked.map(({ formula }) => formula);
const ours = await (values.unmended ? unmendedHere : mendedHere)(formulas);
const right = await rightAnswers(asked);
const result = judged(asked, ours, right);
const seconds = ((performance.now() - before) / 1000).toFixed(1);
console.log(`${asked.length} formulas of seed ${seed}, in ${seconds} s`);
if (values.unmended) {
  console.log(`differences without a known reason: ${result.faults.length}`);
  if (!printCauses(result.faults)) process.exitCode = 1;
} else {
  print(result);
  if (result.faults.length > 0) process.exitCode = 1;
}
if (values.write) writeFileSync(values.write, kept(asked, result, right));
// the engine keeps timers of its own
process.exit();
