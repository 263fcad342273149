import { describe, expect, test } from 'vitest';
import { faults } from '../../src/sheets/checkTemplate';
import { freeSheetName, freeTableName, makePlan } from '../../src/sheets/makePlan';
import type { BookCell, BookSheet } from '../../src/book/book';
import { TEMPLATES } from '../../src/sheets/templates';
import type { Template } from '../../src/sheets/template';
import { PALETTE } from '../../src/book/palette';
import { THEME, WARNED } from '../../src/sheets/theme';
import { contrast } from './contrast';

const wish = { filled: true, sheets: [], tables: [], names: [] };
const template = (id: string): Template => TEMPLATES.find((t) => t.id === id) as Template;
const at = (plan: BookSheet, row: number, column: number): BookCell | undefined =>
  plan.cells.find((c) => c.row === row - 1 && c.column === column);

describe('names', () => {
  test('a sheet name that is taken gets a number, whatever its case', () => {
    expect(freeSheetName('Pops build', ['pops BUILD', 'Pops build (2)'])).toBe('Pops build (3)');
    expect(freeSheetName('x'.repeat(31), ['x'.repeat(31)])).toBe(`${'x'.repeat(27)} (2)`);
  });
  test('a table name that is taken gets a number', () =>
    expect(freeTableName('Lights', ['lights'])).toBe('Lights_2'));
  test('formulas follow the table’s new name, in heading rows, columns and warnings', () => {
    const plan = makePlan(template('lights-on-set'), {
      ...wish,
      tables: [{ name: 'Lights', columns: [] }],
    }).sheet;
    const formulas = plan.cells.flatMap((c) => c.formula ?? []);
    const renamed = plan.tables.find(({ name }) => name === 'Lights_2');
    expect(formulas.some((f) => f.includes('Lights_2[[#This Row],[Reading]]'))).toBe(true);
    expect(formulas.some((f) => /\bLights\[/.test(f))).toBe(false);
    expect(renamed?.columns.some((c) => c.formula?.includes('Lights_2[Light]'))).toBe(true);
  });
});

describe('every template', () => {
  for (const one of TEMPLATES) {
    describe(one.name, () => {
      const plan = makePlan(one, wish).sheet;
      test('chains at most two of our functions, and a third in words alone', () =>
        expect(faults(one)).toEqual([]));
      test('lays no cell twice', () => {
        const places = plan.cells.map((c) => `${c.row},${c.column}`);
        expect(new Set(places).size).toBe(places.length);
      });
      test('starts with what it answers and what to type', () => {
        expect(at(plan, 1, 0)).toMatchObject({ part: 'title', value: one.answers });
        expect(at(plan, 2, 0)).toMatchObject({ part: 'lead', value: one.start });
      });
      test('empty, it has the same cells with nothing in the inputs', () => {
        const empty = makePlan(one, { ...wish, filled: false }).sheet;
        expect(empty.cells.map((c) => [c.row, c.column, c.part, c.formula])).toEqual(
          plan.cells.map((c) => [c.row, c.column, c.part, c.formula]),
        );
        const inputs = empty.cells.filter((c) => c.part === 'input' || c.part === 'choice');
        if (one.id !== 'proof') expect(inputs.length).toBeGreaterThan(5);
        expect(inputs.every((c) => c.value === null)).toBe(true);
      });
      test('keeps formulas free of names, prefixes and braces', () => {
        for (const { formula } of plan.cells) expect(formula ?? '').not.toMatch(/\{[a-z]|_xl|\[@/);
      });
      test('prints all of its cells, but for what stands right of or below its last one on purpose', () => {
        const { area } = plan.page;
        if (!area) throw new Error('nothing is printed');
        const isOfTable = ({ row, column }: BookCell): boolean =>
          plan.tables.some(
            ({ area: t }) =>
              row >= t.row - 1 && row < t.row + t.rows && column >= t.column && column < t.column + t.columns,
          );
        for (const c of plan.cells) {
          // What is typed once into a table, from a manual or a recorder, may be left out; nothing that is typed into a form.
          const mayBeLeftOut =
            one.printsTo !== undefined && (isOfTable(c) || !/input|choice|answer|caution/.test(c.part ?? ''));
          if (mayBeLeftOut) continue;
          expect(c.row).toBeLessThan(area.row + area.rows);
          expect(c.column).toBeLessThan(area.column + area.columns);
        }
      });
    });
  }
});

test('cells that take fractions are preset as text before the value', () => {
  const plan = makePlan(template('pops-build'), wish).sheet;
  const time = plan.cells.find((c) => c.value === '2 s');
  expect(time?.style?.format).toBe('@');
});

test('a warning is told in words beside the cell, not by colour alone', () => {
  const plan = makePlan(template('pops-build'), wish).sheet;
  const words = plan.cells.filter((c) => c.part === 'warning');
  expect(words.length).toBeGreaterThan(1);
  for (const cell of words) expect(cell.formula).toMatch(/^=IF\(.*"! ([^"]+"|"&)/);
});

describe('the theme', () => {
  for (const [part, look] of [...Object.entries(THEME), ['warned', WARNED] as const])
    test(`${part} is readable (WCAG 2.1, 1.4.3 and 1.4.6)`, () =>
      expect(contrast(look.ink, look.fill ?? '#ffffff')).toBeGreaterThanOrEqual(
        look.italic || part === 'lead' ? 4.5 : 7,
      ));
  test('inputs, results, headings and warnings differ in more than colour', () => {
    const shape = (look: { bold?: true; italic?: true; edge?: string }): string =>
      `${look.bold} ${look.italic} ${look.edge}`;
    const shapes = [THEME.input, THEME.result, THEME.heading, THEME.answer, WARNED].map(shape);
    expect(new Set(shapes).size).toBe(shapes.length);
  });
  test('no colour is used twice for two things', () =>
    expect(new Set(Object.values(PALETTE)).size).toBe(Object.keys(PALETTE).length));
});
