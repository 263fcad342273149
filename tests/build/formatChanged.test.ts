import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, unlinkSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';

const { changedFiles } = createRequire(import.meta.url)('../../src/build/format-changed.cjs') as {
  changedFiles: (folder: string) => string[] | undefined;
};

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'sweeptable-changed-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const git = (...args: string[]): void => {
  execFileSync('git', ['-c', 'user.name=a', '-c', 'user.email=a@b.example', ...args], { cwd: folder });
};
const write = (name: string, text: string): void => writeFileSync(join(folder, name), text);

test('what was changed, staged, renamed or is new is looked at, and nothing that is committed, deleted or ignored', () => {
  git('init', '-q');
  mkdirSync(join(folder, 'in it'));
  for (const name of ['same.ts', 'changed.ts', 'staged.ts', 'deleted.ts', 'in it/old name.ts'])
    write(name, `${name}\n`);
  write('.gitignore', 'ignored.ts\n');
  git('add', '.');
  git('commit', '-q', '-m', 'All');
  expect(changedFiles(folder)).toEqual([]);

  write('changed.ts', 'other\n');
  write('staged.ts', 'other\n');
  git('add', 'staged.ts');
  unlinkSync(join(folder, 'deleted.ts'));
  git('mv', 'in it/old name.ts', 'in it/ünew.ts');
  write('new.ts', 'new\n');
  write('ignored.ts', 'ignored\n');
  expect(changedFiles(folder)?.sort()).toEqual(['changed.ts', 'in it/ünew.ts', 'new.ts', 'staged.ts']);
});

test('where there is no commit nothing is told, so that all files are looked at', () => {
  expect(changedFiles(folder)).toBeUndefined();
  git('init', '-q');
  expect(changedFiles(folder)).toBeUndefined();
});
