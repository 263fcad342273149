import { describe, expect, test } from 'vitest';
import { widthOfColumns } from '../../src/book/widthsAndHeights';
import type { BookSheet } from '../../src/book/book';
import { fullBreaks } from '../../src/book/fullPages';
import { PAGE } from '../../src/book/printedPages';
import { parseAddress } from '../../src/formula/address';
import { blockColumns, blockPlace } from '../../src/sheets/layout';
import type { Field, TemplateColumn } from '../../src/sheets/template';
import { drawn } from '../full';
import { planAlone } from '../../src/sheets/makePlan';
import { TEMPLATES } from '../../src/sheets/templates';
import { calculated, templateOf, type Typed, typedOver } from './support';

/** Points that a letter takes of the size of its type, on an average of English words; capitals and bold take more. */
const LETTER = 0.5;

/** Sheets that were brought to this; the others join as they are. With each, what makes it say its longest words. */
const SHEETS: Readonly<Record<string, readonly Typed[]>> = {
  'pops-build': [{}, { ambient: 16 }, { allowed: 2 }, { target: 11 }, { allowed: 'some' }, { recycle: null }],
  'depth-options': [{}, { blur: 0.06 }, { blur: 0.001 }, { draw: null }, { reading: null }, { allowed: 1 }],
  proof: [{}],
  heads: [{}],
  'client-page': [{}],
  estimate: [
    {},
    { currency: 'XAU' },
    { adds: 'margin', plus: 100 },
    { discount: 101 },
    { validUntil: 46187 },
    { usable: 7 },
    { longest: 540 },
    { longest: 300 },
    { variantOf: 'Bowl' },
  ],
  'set-card': [{}],
  'shot-record': [
    {},
    { cameraX: null },
    { cameraY: 120 },
    { cameraHeight: -1 },
    { tableHeight: 75 },
    { iso: null },
    { isoToday: null },
    { isoToday: 'fast' },
    { pops: 0.5 },
    { blackToday: null },
    { cardThen: 1000 },
    { cardToday: null, blackToday: null },
    { datum: null },
    { draw: 15 },
    { subjectY: null },
    { subjectX: 60 },
    { surfaceY: null },
    { surfaceHeight: -1 },
    { surfaceWidth: 0 },
    { surfaceTiltY: 'some' },
    { surfaceTiltX: -50 },
  ],
  'mains-plan': [
    {},
    { pops: null },
    { amps1: 6 },
    { amps1: 'some' },
    { volts3: null },
    { other2: 4000 },
    { takes: 'long' },
  ],
  'copy-evenness': [
    {},
    { scale: 'gamma-coded' },
    { scale: 'lux' },
    { repeat: 'some' },
    { limit: 'Metamorfoze to A3' },
    { turned: 'camera turned too' },
  ],
  'fleet-compare': [
    {},
    { target: null },
    { limit: null },
    { amps: 200 },
    { mostPops: 'some' },
    { frames: null },
  ],
  'pops-plan': [
    {},
    { aperture: null },
    { focal: null },
    { mostPops: 2 },
    { mostPops: 'some' },
    { ambient: 22 },
    { ambientTime: null },
    { filter: 'dark' },
  ],
  'lights-on-set': [
    {},
    { aperture: null },
    { aperture: 90 },
    { focal: null },
    { filter: 'dark' },
    { filter: 30 },
  ],
};

