import { createRequire } from 'node:module';
import { mkdir, mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Configuration, Stats } from 'webpack';

const require = createRequire(import.meta.url);
const webpack = require('webpack') as (
  config: Configuration,
  done: (error: Error | null, stats?: Stats) => void,
) => { close(done: () => void): void };
const addIn = require('../../../../src/build/webpack-excel.cjs') as (
  env: Readonly<Record<string, string | boolean>>,
  argv: { readonly mode: 'production' },
) => Configuration;

const buildIfStale = require('../../../../src/build/build-if-stale.cjs') as (
  built: string,
  build: () => Promise<void>,
) => Promise<void>;
const PAGE = 'taskpane.html';
/** In milliseconds, on a busy machine. */
export const LONGEST_BUILD = 180_000;

/** The add-in, built as for the command line's `--env`, but into a folder of its own. */
export interface BuiltAddIn {
  readonly folder: string;
  remove(): Promise<void>;
}

export async function buildAddIn(env: Readonly<Record<string, string | boolean>>): Promise<BuiltAddIn> {
  const folder = await mkdtemp(join(tmpdir(), 'sweeptable-add-in-'));
  await buildInto(env, folder);
  return { folder, remove: () => rm(folder, { recursive: true }) };
}

/** Does work while no other process does the same, and after it. */
async function alone(lock: string, work: () => Promise<void>): Promise<void> {
  await mkdir(dirname(lock), { recursive: true });
  for (;;) {
    try {
      // oxlint-disable-next-line no-await-in-loop -- waits for its turn
      await mkdir(lock);
      break;
    } catch {
      // oxlint-disable-next-line no-await-in-loop -- as above
      await removeIfLeft(lock);
      // oxlint-disable-next-line no-await-in-loop -- as above
      await sleep(200);
    }
  }
  try {
    await work();
  } finally {
    await rm(lock, { recursive: true, force: true });
  }
}
/** A process that was killed leaves its lock behind. */
async function removeIfLeft(lock: string): Promise<void> {
  const made = await stat(lock).catch(() => undefined);
  if (made && Date.now() - made.mtimeMs > LONGEST_BUILD) await rm(lock, { recursive: true, force: true });
}

const DIST = join(import.meta.dirname, '../../../../dist');

/** The folder of the add-in in dist/, as `npm run build` makes it: built by the first who asks where it is not current. */
export async function builtAddIn(): Promise<string> {
  await alone(join(DIST, 'add-in.lock'), () =>
    buildIfStale(join(DIST, PAGE), () => compile(addIn({}, { mode: 'production' }))),
  );
  return DIST;
}

async function buildInto(env: Readonly<Record<string, string | boolean>>, folder: string): Promise<void> {
  const config = addIn(env, { mode: 'production' });
  await compile({ ...config, output: { ...config.output, path: folder } });
}

const compile = (config: Configuration): Promise<void> =>
  new Promise((resolve, reject) => {
    const compiler = webpack(config, (error, stats) =>
      compiler.close(() =>
        error || stats?.hasErrors() ? reject(error ?? new Error(stats?.toString('errors-only'))) : resolve(),
      ),
    );
  });
