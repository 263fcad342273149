import { createRequire } from 'node:module';
import type { TestProject } from 'vitest/node';
import { builtAddIn } from '../hosts/excel/support/built-add-in';
import { launch } from './launch';

const require = createRequire(import.meta.url);
const serve: (
  folder: string,
) => Promise<{ url: string; close(): Promise<void> }> = require('../../src/build/serve.cjs');
const {
  DIST,
  buildIfNeeded,
}: { DIST: string; buildIfNeeded(): Promise<void> } = require('../../src/build/start.cjs');

declare module 'vitest' {
  export interface ProvidedContext {
    /** The address of the built workbench. */
    readonly workbench: string;
    /** The folder of the built add-in. */
    readonly addIn: string;
    /** Where the browsers are that the tests share: one for each worker, since all tabs of one share its clipboard. */
    readonly browsers: readonly string[];
  }
}

/** Runs before the first browser test, and what it gives after the last. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  await buildIfNeeded();
  project.provide('addIn', await builtAddIn());
  const site = await serve(DIST);
  project.provide('workbench', site.url);
  const browsers = [await launch()];
  // The others afterwards: the first may have had to unpack the program.
  while (browsers.length < Number(project.config.maxWorkers)) browsers.push(await launch());
  project.provide(
    'browsers',
    browsers.map((browser) => browser.wsEndpoint()),
  );
  return async () => {
    await Promise.all(browsers.map((browser) => browser.close()));
    await site.close();
  };
}
