import { type AnyRow, type Arg, isChoice } from '../../src/catalogue/types';

/**
 * By function its arguments in their order: "loss?" may be left out, "unit: m | ft" takes these words.
 * No function at all: nothing is released yet.
 */
export type Released = Readonly<Record<string, readonly string[]>>;

const written = ({ name, kind, optional }: Arg): string =>
  `${name}${optional ? '?' : ''}${isChoice(kind) ? `: ${kind.choices.join(' | ')}` : ''}`;
/** The catalogue as a list of what is released. */
export const listed = (rows: readonly AnyRow[]): Released =>
  Object.fromEntries(rows.map(({ id, args }) => [id, (args as readonly Arg[]).map(written)]));

const nameIn = (argument: string): string => argument.split(/[?:]/, 1)[0] as string;
const mayBeLeftOut = (argument: string): boolean => /^[^:]*\?/.test(argument);
const wordsIn = (argument: string): readonly string[] => argument.split(': ')[1]?.split(' | ') ?? [];

function argumentFaults(id: string, old: string, now: string | undefined): string[] {
  if (now === undefined) return [`${id} has lost ${nameIn(old)}`];
  if (nameIn(now) !== nameIn(old)) return [`${id} has ${nameIn(now)} in the place of ${nameIn(old)}`];
  const faults: string[] = [];
  if (mayBeLeftOut(old) && !mayBeLeftOut(now)) faults.push(`${id} needs ${nameIn(old)}`);
  // the first word counts where the argument is left out
  if (wordsIn(now)[0] !== wordsIn(old)[0])
    faults.push(`${id} takes another word where ${nameIn(old)} is left out`);
  for (const word of wordsIn(old))
    if (!wordsIn(now).includes(word)) faults.push(`${id} takes no more "${word}" for ${nameIn(old)}`);
  return faults;
}

/** How a workbook that was made with the released functions would break. */
export const breaks = (released: Released, now: Released): string[] =>
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

/** What workbooks may hold by now and the list does not, so that nothing would stop a change of it. */
export const lacks = (released: Released, now: Released): string[] =>
  Object.entries(now).flatMap(([id, args]) => {
    const old = released[id];
    if (!old) return [`the list lacks ${id}`];
    return args
      .filter((argument) => !old.includes(argument))
      .map((argument) => `the list lacks ${id}: ${argument}`);
  });

/** Why list and catalogue do not go together. */
export const faults = (released: Released, now: Released): string[] =>
  Object.keys(released).length === 0 ? [] : [...breaks(released, now), ...lacks(released, now)];
