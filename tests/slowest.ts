import type { Reporter, TestModule } from 'vitest/node';

const TOLD = 10;

/** How long a file took, with all that had to be loaded for it, in milliseconds. */
function took(module: TestModule): number {
  const { environmentSetupDuration, prepareDuration, collectDuration, setupDuration, duration } =
    module.diagnostic();
  return environmentSetupDuration + prepareDuration + collectDuration + setupDuration + duration;
}

/** Tells in the end which files took longest. */
export default class Slowest implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    if (modules.length <= TOLD) return;
    const slowest = [...modules].sort((one, other) => took(other) - took(one)).slice(0, TOLD);
    process.stdout.write('\nThe slowest files, in seconds:\n');
    for (const module of slowest)
      process.stdout.write(`${(took(module) / 1000).toFixed(1).padStart(8)}  ${module.relativeModuleId}\n`);
  }
}
