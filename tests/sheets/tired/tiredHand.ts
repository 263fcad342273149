import { describe, expect, it } from 'vitest';
import type { Template } from '../../../src/sheets/template';
import { templateOf, type Typed, typedOver } from '../support';
import { FULL, oneOf } from '../../full';
import { type Input, inputsOf } from './inputs';
import { type After, type Judge, judgeOf } from './judge';
import { type Meaning, type Mishap, MISHAPS, otherValues, type Slip } from './mishaps';
import { opened, type Seen } from './opened';

interface Case {
  readonly input: Input;
  readonly mishap: Mishap;
  readonly slip: Slip;
  readonly meaning: Meaning;
}

const OFTEN = FULL ? 6 : 40;
/** One in forty, or in full one in six, others in each run; or one in fifteen. Every input meets some mishaps, and every mishap some inputs. */
const casesOf = (inputs: readonly Input[], many: boolean): Case[] =>
  inputs.flatMap((input, i) =>
    MISHAPS.flatMap((mishap, j) => {
      const slip = mishap.slip(input);
      const isTaken = many ? (i + j) % OFTEN === oneOf(OFTEN) : (i + j) % 15 === 0;
      if (slip === undefined || !isTaken) return [];
      return [{ input, mishap, slip, meaning: mishap.meaning(input) }];
    }),
  );

/** What an input says that nothing in it means: "blank for none", "blank is 20%". */
function documented({ words }: Input): number | undefined {
  if (/\bblank for none\b/.test(words)) return 0;
  if (/\bblank(:| is) a tenth of a stop\b/.test(words)) return 0.1;
  const percent = /\bblank is (\d+)%/.exec(words);
  return percent ? Number(percent[1]) / 100 : undefined;
}

/** The same input in plain notation, or undefined where there is none. */
function plainOf({ input, slip, meaning }: Case): Slip | undefined {
  if (meaning.is === 'legal') return meaning.plain === slip ? undefined : meaning.plain;
  if (meaning.is !== 'blank') return undefined;
  return documented(input) ?? (slip === null ? undefined : null);
}

/** A refusal has words, and beside it stands no other answer. */
const unlessRefused = (judge: Judge, seen: Seen): string[] => [
  ...(judge.speaks(seen) ? [] : ['nothing is said']),
  ...judge.silent(seen),
];

function faults(
  judge: Judge,
  { input, slip, meaning }: Case,
  seen: Seen,
  plain: After | undefined,
): string[] {
  if (meaning.is === 'any') return judge.errors(seen);
  const refused = unlessRefused(judge, seen);
  const mayBeBlank = input.value === null || /\bblank\b/i.test(input.words);
  const mayMean = meaning.is === 'legal' || (meaning.is === 'blank' && mayBeBlank);
  if (refused.length === 0 || !mayMean) return refused;
  return [...judge.errors(seen), ...(plain ? judge.unlike({ seen, slip }, plain) : [])];
}

/** Types everything into each input, and calculates all of it: what is wrong, and which inputs nobody reads. */
async function tried(template: Template, inputs: readonly Input[], many: boolean) {
  const cases = casesOf(inputs, many);
  const sheet = await opened(template);
  const after = async ({ place }: Input, slip: Slip): Promise<After> => ({
    seen: await sheet.after(new Map([[place, slip]])),
    slip,
  });
  const judge = judgeOf(template, await sheet.after(new Map()));
  const known = new Map<Input, boolean>();
  /** Whether nobody reads the cell, as things are. */
  const isAsleep = async (input: Input): Promise<boolean> => {
    const before = known.get(input);
    if (before !== undefined) return before;
    let asleep = true;
    for (const slip of otherValues(input)) asleep &&= !judge.moves((await after(input, slip)).seen);
    known.set(input, asleep);
    return asleep;
  };
  const found: string[] = [];
  for (const each of cases) {
    const { input, mishap, slip } = each;
    const { seen } = await after(input, slip);
    const twin = plainOf(each);
    const plain = twin === undefined ? undefined : await after(input, twin);
    const [first, ...more] = faults(judge, each, seen, plain);
    if (first === undefined) continue;
    if (!judge.moves(seen) && (await isAsleep(input))) continue;
    found.push(
      `${input.name}, ${mishap.name}: ${first}${more.length > 0 ? `, and ${more.length} more` : ''}`,
    );
  }
  sheet.dispose();
  return { found, count: cases.length };
}

/**
 * Holds that a sheet refuses in words, or answers right, whatever a tired hand types into one of its cells.
 *
 * @param many - many of all slips into all cells, or one in fifteen.
 * @param scenes - the sheet as its demo does not have it, for inputs that the demo leaves asleep: only what is typed over is
 *   tried.
 */
export function itBearsATiredHand(
  id: string,
  many: boolean,
  scenes: Readonly<Record<string, Typed>> = {},
): void {
  const template = templateOf(id);
  describe(`whatever a tired hand types into one cell of ${template.name}`, () => {
    it('is refused in words, or answered right', async () => {
      const { found, count } = await tried(template, inputsOf(template, many), many);
      expect(count).toBeGreaterThan(5);
      expect(found).toEqual([]);
    });

    it.each(Object.entries(scenes))('so it is where it is %s', async (_, typed) => {
      const scene = typedOver(template, typed);
      const inputs = inputsOf(scene, many).filter(({ name }) => name in typed);
      expect((await tried(scene, inputs, many)).found).toEqual([]);
    });
  });
}
