import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Workbook } from '@cj-tech-master/excelts';
import { installChartSupport } from '@cj-tech-master/excelts/chart';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { KEY_LIGHT } from './lightsOnSet';
import { heapOf } from './heap';
import { Workbench } from './workbench';

let sheet: Workbench;
let folder: string;

beforeAll(async () => {
  installChartSupport();
  folder = await mkdtemp(join(tmpdir(), 'endurance-'));
});
afterAll(async () => {
  await rm(folder, { recursive: true });
});
afterEach(async () => {
  expect(sheet.complaints).toEqual({ errors: [], outside: [] });
  await sheet.close();
});

/** Always the same row of choices (a multiplicative congruential generator: Park and Miller, 1988). */
function choices(seed: number) {
  let state = seed;
  const below = (count: number): number => {
    state = (state * 16_807) % 2_147_483_647;
    return state % count;
  };
  return {
    below,
    of: <T>(all: readonly T[]): T => all[below(all.length)] as T,
  };
}

const TEMPLATES = ['Pops build', 'Lights on set'] as const;
type Template = (typeof TEMPLATES)[number];

/** Pops that the demo job needs for each aperture, with the ambient light that creeps in (worked by hand in sheets.test.ts). */
const POPS: Readonly<Record<number, number>> = { 11: 1, 16: 1, 22: 2, 32: 3, 45: 5 };
const APERTURES = Object.keys(POPS).map(Number);

/** What must be on a sheet: the two numbers beside the table, their formula, and the job's aperture. */
interface Page {
  readonly template: Template;
  aperture: number;
  numbers: readonly [number, number] | undefined;
}

function cellsOf({ template, aperture, numbers }: Page): Readonly<Record<string, number | null>> {
  const [a, b] = numbers ?? [null, null];
  return {
    G5: a,
    G6: b,
    G7: a === null || b === null ? null : a * b + 1,
    ...(template === 'Lights on set'
      ? { [KEY_LIGHT.cell]: KEY_LIGHT.value }
      : { B6: aperture, B20: POPS[aperture] ?? null }),
  };
}

const ROUNDS = 2;

it(
  'loses nothing in rounds of inserting, typing, saving, undoing and loading anew',
  { timeout: 300_000 },
  async () => {
    const choose = choices(1988);
    const model = new Map<string, Page>([
      ['Pops build', { template: 'Pops build', aperture: 45, numbers: undefined }],
    ]);
    sheet = await Workbench.open();
    await sheet.stretch(1500);
    let inView = 'Pops build';
    const show = async (name: string) => {
      if (name !== inView) await sheet.sheet(name);
      inView = name;
    };
    const pageNamed = (name: string): Page => {
      const page = model.get(name);
      if (!page) throw new Error(`The model has no sheet "${name}".`);
      return page;
    };

    async function compare(): Promise<void> {
      expect(await sheet.sheets()).toEqual([...model.keys()]);
      for (const [name, page] of model) {
        await show(name);
        for (const [cell, value] of Object.entries(cellsOf(page)))
          if (value === null) await sheet.shows(cell, null);
          else await sheet.showsNear(cell, value);
      }
    }
    async function insert(): Promise<string> {
      const template = choose.of(TEMPLATES);
      await sheet.insert(template);
      inView = await sheet.page.evaluate(() => window.sweeptable.inView());
      model.set(inView, { template, aperture: 45, numbers: undefined });
      return inView;
    }
    async function typeNumbers(name: string): Promise<void> {
      await show(name);
      const numbers = [choose.below(1000), choose.below(1000)] as const;
      await sheet.enterDown('G5', [...numbers.map(String), '=G5*G6+1']);
      pageNamed(name).numbers = numbers;
    }
    async function typeAperture(name: string): Promise<void> {
      await show(name);
      const page = pageNamed(name);
      page.aperture = choose.of(APERTURES.filter((each) => each !== page.aperture));
      await sheet.enter('B6', String(page.aperture));
    }
    async function typeAndTakeBack(name: string): Promise<void> {
      await show(name);
      await sheet.enter('G5', '-1');
      await sheet.shows('G5', -1);
      await sheet.undo('A3');
    }
    async function saveFile(): Promise<void> {
      const [download] = await Promise.all([
        sheet.page.waitForEvent('download'),
        sheet.command('Save as .xlsx'),
      ]);
      const file = join(folder, 'saved.xlsx');
      await download.saveAs(file);
      const book = new Workbook();
      await book.xlsx.readFile(file);
      for (const [name, page] of model) {
        for (const [cell, value] of Object.entries(cellsOf(page))) {
          const { result, value: typed } = book.getWorksheet(name)?.getCell(cell) ?? {};
          if (value === null) expect(typed ?? null, `${name} ${cell}`).toBe(null);
          else expect(result ?? typed, `${name} ${cell}`).toBeCloseTo(value, 9);
        }
      }
    }
    async function insertAndTakeBack(): Promise<void> {
      const name = await insert();
      await sheet.pane.getByRole('button', { name: 'Take back' }).click();
      await expect.poll(() => sheet.sheets()).not.toContain(name);
      model.delete(name);
      inView = await sheet.page.evaluate(() => window.sweeptable.inView());
    }

    for (let round = 0; round < ROUNDS; round++) {
      const name = await insert();
      await typeNumbers(name);
      await typeAperture('Pops build');
      await typeAndTakeBack(name);
      await insertAndTakeBack();
      await compare();
      await saveFile();
      await sheet.page.evaluate(() => dispatchEvent(new Event('pagehide')));
      await sheet.reload();
      await compare();
    }
    expect(await sheet.standing.innerText()).toBe('');
  },
);

