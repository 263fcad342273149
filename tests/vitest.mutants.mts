import { basename, resolve } from 'node:path';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Tests that take their time, the longest last: most changes are noticed by others before. */
const SLOW = [
  'published',
  'columns',
  'call',
  'traceNote',
  'linearProgramme',
  'bruteForce',
  'traceTime',
  'lightUnmix',
  'laws',
  'oracle',
  'integerProgramme',
];

/** Long recordings and hundreds of lightings, which take a minute for each change that goes unnoticed: small ones notice it too. */
const LONG = ['trace/accuracy', 'trace/recordings', 'balance/evenLight'].map(
  (name) => `tests/exposure/${name}.test.ts`,
);

class QuickFirst extends BaseSequencer {
  override sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification): number => SLOW.indexOf(basename(moduleId, '.test.ts'));
    return Promise.resolve([...files].sort((a, b) => rank(a) - rank(b)));
  }
}

/** The tests that a changed line of the pure code can make fail, without those of hosts, sheets and pages. */
export default defineConfig({
  root: resolve(import.meta.dirname, '..'),
  test: {
    include: [
      `tests/${process.env['MUTANT_TESTS'] ?? '{exposure,catalogue,formula,cells,explain,published}'}/**/*.test.ts`,
    ],
    exclude: LONG,
    sequence: { sequencer: QuickFirst },
    testTimeout: 300_000,
  },
});
