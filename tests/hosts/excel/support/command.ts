import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { Readable } from 'node:stream';
import type { Terminal } from '../../../../src/hosts/command/terminal';

const RUNNER = resolve(import.meta.dirname, '../../../../src/build/command.cjs');

/** How a command ended, and what it wrote. */
export interface Ended {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs a command in this process, on a terminal in memory. */
export async function ran(
  command: (args: readonly string[], terminal: Terminal) => Promise<number>,
  args: readonly string[],
  input = '',
): Promise<Ended> {
  let [stdout, stderr] = ['', ''];
  const status = await command(args, {
    say: (line) => (stdout += `${line}\n`),
    complain: (line) => (stderr += `${line}\n`),
    input: Readable.from([Buffer.from(input)]),
  });
  return { status, stdout, stderr };
}

/** Runs a command as `npm run calc -- …` and `npm run sheet -- …` do. It may have to be built first. */
export function spawned(args: readonly string[], { input = '', cwd = '.' } = {}): Ended {
  const { status, stdout, stderr } = spawnSync(process.execPath, [RUNNER, ...args], {
    input,
    cwd,
    encoding: 'utf8',
  });
  return { status, stdout, stderr: stderr.replace(/^Building .*\n/, '') };
}