/**
 * Bytes that the heaps may grow by each time a sheet comes and goes. The grid keeps about 35,000 of them in the page and
 * 2,500 in the worker, a thousandth of what they hold; a workbook that is kept is 60,000.
 */
const ALLOWED = { page: 50_000, worker: 8_000 } as const;
const CYCLES = 24;
const ROUNDS_OF_GROWTH = 4;

type Growth = Readonly<Record<keyof typeof ALLOWED, number>>;

const least = (rounds: readonly Growth[]): Growth => ({
  page: Math.min(...rounds.map(({ page }) => page)),
  worker: Math.min(...rounds.map(({ worker }) => worker)),
});

const staysWithin = ({ page, worker }: Growth): boolean => page < ALLOWED.page && worker < ALLOWED.worker;

it('keeps the heap flat while sheets come and go', { timeout: 300_000 }, async () => {
  sheet = await Workbench.open();
  const heap = await heapOf(sheet.page);
  /** All within the page: each look from outside would leave a little behind in it. */
  const cycles = (rounds: number) =>
    sheet.page.evaluate(async (count) => {
      const press = (words: RegExp): void => {
        const all = [...document.querySelectorAll<HTMLButtonElement>('#pane button')];
        const found = all.find(({ textContent }) => words.test(textContent));
        if (!found) throw new Error(`There is no button ${words}.`);
        found.click();
      };
      const said = async (words: RegExp) => {
        const status = document.querySelector('.pane > .status');
        while (!words.test(status?.textContent ?? ''))
          await new Promise((resolve) => setTimeout(resolve, 20));
      };
      for (let i = 0; i < count; i++) {
        const answers = window.sweeptable.calculated();
        press(/^Insert with the demo job\W*Lights on set$/);
        await said(/is inserted/);
        await answers;
        press(/^Take back$/);
        await said(/is taken away again/);
      }
    }, rounds);
  const measure = async () => ({ page: await heap.page(), worker: await heap.worker() });
  const perCycle = (after: number, before: number) => (after - before) / CYCLES;

  // Until undo forgets the first of them; and the third look finds code given up that only the start needed.
  for (let look = 0; look < 3; look++) {
    await cycles(CYCLES / 2);
    await measure();
  }
  // The engine compiles and gives up code when it likes, some hundred kilobytes at a time; a leak grows in every round.
  const rounds: Growth[] = [];
  let last = await measure();
  do {
    const before = last;
    await cycles(CYCLES);
    last = await measure();
    rounds.push({ page: perCycle(last.page, before.page), worker: perCycle(last.worker, before.worker) });
  } while (rounds.length < ROUNDS_OF_GROWTH && !staysWithin(least(rounds)));
  const grown = least(rounds);
  expect(grown.page, JSON.stringify(rounds)).toBeLessThan(ALLOWED.page);
  expect(grown.worker, JSON.stringify(rounds)).toBeLessThan(ALLOWED.worker);

  // One workbook kept in each round would be seen.
  await sheet.page.evaluate(
    (count) =>
      new Promise<void>((resolve) => {
        indexedDB.open('sweeptable').addEventListener('success', ({ target }) => {
          const store = (target as IDBOpenDBRequest).result.transaction('workbooks').objectStore('workbooks');
          const kept: unknown[] = [];
          Object.assign(window, { kept });
          for (let i = 0; i < count; i++)
            store.get('now').addEventListener('success', (event) => {
              if (kept.push((event.target as IDBRequest).result) === count) resolve();
            });
        });
      }),
    CYCLES,
  );
  const leaking = perCycle(await heap.page(), last.page);
  expect(grown.page + leaking).toBeGreaterThan(ALLOWED.page);
});
