import { createRequire } from 'node:module';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Configuration, Stats } from 'webpack';

const require = createRequire(import.meta.url);
const webpack = require('webpack') as (
  config: Configuration,
  done: (error: Error | null, stats?: Stats) => void,
) => { close(done: () => void): void };
const addIn = require('../../../src/build/webpack-excel.cjs') as (
  env: Readonly<Record<string, string | boolean>>,
  argv: { readonly mode: 'production' },
) => Configuration;

/** The add-in, built as for the command line's `--env`, but into a folder of its own. */
export interface BuiltAddIn {
  readonly folder: string;
  remove(): Promise<void>;
}

export async function buildAddIn(env: Readonly<Record<string, string | boolean>>): Promise<BuiltAddIn> {
  const folder = await mkdtemp(join(tmpdir(), 'sweeptable-add-in-'));
  const config = addIn(env, { mode: 'production' });
  await new Promise<void>((resolve, reject) => {
    const compiler = webpack(
      { ...config, output: { ...config.output, path: folder }, cache: false },
      (error, stats) =>
        compiler.close(() =>
          error || stats?.hasErrors()
            ? reject(error ?? new Error(stats?.toString('errors-only')))
            : resolve(),
        ),
    );
  });
  return { folder, remove: () => rm(folder, { recursive: true }) };
}
