import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { format, resolveConfig } from 'prettier';
import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import { type AnyRow, type Arg, isChoice } from '../../src/catalogue/types';

/**
 * What workbooks hold on to: functions by id, arguments by place, words of choice by their letters. New ones may come;
 * what is released stays. After adding to the catalogue, write the list anew:
 *
 *   UPDATE_RELEASED=1 npx vitest run --config tests/vitest.config.mts --project unit tests/house/frozen.test.ts
 *
 * It writes nothing that would break a workbook. Before a first release the list may be deleted and begun anew.
 */
const FILE = join(import.meta.dirname, 'released.json');

/** A function's arguments in their order: "loss?" may be left out, "readings…" goes on, "unit: m | ft" takes these words. */
type Released = Readonly<Record<string, readonly string[]>>;

const written = ({ name, kind, optional, takes }: Arg): string =>
  `${name}${takes === 'rest' ? '…' : ''}${optional ? '?' : ''}${isChoice(kind) ? `: ${kind.choices.join(' | ')}` : ''}`;
const listed = (rows: readonly AnyRow[]): Released =>
  Object.fromEntries(rows.map(({ id, args }) => [id, (args as readonly Arg[]).map(written)]));

const nameIn = (argument: string): string => argument.split(/[…?:]/, 1)[0] as string;
const mayBeLeftOut = (argument: string): boolean => /^[^:]*\?/.test(argument);
const goesOn = (argument: string): boolean => /^[^:]*…/.test(argument);
const wordsIn = (argument: string): readonly string[] => argument.split(': ')[1]?.split(' | ') ?? [];

function argumentFaults(id: string, old: string, now: string | undefined): string[] {
  if (now === undefined) return [`${id} has lost ${nameIn(old)}`];
  if (nameIn(now) !== nameIn(old)) return [`${id} has ${nameIn(now)} in the place of ${nameIn(old)}`];
  const faults: string[] = [];
  if (mayBeLeftOut(old) && !mayBeLeftOut(now)) faults.push(`${id} needs ${nameIn(old)}`);
  if (goesOn(old) !== goesOn(now)) faults.push(`${id} takes another number of ${nameIn(old)}`);
  for (const word of wordsIn(old))
    if (!wordsIn(now).includes(word)) faults.push(`${id} takes no more "${word}" for ${nameIn(old)}`);
  return faults;
}

/** How a workbook that was made with the released functions would break. */
const breaks = (released: Released, now: Released): string[] =>
  Object.entries(released).flatMap(([id, old]) => {
    const args = now[id];
    if (!args) return [`${id} is gone`];
    return [
      ...old.flatMap((argument, i) => argumentFaults(id, argument, args[i])),
      ...args
        .slice(old.length)
        .filter((added) => !mayBeLeftOut(added))
        .map((added) => `${id} needs ${nameIn(added)}, which is new`),
    ];
  });

const readReleased = (): Released =>
  existsSync(FILE) ? (JSON.parse(readFileSync(FILE, 'utf8')) as Released) : {};

test('what is released stays as workbooks know it', async () => {
  const current = listed(CATALOGUE);
  expect(breaks(readReleased(), current)).toEqual([]);
  if (process.env['UPDATE_RELEASED'])
    writeFileSync(
      FILE,
      await format(JSON.stringify(current), { ...(await resolveConfig(FILE)), parser: 'json' }),
    );
  expect(Object.keys(readReleased()).length).toBeGreaterThan(50);
});

describe('the check', () => {
  const released: Released = { POPS: ['reading', 'loss?', 'unit?: m | ft'], SUM: ['readings…'] };
  const pops = (...args: string[]): Released => ({ ...released, POPS: args });
  test.each([
    ['a function that is new', { ...released, DRAW: ['focal'] }],
    ['an argument that comes last and may be left out', pops('reading', 'loss?', 'unit?: m | ft', 'pupil?')],
    ['a word that is new', pops('reading', 'loss?', 'unit?: m | cm | ft')],
    ['an argument that need not be there any more', pops('reading?', 'loss?', 'unit?: m | ft')],
  ])('passes %s', (_, now) => expect(breaks(released, now)).toEqual([]));
  test.each([
    ['a function that is gone', { SUM: ['readings…'] }, 'POPS is gone'],
    ['an argument that is gone', pops('reading', 'loss?'), 'POPS has lost unit'],
    ['arguments that changed places', pops('loss?', 'reading', 'unit?: m | ft'), 'POPS has loss in the place of reading'],
    ['an argument in between', pops('reading', 'pupil?', 'loss?', 'unit?: m | ft'), 'POPS has pupil in the place of loss'],
    ['an argument that is needed now', pops('reading', 'loss', 'unit?: m | ft'), 'POPS needs loss'],
    ['a new argument that is needed', pops('reading', 'loss?', 'unit?: m | ft', 'pupil'), 'POPS needs pupil, which is new'],
    ['a word that is gone', pops('reading', 'loss?', 'unit?: m'), 'POPS takes no more "ft" for unit'],
    ['an end to what went on', { ...released, SUM: ['readings'] }, 'SUM takes another number of readings'],
  ])('stops %s', (_, now, fault) => expect(breaks(released, now)).toContain(fault)); // prettier-ignore
});
