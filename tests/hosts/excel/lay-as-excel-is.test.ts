import { describe, expect, test } from 'vitest';
import type { BookCell } from '../../../src/book/book';
import { PAGE } from '../../../src/book/printedPages';
import { columnPoints } from '../../../src/book/widthsAndHeights';
import { TEMPLATES } from '../../../src/sheets/templates';
import type { Template } from '../../../src/sheets/template';
import { drawn, FULL } from '../../full';
import { addressOf } from './support/a1';
import { held, LIGHTS, openExcel, planOf, sheetOf } from './support/laid';
import type { Ways } from './support/ways';

type Opened = ReturnType<typeof openExcel>;
const at = (cell: { row: number; column: number }): string => addressOf(cell.row, cell.column);
/** Everything a sheet should hold. */
const wanted = (template: Template): Record<string, unknown> =>
  Object.fromEntries(
    planOf(template, true).sheet.cells.filter((c) => held(c) !== undefined).map((c) => [at(c), held(c)]), // prettier-ignore
  );
const cells = ({ workbook }: Opened, { name }: Template) => Object.fromEntries(sheetOf(workbook, name).cells);
const STARTS = `“${LIGHTS.name}” is inserted with the demo job. Start in B5.`;

const states: readonly (readonly [string, Partial<Ways>])[] = [
  ['fills columns with what is written', { fillsColumns: 'everything' }],
  ['fills no columns', { fillsColumns: 'never' }],
  ['spells formulas in its own way', { spelling: 'short' }],
  ['puts an @ before functions', { spelling: 'at' }],
  ['is not ready with values', { unready: { shows: '#BUSY!', looks: 99 } }],
];
/** Every third sheet in one of the states and one in all of them; every sheet in every state in full. */
const sheets = TEMPLATES.flatMap((template, place) =>
  states
    .filter((_, i) => FULL || template === LIGHTS || (place % 3 === 0 && i === (place / 3) % states.length))
    .map(([name, ways]) => ({ template, name, ways })),
);
describe.each(sheets)('$template.name, where Excel $name,', ({ template, ways }) => {
  test('holds what the plan says, and nothing is said against it', async () => {
    const on = openExcel();
    Object.assign(on.workbook.ways, ways);
    expect(await on.host.insertSheet(template.id, true)).toMatchObject({
      done: expect.stringMatching(/^“[^”]*” is inserted( with the demo job)?\.( Start in [A-Z]+\d+\.)?$/) as string,
    }); // prettier-ignore
    expect(cells(on, template)).toEqual(wanted(template));
    // Nothing was written beside a table that would make it grow.
    const areas = sheetOf(on.workbook, template.name).tables.map(({ name, block }) => [name, block]);
    expect(Object.fromEntries(areas)).toEqual(
      Object.fromEntries(planOf(template, true).sheet.tables.map(({ name, area }) => [name, area])),
    );
  });
});

describe('a sheet that is right', () => {
  test.each([
    ['charts', 'Excel could not make its charts.'],
    ['freeze', 'Excel could not keep its headings in view.'],
    ['page', 'Excel could not set up how it prints.'],
  ] as const)('stays where Excel cannot make its %s, and that is said', async (part, sentence) => {
    const on = openExcel();
    on.workbook.ways.throwsAt.add(part);
    expect(await on.host.insertSheet(LIGHTS.id, true)).toMatchObject({ done: `${STARTS} ${sentence}` });
    expect(cells(on, LIGHTS)).toEqual(wanted(LIGHTS));
  });
  test('is calculated where a person calculates by hand, and that is said', async () => {
    const on = openExcel();
    on.workbook.ways.calculation = 'Manual';
    const sheet1 = sheetOf(on.workbook, 'Sheet1');
    sheet1.pending.set('A1', { text: '0', value: 0, isStale: true });
    expect(await on.host.insertSheet(LIGHTS.id, true)).toMatchObject({
      done: `${STARTS} Excel calculates this workbook by hand: press F9 after you type.`,
    });
    expect(sheetOf(on.workbook, LIGHTS.name).pending.size).toBe(0);
    // What is not ours waits for the person's own F9.
    expect(sheet1.pending.size).toBe(1);
  });
});