describe.each(Object.entries(SHEETS))('%s', (id, jobs) => {
  const template = templateOf(id);
  /** Columns that print. */
  const printed = parseAddress(template.printsTo ?? '')?.column ?? template.columns.length - 1;

  test('prints in 9 points or more on A4 and on Letter', async () => {
    const { plan } = await calculated(template);
    const { width } = template.landscape ? PAGE.lengthwise : PAGE.upright;
    const scale = Math.min(1, width / widthOfColumns({ column: 0, columns: printed + 1 }, plan.widths));
    const smallest = Math.min(...plan.cells.map(({ style }) => style?.size ?? 10));
    expect(scale * smallest).toBeGreaterThanOrEqual(9);
    for (const { column } of plan.cells) expect(column).toBeLessThan(template.columns.length);
  });

  test('has its answers left of column I', () => {
    for (const block of template.blocks)
      if (block.kind === 'form' && blockPlace(block).column <= printed)
        expect(blockPlace(block).column + 1).toBeLessThan(8);
  });

  test('has nothing below a table that people type into', () => {
    const typedInto = template.blocks.filter(
      (block) => block.kind === 'table' && block.columns.some((c) => c.formula === undefined && !c.fixed),
    );
    const below = typedInto.flatMap((table) =>
      template.blocks.filter((other) => {
        const [place, lower] = [blockPlace(table), blockPlace(other)];
        const isUnder =
          lower.column < place.column + blockColumns(table) &&
          lower.column + blockColumns(other) > place.column;
        return other !== table && lower.row >= place.row && isUnder;
      }),
    );
    expect(below).toEqual([]);
  });

  test('says no note and no caution twice', () => {
    const parts = template.blocks.flatMap<Field | TemplateColumn>((block) =>
      block.kind === 'form' ? block.fields : block.columns,
    );
    const notes = [...parts.flatMap(({ note }) => note ?? []), ...template.cautions];
    expect(notes.filter((note, i) => notes.indexOf(note) !== i)).toEqual([]);
  });

  test('breaks no heading within a word', async () => {
    const { plan } = await calculated(template);
    const headings = plan.cells.filter(({ part }) => part === 'heading');
    const broken = headings.filter(({ column, value }) => {
      const longest = Math.max(
        ...String(value)
          .split(' ')
          .map((word) => word.length),
      );
      return longest * 10 * LETTER * 1.08 > widthOfColumns({ column, columns: 1 }, plan.widths);
    });
    expect(broken.map(({ value }) => value)).toEqual([]);
  });

  test.each(drawn(jobs))('cuts no words: %o', async (typed) => {
    const { plan, values } = await calculated(typedOver(template, typed));
    const taken = new Set(
      plan.cells
        .filter(({ row, column }) => values(row, column) !== '' && values(row, column) !== null)
        .map(({ row, column }) => `${row},${column}`),
    );
    const cut = plan.cells.flatMap(({ row, column, style, part }) => {
      const text = values(row, column);
      if (typeof text !== 'string' || style?.wrap || column > printed) return [];
      // Words go on over empty cells to their right, as far as the page does; numbers and texts at the right do not.
      let columns = 1;
      if (style?.align !== 'right')
        while (column + columns <= printed && !taken.has(`${row},${column + columns}`)) columns++;
      const isBold = style?.bold || text.startsWith('!') || part === 'warning';
      const wide = text.length * (style?.size ?? 10) * LETTER * (isBold ? 1.08 : 1);
      return wide > widthOfColumns({ column, columns }, plan.widths) ? [`${text} (${part})`] : [];
    });
    expect(cut).toEqual([]);
  });
});

test.each(TEMPLATES.map((each) => [each.name, each] as const))(
  '%s keeps the words of its demo within the fill of their cells',
  (_, template) => {
    const { page, cells, merges, widths } = planAlone(template, true).sheet;
    const past = cells.flatMap(({ row, column, value, style, part }) => {
      const isTyped = part === 'input' || part === 'choice';
      if (typeof value !== 'string' || !isTyped || column >= (page.area?.columns ?? 0)) return [];
      const merged = merges.find((area) => area.row === row && area.column === column);
      const wide = value.length * (style?.size ?? 10) * LETTER;
      return wide > widthOfColumns({ column, columns: merged?.columns ?? 1 }, widths) ? [value] : [];
    });
    expect(past).toEqual([]);
  },
);

/** Rows that begin a page of a sheet, whether they are told to or the page before is full. */
const pageStarts = (sheet: BookSheet): readonly number[] =>
  [...sheet.page.breaks, ...fullBreaks(sheet)].sort((a, b) => a - b);

test.each(TEMPLATES.map((each) => [each.name, each] as const))(
  '%s has no page with cautions or empty lines alone, and no heading at the foot of a page',
  (_, template) => {
    const { sheet } = planAlone(template, true);
    const { columns = 0, rows = 0 } = sheet.page.area ?? {};
    const parts = new Map<number, Set<string>>();
    for (const { row, column, part, value, formula } of sheet.cells)
      if (column < columns && row < rows && (value ?? formula ?? '') !== '')
        parts.set(row, (parts.get(row) ?? new Set()).add(part ?? 'result'));
    const starts = [0, ...pageStarts(sheet)];
    for (const [i, start] of starts.entries()) {
      const end = starts[i + 1] ?? rows;
      const filled = Array.from({ length: end - start }, (__, r) => start + r).filter((row) =>
        parts.has(row),
      );
      const others = filled.filter((row) => !parts.get(row)?.has('caution'));
      expect(others.length, `page from row ${start + 1}`).toBeGreaterThan(0);
      const foot = [...(parts.get(filled.at(-1) ?? -1) ?? [])];
      expect(
        foot.every((part) => part === 'section'),
        `foot above row ${end + 1}: ${foot.join()}`,
      ).toBe(false);
    }
  },
);
