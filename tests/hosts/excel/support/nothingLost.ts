import { expect } from 'vitest';
import type { MendedCell, Outcome } from '../../../../src/pane/host';
import { withNamesMended } from '../../../../src/formula/spelling';
import { addTheirs, type Case, contentOf, type Incident, SELECTIONS } from './anyExcel';
import { LIGHTS, openExcel } from './laid';
import type { FakeWorkbook } from './fake-workbook';
import type { Sheet } from './sheet';

const FORMULA = '=SWEEP.LIGHTSUM(8,11)';

/** A workbook, with what people have in it as it should be: whatever is not theirs came from us. */
class Workplace {
  readonly #opened = openExcel();
  readonly #theirs = new Map<Sheet, Record<string, unknown>>();
  /** Sheets that came from us and that somebody has changed since. */
  readonly changed = new Set<Sheet>();

  constructor({ sheets, ways }: Case) {
    const { throws, ...rest } = ways;
    Object.assign(this.workbook.ways, rest, rest.unready && { unready: { ...rest.unready } });
    for (const part of throws) this.workbook.ways.throwsAt.add(part);
    for (const drawn of sheets) addTheirs(this.workbook, drawn);
    for (const sheet of this.workbook.sheets) this.keep(sheet);
    this.workbook.active = this.workbook.sheets[1];
  }

