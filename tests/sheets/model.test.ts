import { describe, expect, test } from 'vitest';
import type { BookCell, BookSheet } from '../../src/book/book';
import { makePlan, planAlone } from '../../src/sheets/makePlan';
import type { Template } from '../../src/sheets/template';

/** A rule "above 0, up to 9", headings of one and of two lines, and a cell that is warned of. */
const SMALL: Template = {
  id: 'small',
  name: 'Small',
  answers: 'What?',
  start: 'Type.',
  words: [],
  columns: [10, 10, 10, 20],
  freezeRows: 2,
  landscape: true,
  blocks: [
    {
      kind: 'form',
      title: 'Above',
      at: 'A4',
      fields: [
        {
          id: 'open',
          label: 'Open',
          quantity: 'wait',
          value: 2,
          warning: { when: '={open}>5', text: 'long' },
          accepts: { above: 0, most: 9, message: 'Above 0, up to 9.' },
        },
      ],
    },
    {
      kind: 'table',
      title: 'Rows',
      at: 'A7',
      id: 'Rows',
      columns: [
        { id: 'Name', quantity: 'text', accepts: { list: ['one', 'two'], message: 'One or two.' } },
        {
          id: 'Energy of the head',
          quantity: 'count',
          warning: { when: '=[@Energy of the head]>3', text: 'much' },
          accepts: { least: 1, whole: true, message: 'From 1.' },
        },
      ],
      rows: [
        ['one', 1],
        ['two', 4],
      ],
    },
  ],
  charts: [],
  cautions: [],
};

const { sheet, names, start } = planAlone(SMALL, true);
const at = (row: number, column: number): BookCell => {
  const found = sheet.cells.find((cell) => cell.row === row && cell.column === column);
  if (!found) throw new Error(`no cell ${row}, ${column}`);
  return found;
};

