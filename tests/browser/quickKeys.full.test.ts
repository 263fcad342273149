import { expect, it } from 'vitest';
import { address, type Place } from '../../src/formula/address';
import { random } from '../exposure/random';
import { caseNumbers } from '../full';
import { allInOneWorkbook } from './onePage';
import { lightsOnSet, TALL } from './lightsOnSet';
import type { Workbench } from './workbench';

let sheet: Workbench;
allInOneWorkbook((fresh) => {
  sheet = fresh;
}, TALL);
lightsOnSet(() => sheet);

/** A column for words, which takes anything, and two of metres above 0 and up to 20; rows of the table of lights. */
const [LEFT, RIGHT, TOP, BOTTOM] = [11, 13, 32, 37];
const TAKES_ALL = LEFT;
/** These and those around them are looked at. */
const LOOKED_AT: readonly Place[] = Array.from({ length: BOTTOM - TOP + 3 }, (_, row) =>
  Array.from({ length: RIGHT - LEFT + 3 }, (__, column) => ({
    row: TOP - 1 + row,
    column: LEFT - 1 + column,
  })),
).flat();

const STEPS = {
  Enter: [1, 0],
  Tab: [0, 1],
  ArrowDown: [1, 0],
  ArrowUp: [-1, 0],
  ArrowRight: [0, 1],
  ArrowLeft: [0, -1],
} as const;
type Step = keyof typeof STEPS;
/** After Tab the grid goes back by Enter to where that began: one is tried with arrows, then the other. */
const LEADS = [
  ['Enter', 'Enter', 'Enter', 'ArrowDown', 'ArrowUp', 'ArrowLeft', 'ArrowRight'],
  ['Tab', 'Tab', 'ArrowDown', 'ArrowUp', 'ArrowLeft'],
] as const satisfies readonly (readonly Step[])[];

const isTaken = (words: string, { column }: Place): boolean =>
  column === TAKES_ALL || (Number(words) > 0 && Number(words) <= 20);

/** What somebody does who types without looking, and what must come of it: keys, and what is typed into which cell. */
class Typist {
  /** Pressed as fast as they go, up to each Escape. */
  readonly bursts: string[][] = [[]];
  readonly typed = new Map<string, string>();
  /** What was refused while the typing went on, by its cell, until that is typed into again. */
  readonly refused = new Map<string, string[]>();
  at: Place;
  #open = '';
  #refusedAt: Place | undefined;

  constructor(at: Place) {
    this.at = at;
  }

  get keys(): string {
    return this.bursts.flat().join(' ');
  }

  #press(...keys: string[]): void {
    this.bursts.at(-1)?.push(...keys);
  }

  after(step: Step): Place | undefined {
    const [down, right] = STEPS[step];
    const { row, column } = { row: this.at.row + down, column: this.at.column + right };
    return row < TOP || row > BOTTOM || column < LEFT || column > RIGHT ? undefined : { row, column };
  }

  type(words: string): void {
    this.#press(...words);
    this.#open += words;
    this.#refusedAt = undefined;
    this.refused.delete(address(this.at));
  }

  lead(step: Step): void {
    this.#press(step);
    const a1 = address(this.at);
    this.#refusedAt = undefined;
    if (this.#open !== '' && isTaken(this.#open, this.at)) this.typed.set(a1, this.#open);
    else if (this.#open !== '') {
      this.refused.set(a1, [...(this.refused.get(a1) ?? []), this.#open]);
      this.#refusedAt = this.at;
    }
    this.#open = '';
    this.at = this.after(step) ?? this.at;
  }

  giveUp(): void {
    this.#press('Escape');
    this.bursts.push([]);
    this.#open = '';
    if (!this.#refusedAt) return;
    // nobody had gone on from there
    this.at = this.#refusedAt;
    this.refused.delete(address(this.at));
    this.#refusedAt = undefined;
  }
}

const values = async (): Promise<Readonly<Record<string, string>>> => {
  const all = LOOKED_AT.map(address);
  const found = await sheet.values(...all);
  return Object.fromEntries(all.map((a1, i) => [a1, String(found[i] ?? '')]));
};

it.each(caseNumbers(12))('what is typed is in its cell or told, and in no other: %i', async (number) => {
  const draw = random(number);
  const oneOf = <T>(all: readonly T[]): T => all[Math.floor(draw() * all.length)] as T;
  const start = { row: TOP + Math.floor(draw() * 3), column: LEFT + Math.floor(draw() * 3) };
  const typist = new Typist(start);
  const leads = oneOf(LEADS);
  for (let entry = 1; entry <= 8; entry++) {
    // no two are alike, so that one in a wrong cell is known
    const good = ((number % 90) / 10 + 1 + entry / 1000).toFixed(3);
    if (draw() < 0.8) typist.type(oneOf([good, good, `-${good}`, `99${good}`, `x${good}`]));
    if (draw() < 0.1) typist.giveUp();
    else typist.lead(oneOf(leads.filter((step) => typist.after(step) !== undefined)));
  }
  typist.giveUp();
  const before = await values();
  await sheet.click(address(start));
  // one is pressed before the one before it is let go, as by two thumbs
  for (const burst of typist.bursts) await Promise.all(burst.map((key) => sheet.page.keyboard.press(key)));
  await expect
    .poll(values, { message: typist.keys })
    .toEqual({ ...before, ...Object.fromEntries(typist.typed) });
  const left = [...typist.refused].flatMap(([a1, all]) => all.map((words) => `${a1}: “${words}”`));
  const told = async (): Promise<string[]> =>
    (await sheet.refusal.allInnerTexts()).flatMap((tip) => tip.match(/[A-Z]+\d+: “.*?”/g) ?? ['no cell']);
  await expect.poll(async () => (await told()).sort(), { message: typist.keys }).toEqual(left.sort());
  if (left.length > 0) await sheet.page.getByRole('button', { name: 'Leave as it was' }).click();
});

it('Enter goes on below a cell that was chosen by hand, wherever Tab had led before', async () => {
  await sheet.click('M33');
  await sheet.page.keyboard.press('Tab');
  await sheet.click('N34');
  await sheet.page.keyboard.press('Enter');
  expect(await sheet.page.evaluate(() => window.sweeptable.selected())).toBe('N35');
  // and else below where Tab began
  await sheet.page.keyboard.press('Tab');
  await sheet.page.keyboard.press('Enter');
  expect(await sheet.page.evaluate(() => window.sweeptable.selected())).toBe('N36');
});
