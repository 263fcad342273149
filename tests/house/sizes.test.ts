import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';

const PROGRAM = resolve(import.meta.dirname, '../bench/sizes.mjs');

describe('the check of sizes', () => {
  let root: string;
  beforeEach(() => {
    root = mkdtempSync(join(tmpdir(), 'sweeptable-sizes-'));
    mkdirSync(join(root, 'tests/bench'), { recursive: true });
    mkdirSync(join(root, 'dist'));
    copyFileSync(PROGRAM, join(root, 'tests/bench/sizes.mjs'));
  });
  afterEach(() => rmSync(root, { recursive: true }));

  /** Files of such lengths where 1000 bytes are committed, and so many packed. */
  function checked(one: number, other: number, gzip = 1e6) {
    const figures = { 'a page': { files: ['one.js', 'other.js'], bytes: 1000, gzip } };
    writeFileSync(join(root, 'tests/bench/sizes.json'), JSON.stringify(figures));
    writeFileSync(join(root, 'dist/one.js'), 'a'.repeat(one));
    writeFileSync(join(root, 'dist/other.js'), 'b'.repeat(other));
    return spawnSync(process.execPath, [join(root, 'tests/bench/sizes.mjs'), '--check'], {
      encoding: 'utf8',
    });
  }

  test('passes what is as large as its figure and 3 % more, both files together', () => {
    const { status, stdout } = checked(600, 430);
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toMatchObject({
      measure: 'size of a page',
      bytes: 1030,
      'committed bytes': 1000,
    });
  });
  test('refuses a byte more', () => {
    const { status, stderr } = checked(600, 431);
    expect(status).toBe(1);
    expect(stderr).toContain('a page: 1031 (bytes) is more than 3 % above 1000.');
  });
  test('refuses what packs worse', () => {
    const { status, stderr } = checked(10, 10, 10);
    expect(status).toBe(1);
    expect(stderr).toContain('(gzip) is more than 3 % above 10.');
  });
  test('refuses a build that lacks a file', () => {
    checked(1, 1);
    rmSync(join(root, 'dist/one.js'));
    expect(
      spawnSync(process.execPath, [join(root, 'tests/bench/sizes.mjs'), '--check'], { encoding: 'utf8' })
        .status,
    ).toBe(1);
  });
});
