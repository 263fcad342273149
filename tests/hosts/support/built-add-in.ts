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

const buildIfStale = require('../../../src/build/build-if-stale.cjs') as (
  built: string,
  build: () => Promise<void>,
) => Promise<void>;
const PAGE = 'taskpane.html';

/** The add-in, built as for the command line's `--env`, but into a folder of its own. */
export interface BuiltAddIn {
  readonly folder: string;
  remove(): Promise<void>;
}

export async function buildAddIn(env: Readonly<Record<string, string | boolean>>): Promise<BuiltAddIn> {
  const folder = await mkdtemp(join(tmpdir(), 'sweeptable-add-in-'));
  await build(env, folder);
  return { folder, remove: () => rm(folder, { recursive: true }) };
}

/** The add-in with its own copy of office.js, which many tests open: built by the first of them and kept while it is current. */
export async function keptAddIn(): Promise<BuiltAddIn> {
  const folder = join(import.meta.dirname, '../../../dist/tested-add-in');
  await buildIfStale(join(folder, PAGE), async () => {
    await rm(folder, { recursive: true, force: true });
    await build({ officejs: true }, folder);
  });
  return { folder, remove: () => Promise.resolve() };
}

async function build(env: Readonly<Record<string, string | boolean>>, folder: string): Promise<void> {
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
}