  get workbook(): FakeWorkbook {
    return this.#opened.workbook;
  }
  get host() {
    return this.#opened.host;
  }
  get ours(): Sheet[] {
    return this.workbook.sheets.filter((sheet) => !this.#theirs.has(sheet));
  }

  /** Notes that a sheet is as somebody wants it. */
  keep(sheet: Sheet): void {
    this.#theirs.set(sheet, contentOf(sheet));
  }
  /** Notes one cell that somebody has written. */
  wrote(sheet: Sheet, at: string, content: unknown): void {
    sheet.cells.set(at, content);
    const kept = this.#theirs.get(sheet);
    if (kept) (kept.cells as Record<string, unknown>)[at] = content;
    else this.changed.add(sheet);
  }
  also(sheet: Sheet, part: string): void {
    const kept = this.#theirs.get(sheet);
    if (kept) kept[part] = contentOf(sheet)[part];
  }

  /** That all is there that somebody has, but for cells that were asked to be changed, each from what it held. */
  check(asked: (sheet: Sheet, at: string, from: unknown, to: unknown) => boolean = () => false): void {
    for (const [sheet, wanted] of this.#theirs) {
      expect(this.workbook.sheets, `“${sheet.name}” is there`).toContain(sheet);
      const cells = { ...(wanted.cells as Record<string, unknown>) };
      for (const at of new Set([...sheet.cells.keys(), ...Object.keys(cells)])) {
        const [from, to] = [cells[at], sheet.cells.get(at)];
        if (from !== to && asked(sheet, at, from, to)) cells[at] = to;
      }
      expect({ ...contentOf(sheet) }, sheet.name).toEqual({ ...wanted, cells });
    }
  }
}

/** Somebody else at work, or Excel itself. What they do to a cell that is just being written nobody can prevent: they write elsewhere. */
function happen(on: Workplace, incident: Incident): void {
  const { workbook } = on;
  const theirs = (nth: number): Sheet => workbook.sheets[1 + nth] as Sheet;
  const isDeleting = workbook.batches.at(-1)?.Actions.some(({ Name }) => Name === 'Delete');
  switch (incident.kind) {
    case 'fails':
      workbook.failures = [{ batch: workbook.batches.length, ...incident }];
      return;
    case 'adds':
      if (!workbook.find(incident.name)) on.wrote(added(on, incident.name), 'A1', 'a colleague’s');
      return;
    case 'writes':
      on.wrote(theirs(incident.sheet), 'Q9', 'a colleague’s');
      return;
    case 'renames': {
      const sheet = theirs(incident.sheet);
      if (workbook.find('Renamed')) return;
      Object.assign(sheet, { name: 'Renamed' });
      Object.assign(sheet.item.properties, { Name: 'Renamed' });
      return;
    }
    case 'adds a table': {
      const sheet = theirs(incident.sheet);
      if (workbook.tables.some(({ name }) => name === 'Lights')) return;
      sheet.addTable({ row: 20, column: 16, rows: 2, columns: 2 }, 'Lights');
      on.also(sheet, 'tables');
      return;
    }
    case 'protects':
      theirs(incident.sheet).isProtected = true;
      on.also(theirs(incident.sheet), 'isProtected');
      return;
    case 'writes on ours':
      if (!isDeleting) for (const sheet of on.ours) on.wrote(sheet, 'Z90', 'a colleague’s');
      return;
    case 'deletes ours':
      for (const sheet of on.ours) {
        workbook.sheets.splice(workbook.sheets.indexOf(sheet), 1);
        on.changed.delete(sheet);
      }
      return;
    case 'is not ready':
      workbook.ways.unready = { shows: '#BUSY!', looks: 3 };
      return;
    case 'is ready':
      workbook.ways.unready = undefined;
  }
}

function added(on: Workplace, name: string): Sheet {
  const sheet = on.workbook.addSheet(name);
  on.keep(sheet);
  return sheet;
}

const sentence = (outcome: object): string => {
  const said = ['done', 'refused'].flatMap((key) => (key in outcome ? [(outcome as Record<string, string>)[key]] : [])); // prettier-ignore
  expect(said).toHaveLength(1);
  expect(said[0]).toMatch(/^\S.*[.?]$/s);
  return said[0] as string;
};

/** What the pane said of the workbook must be so. */
function checkSaid(on: Workplace, outcome: object, most: number): void {
  const said = sentence(outcome);
  const { length } = on.ours;
  expect(length, said).toBeLessThanOrEqual(most);
  // What somebody wrote on a sheet of ours is theirs.
  expect(on.workbook.sheets, said).toEqual(expect.arrayContaining([...on.changed]));
  if (said.includes('The workbook is as it was.')) expect(length, said).toBe(0);
  if ('refused' in outcome && length > 0) expect(said).toMatch(/(may be|is) left in the workbook|is in the workbook, whole/); // prettier-ignore
}

const isMend = (_sheet: Sheet, _at: string, from: unknown, to: unknown): boolean =>
  typeof from === 'string' && withNamesMended(from) === to;

async function repair(on: Workplace): Promise<void> {
  const found = await on.host.findLost();
  sentence(found);
  on.check();
  if (!('cells' in found)) return;
  const outcome = await on.host.mendLost(found.cells);
  const said = sentence(outcome);
  on.check(said.includes('The workbook is as it was.') ? undefined : isMend);
  if (!('cells' in outcome)) return;
  checkMended(on, outcome.cells);
  sentence(await on.host.takeBack(outcome.cells));
  on.check(isMend);
}

/** What is said to be mended is mended. */
function checkMended({ workbook }: Workplace, cells: readonly MendedCell[]): void {
  for (const { sheet, cell, before } of cells) {
    const mended = withNamesMended(before);
    const held = workbook.find(sheet)?.cells.get(cell);
    // A colleague may have given the sheet another name by now.
    if (workbook.find(sheet)) expect(held, `${cell} on ${sheet}`).toBe(mended);
  }
}

async function put(on: Workplace, address: string): Promise<void> {
  const [, sheet] = on.workbook.sheets as [Sheet, Sheet];
  on.workbook.select(sheet.name, address);
  const outcome = await on.host.putFormula(FORMULA);
  const said = sentence(outcome);
  const isDone = 'done' in outcome;
  if (isDone) expect(sheet.cells.get(address)).toBe(FORMULA);
  if (isDone && sheet.formats.get(address) === 'General') on.also(sheet, 'formats');
  // Where Excel broke off in between it is said that cells of the column may be filled: they were empty.
  const mayFill = said.includes('may be in the cell');
  if (mayFill) on.also(sheet, 'formats');
  on.check(
    (of, at, from, to) =>
      of === sheet && from === undefined && to === FORMULA && (mayFill || (isDone && at === address)),
  );
}

async function takeBack(on: Workplace, inserted: Outcome, play: () => void): Promise<void> {
  if (!('takeBack' in inserted) || !inserted.takeBack) return;
  const sheets = on.ours;
  play();
  const outcome = await inserted.takeBack();
  sentence(outcome);
  on.check();
  if (sheets.some((sheet) => on.changed.has(sheet))) expect(outcome).toHaveProperty('refused');
  if ('done' in outcome) expect(on.ours).toEqual([]);
}

/** Carries out one wish in a drawn workbook where drawn things happen, and checks that nobody has lost anything. */
export async function loseNothing(drawn: Case): Promise<void> {
  const on = new Workplace(drawn);
  const play = (): void => {
    const from = on.workbook.batches.length;
    // a job asks three times as much
    const every = drawn.wish.includes('job') ? 3 : 1;
    on.workbook.beforeBatch = (number) => {
      for (const { request, incident } of drawn.incidents)
        if (number - from === request * every) happen(on, incident);
    };
  };
  if (!drawn.wish.startsWith('take')) play();
  switch (drawn.wish) {
    case 'insert':
      checkSaid(on, await on.host.insertSheet(LIGHTS.id, true), 1);
      break;
    case 'new job':
      checkSaid(on, await on.host.newJob(), 3);
      break;
    case 'copy':
      checkSaid(on, await on.host.copyValues(), 1);
      break;
    case 'recalculate':
      sentence(await on.host.recalculate());
      break;
    case 'repair':
      await repair(on);
      return;
    case 'put':
      await put(on, SELECTIONS[drawn.selected] as string);
      return;
    case 'take back':
      await takeBack(on, await on.host.insertSheet(LIGHTS.id, true), play);
      return;
    case 'take job back':
      await takeBack(on, await on.host.newJob(), play);
      return;
  }
  on.check();
}