describe('one sheet, for every host', () => {
  test('what may be typed, settled: above 0 begins a hair above it, so that every host compares numbers', () => {
    const one = (row: number, column: number, rows = 1): BookSheet['rules'][number]['areas'] => [
      { row, column, rows, columns: 1 },
    ];
    expect(sheet.rules).toEqual([
      { areas: one(4, 1), kind: 'decimal', compare: 'between', bounds: ['1e-9', '9'], blank: true, strict: true, refusal: 'Above 0, up to 9.' },
      { areas: one(8, 0, 2), kind: 'list', bounds: ['"one,two"'], blank: true, strict: true, refusal: 'One or two.' },
      { areas: one(8, 1, 2), kind: 'whole', compare: 'greaterThanOrEqual', bounds: ['1'], blank: true, strict: true, refusal: 'From 1.' },
    ]); // prettier-ignore
  });

  test('heights: a heading of two lines is as high as two lines of its letters', () => {
    // "Energy of the head" in 10 characters: (10·7 + 5)·¾ = 56.25 points hold 9 letters of 5.5 points, so
    // "Energy of", "the head": 2 lines of 10 points times 1.3, and 2 of edges: 28 points are
    // 37⅓ pixels, and 37 whole ones 27.75 points.
    expect(sheet.heights[7]).toBe(27.75);
    // A title of 14 points: ⌈14 × 1.3⌉ + 2; a row of plain words has the usual height, an empty row none of its own.
    expect(sheet.heights[0]).toBe(21);
    expect(sheet.heights[4]).toBe(15);
    expect(sheet.heights[2]).toBeUndefined();
  });

  test('a cell says what it is and how it looks', () => {
    const dotted = { line: 'dotted', ink: '#4a5a68' };
    expect(at(4, 1)).toEqual({
      row: 4,
      column: 1,
      part: 'input',
      value: 2,
      style: {
        font: 'Arial',
        size: 10,
        ink: '#22303c',
        fill: '#fdf3d8',
        edges: { top: dotted, right: dotted, bottom: dotted, left: dotted },
        format: '0.0##" s"',
        align: 'right',
        vertical: 'middle',
      },
    });
    expect(at(8, 0)).toMatchObject({ part: 'choice', style: { align: 'left', indent: 1 } });
    expect(at(7, 1)).toMatchObject({
      part: 'heading',
      style: { bold: true, wrap: true, edges: { bottom: { line: 'thin', ink: '#22303c' } } },
    });
  });

  test('a warning marks the value, and the words beside it', () => {
    expect(sheet.conditions).toMatchObject([
      { kind: 'formula', areas: [{ row: 4, column: 1, rows: 1, columns: 1 }], formula: '=$B$5>5' },
      { kind: 'formula', areas: [{ row: 4, column: 3, rows: 1, columns: 1 }], formula: '=$B$5>5' },
      { kind: 'formula', areas: [{ row: 8, column: 1, rows: 2, columns: 1 }], formula: '=$B9>3' },
    ]);
    expect(at(4, 3)).toMatchObject({ part: 'warning', value: null, formula: '=IF($B$5>5,"! long","")' });
  });

  test('a warning says what its formula gives', () => {
    const [form] = SMALL.blocks;
    if (form?.kind !== 'form') throw new Error('no form');
    const fields = form.fields.map((field) => ({
      ...field,
      warning: { when: '={open}>5', text: '={open}-5&" s too long"' },
    }));
    const { cells } = planAlone({ ...SMALL, blocks: [{ ...form, fields }] }, true).sheet;
    expect(cells.find(({ part }) => part === 'warning')?.formula).toBe(
      '=IF($B$5>5,"! "&$B$5-5&" s too long","")',
    );
  });

  test('big type is big, in a row that is high enough for it', () => {
    const [form] = SMALL.blocks;
    if (form?.kind !== 'form') throw new Error('no form');
    const fields = form.fields.map((field) => ({ ...field, big: true as const }));
    const { cells, heights } = planAlone({ ...SMALL, blocks: [{ ...form, fields }] }, true).sheet;
    expect(cells.find(({ part }) => part === 'input')?.style?.size).toBe(16);
    // ⌈16 × 1.3⌉ + 2 = 23 points, of which 30 whole pixels are 22.5
    expect(heights[4]).toBe(22.5);
  });

  test('a sheet of big type has no small words where it prints, and its usual ones beside that', () => {
    const { cells } = planAlone({ ...SMALL, big: true, printsTo: 'C30' }, true).sheet;
    const sizes = (isIn: boolean) =>
      cells.filter(({ column }) => column < 3 === isIn).map(({ style }) => style?.size ?? 0);
    expect(Math.min(...sizes(true))).toBe(14);
    // the words of the warning
    expect(sizes(false)).toEqual([9]);
  });

  test('a block prints from the top of a page where it is told to', () => {
    const blocks = SMALL.blocks.map((block) =>
      block.kind === 'table' ? { ...block, newPage: true as const } : block,
    );
    expect(planAlone({ ...SMALL, blocks }, true).sheet.page.breaks).toEqual([6]);
  });

  test('what prints ends at a cell, and titles run across to it', () => {
    const { sheet: short } = planAlone({ ...SMALL, printsTo: 'B30' }, true);
    expect(short.page.area).toEqual({ row: 0, column: 0, rows: 30, columns: 2 });
    expect(short.merges[0]).toEqual({ row: 0, column: 0, rows: 1, columns: 2 });
  });

  test('the pages of a second sheet of a template are headed by its own name', () => {
    const second = makePlan(SMALL, { filled: true, sheets: ['Small'], tables: [], names: [] }).sheet;
    expect(second.name).toBe('Small (2)');
    expect(second.page.header).toBe('Small (2)');
  });

  test('what stays in view, what prints, what is called how, and where to start', () => {
    expect(sheet.freeze).toEqual({ rows: 2, columns: 0 });
    expect(sheet.page).toEqual({
      landscape: true,
      header: 'Small',
      titleRows: 2,
      breaks: [],
      area: { row: 0, column: 0, rows: 10, columns: 4 },
    });
    expect(names).toEqual([{ name: 'open', row: 4, column: 1 }]);
    expect(start).toMatchObject({ row: 4, column: 1 });
    expect(planAlone(SMALL, false).sheet.cells.filter(({ value }) => value === 2)).toEqual([]);
  });
});
