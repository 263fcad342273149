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
  'accuracy',
  'laws',
  'oracle',
  'recordings',
  'integerProgramme',
  'evenLight',
];

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
    include: [`tests/${process.env['MUTANT_TESTS'] ?? '{exposure,cells,catalogue,published}'}/**/*.test.ts`],
    sequence: { sequencer: QuickFirst },
    testTimeout: 300_000,
  },
});
