import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const RUNNER = resolve(import.meta.dirname, '../../../src/build/command.cjs');
let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'command-'));
  // builds it where it is not built yet: the processes of a build would run the scripts of the tests as well
  spawnSync(process.execPath, [RUNNER, '--help']);
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true }));

/** What the command says on standard error, and its end, in a process in which such a script runs as well. */
function beside(script: string, args: readonly string[], env: Readonly<Record<string, string>> = {}) {
  const file = join(folder, 'beside.cjs');
  writeFileSync(file, script);
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--require', file, RUNNER, ...args], {
    encoding: 'utf8',
    env: { ...process.env, ...env },
  });
  return { status, stdout, stderr };
}
/** Has the engine throw where it calculates a hyperbolic sine. */
const PLANTED = "Math.sinh = () => { throw new TypeError('planted'); };";
const THROWING = ['calc', '=SINH(1)'];
const REFUSED =
  '=SINH(1): #VALUE! A value is of the wrong kind: a text where a number is needed, say, or a range where one cell is.\n';

describe('standard error', { timeout: 120_000 }, () => {
  test('has the warnings of every other part, and of Node', () => {
    const warnings = `
      process.on('exit', () => {
        console.warn('a warning');
        console.error('an error');
      });
      setTimeout(() => process.emitWarning('a deprecation', 'DeprecationWarning'));
    `;
    const { status, stdout, stderr } = beside(warnings, ['calc', '=1+1']);
    expect({ status, stdout }).toEqual({ status: 0, stdout: '2\n' });
    expect(stderr).toMatch(/^\(node:\d+\) DeprecationWarning: a deprecation\n.*\na warning\nan error\n$/);
  });

  test('has what the engine threw only for a developer who asks', () => {
    expect(beside(PLANTED, THROWING, { NODE_DEBUG: '' }).stderr).toBe(REFUSED);
    const { stderr } = beside(PLANTED, THROWING, { NODE_DEBUG: 'sweeptable' });
    expect(stderr).toMatch(/^SWEEPTABLE \d+: A formula could not be calculated: TypeError: planted\n {4}at /);
    expect(stderr.endsWith(REFUSED)).toBe(true);
  });

  test('has an unexpected error with its stack, and not with the line of the built file, which is very long', () => {
    const late = "setTimeout(() => Promise.reject(new RangeError('planted')))";
    const { status, stderr } = beside(late, ['calc', '=1+1']);
    expect(status).toBe(1);
    expect(stderr).toMatch(/^RangeError: planted\n( {4}at .*\n)+$/);
  });

  test('has no complaint where the reader of the answers has enough of them', async () => {
    const command = spawn(process.execPath, [RUNNER, 'calc', '=SEQUENCE(40000)']);
    let stderr = '';
    command.stderr.on('data', (text) => (stderr += text));
    command.stdout.once('data', () => command.stdout.destroy());
    const status = await new Promise((done) => command.on('close', done));
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  });
});

test('an unknown command is told, with those there are', { timeout: 120_000 }, () => {
  expect(beside('', ['clac', '=1+1'])).toEqual({
    status: 2,
    stdout: '',
    stderr: 'There is no command "clac". The commands are: calc, sheet.\n',
  });
});
