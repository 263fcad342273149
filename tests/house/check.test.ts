import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

type Run = (name: string) => Promise<{ code: number; output: string }>;
const CHECK = resolve(import.meta.dirname, '../../src/build/check.cjs');
const { checkAll } = createRequire(import.meta.url)(CHECK) as {
  checkAll: (steps: string[][], run: Run, say: (line: string) => void) => Promise<boolean>;
};

/** Runs these steps, where the parts in `failing` fail, and gives what was begun and said. */
async function after(steps: string[][], failing: string[] = []) {
  const begun: string[] = [];
  const said: string[] = [];
  const run: Run = (name) => {
    begun.push(name);
    return Promise.resolve({ code: failing.includes(name) ? 2 : 0, output: `all that ${name}\nprinted\n` });
  };
  return { isGood: await checkAll(steps, run, (line) => said.push(line)), begun, said };
}
const STEPS = [['lint', 'format'], ['build']];

describe('what npm test looks at first', () => {
  test('is all run, with a time for each part', async () => {
    const { isGood, begun, said } = await after(STEPS);
    expect(isGood).toBe(true);
    expect(begun).toEqual(['lint', 'format', 'build']);
    expect(said.map((line) => line.replace(/\d+\.\d/, 'so many'))).toEqual(
      begun.map((name) => `${name}: so many s`),
    );
  });

  test('tells every part of a step that fails, whole, and goes no further', async () => {
    const { isGood, begun, said } = await after(STEPS, ['lint', 'format']);
    expect(isGood).toBe(false);
    expect(begun).toEqual(['lint', 'format']);
    for (const [i, name] of begun.entries())
      expect(said[i]).toMatch(new RegExp(`^all that ${name}\nprinted\n${name}: failed after `));
  });

  test('runs the parts of a step side by side', async () => {
    let [now, most] = [0, 0];
    const run: Run = async () => {
      most = Math.max(most, ++now);
      await new Promise((done) => setTimeout(done, 5));
      now--;
      return { code: 0, output: '' };
    };
    await checkAll([['a', 'b'], ['c']], run, () => {});
    expect(most).toBe(2);
  });

  test('ends as a process with what failed, from both of its streams', () => {
    const folder = mkdtempSync(join(tmpdir(), 'sweeptable-check-'));
    const say = (text: string, code: number): string =>
      `node -e "console.log('${text} out'); console.error('${text} err'); process.exitCode = ${code}"`;
    const scripts = {
      test: `node ${JSON.stringify(CHECK)}`,
      lint: say('lint', 3),
      'format:changed': say('format', 1),
      types: say('types', 0),
      build: say('build', 0),
    };
    writeFileSync(join(folder, 'package.json'), JSON.stringify({ name: 'checked', scripts }));
    const npm = process.env['npm_execpath'];
    const [command, first] = npm === undefined ? ['npm', []] : [process.execPath, [npm]];
    let failed: { status?: number; stdout?: string } = {};
    try {
      execFileSync(command, [...first, '--silent', 'test'], { cwd: folder, encoding: 'utf8', stdio: 'pipe' });
    } catch (reason) {
      failed = reason as typeof failed;
    }
    rmSync(folder, { recursive: true });
    expect(failed.status).toBe(1);
    for (const line of ['lint out', 'lint err', 'format out', 'format err', 'lint: failed', 'format:changed: failed'])
      expect(failed.stdout).toContain(line); // prettier-ignore
    expect(failed.stdout).not.toContain('types');
  });
});