describe('the page', () => {
  test('is scaled to one across by the widths of its columns, on the paper that the person has', async () => {
    for (const template of drawn(TEMPLATES.filter(({ id }) => id !== 'proof'))) {
      const on = openExcel();
      // oxlint-disable-next-line no-await-in-loop -- one workbook after the other
      await on.host.insertSheet(template.id, true);
      const { page, widths } = planOf(template, true).sheet;
      let points = 0;
      for (let c = 0; c < (page.area?.columns ?? 0); c++) points += columnPoints(widths[c] ?? 8.43);
      const properties = sheetOf(on.workbook, template.name).item.children.get('PageLayout')?.properties;
      expect(properties).not.toHaveProperty('PaperSize');
      const scale = (properties?.Zoom as { scale?: number } | undefined)?.scale ?? 0;
      const room = page.landscape ? PAGE.lengthwise.width : PAGE.upright.width;
      expect(scale).toBeLessThanOrEqual(100);
      expect((points * scale) / 100).toBeLessThanOrEqual(room);
      expect(scale === 100 || (points * (scale + 1)) / 100 > room, template.id).toBe(true);
    }
  });
});

describe('what is on the sheet is read back:', () => {
  test('a cell that Excel made something else of is named, with what was expected', async () => {
    const on = openExcel();
    const { cells: planned } = planOf(LIGHTS, true).sheet;
    const cell = planned.find(({ formula = '' }) => formula !== '' && formula.length < 80) as BookCell;
    on.workbook.onFormulaWritten = (formula) => (formula === cell.formula ? '=1+1' : formula);
    const { done } = (await on.host.insertSheet(LIGHTS.id, true)) as { done: string };
    expect(done).toContain(`Not as planned: ${at(cell)} holds =1+1 where ${cell.formula} was expected`);
    expect(done).toContain('delete the sheet, or mend those cells by hand');
  });
  test('of many the first are named and the rest counted', async () => {
    const on = openExcel();
    on.workbook.onFormulaWritten = () => '=1+1';
    const { done } = (await on.host.insertSheet(LIGHTS.id, true)) as { done: string };
    const count = planOf(LIGHTS, true).sheet.cells.filter(({ formula }) => formula !== undefined).length;
    expect(done).toContain(`and ${count - 3} more`);
  });
  test('a value that went astray is named as well, and one that came from nowhere', async () => {
    const on = openExcel();
    let isDone = false;
    on.workbook.beforeBatch = () => {
      const sheet = on.workbook.find(LIGHTS.name);
      if (isDone || !sheet?.cells.has('B5')) return;
      isDone = true;
      sheet.cells.set('B5', 'x').set('B2', 'theirs');
    };
    const { done } = (await on.host.insertSheet(LIGHTS.id, true)) as { done: string };
    expect(done).toContain('B5 holds x where');
    expect(done).toContain('B2 holds theirs where nothing was expected');
  });
});

describe('a sheet of somebody else', () => {
  test('that has our name by then is never taken away', async () => {
    const on = openExcel();
    on.workbook.beforeBatch = () => {
      const ours = on.workbook.find(LIGHTS.name);
      if (!ours || ours.cells.size === 0 || ours.cells.get('A1') === 'theirs') return;
      // A colleague deletes our sheet while it is being decorated, and adds one of that name.
      on.workbook.sheets.splice(on.workbook.sheets.indexOf(ours), 1);
      on.workbook.addSheet(LIGHTS.name).cells.set('A1', 'theirs');
    };
    await on.host.insertSheet(LIGHTS.id, true);
    expect(on.workbook.find(LIGHTS.name)?.cells.get('A1')).toBe('theirs');
  });
  test('is not taken for ours where Excel broke off before it told which is ours', async () => {
    const on = openExcel();
    on.workbook.beforeBatch = (number) => {
      if (number !== 2) return;
      on.workbook.addSheet(LIGHTS.name).cells.set('A1', 'theirs');
      on.workbook.failures = [{ batch: 2, action: 0, code: 'GeneralException' }];
    };
    expect(await on.host.insertSheet(LIGHTS.id, true)).toMatchObject({
      refused: expect.stringContaining(`A half-made sheet “${LIGHTS.name}” may be left in the workbook`) as string,
    }); // prettier-ignore
    expect(on.workbook.find(LIGHTS.name)?.cells.get('A1')).toBe('theirs');
  });
});
