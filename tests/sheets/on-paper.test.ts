import { describe, expect, test } from 'vitest';
import { widthOfColumns } from '../../src/book/widthsAndHeights';
import { parseAddress } from '../../src/formula/address';
import { blockPlace, fieldRow } from '../../src/sheets/layout';
import { planAlone } from '../../src/sheets/makePlan';
import type { Form, TemplateTable } from '../../src/sheets/template';
import { TEMPLATES } from '../../src/sheets/templates';
import { calculated, templateOf } from './support';

describe('Freeze check', () => {
  test('prints what the makers say of each head, as it was typed', async () => {
    const template = templateOf('freeze-check');
    const { plan, column } = await calculated(template);
    const [manuals, heads] = ['Manuals', 'FreezeHeads'].map((name) =>
      template.blocks.find((block): block is TemplateTable => block.kind === 'table' && block.id === name),
    ) as [TemplateTable, TemplateTable];
    const { area } = plan.page;
    const inside = (row: number, at: number) => row < (area?.rows ?? 0) && at < (area?.columns ?? 0);
    const top = blockPlace(manuals);
    expect(inside(top.row + 1 + manuals.rows.length, top.column + manuals.columns.length - 1)).toBe(true);
    expect(plan.page.breaks).toContain(top.row);
    const lines = column('Manuals', 'Durations as typed');
    // The demo's manuals: Alder's six pairs, and Hazel's four at the other level.
    expect(lines[0]).toBe(
      't0.1, Ws: 600: 1250 µs, 300: 700 µs, 150: 390 µs, 75: 220 µs, 37.5: 125 µs, 18.75: 80 µs',
    );
    expect(lines[3]).toBe('t0.5, Ws: 400: 320 µs, 200: 120 µs, 100: 45 µs, 50: 20 µs');
    expect(lines.slice(4).join('')).toBe('');
    expect(column('Manuals', 'Head').slice(0, 4)).toEqual(heads.rows.map(([head]) => head));
  });
});

test('Flash trace prints no sign of a line where no doubt is told', () => {
  const form = templateOf('flash-trace').blocks.find(
    (block): block is Form => block.kind === 'form' && block.title === 'What is doubtful',
  ) as Form;
  const { cells } = planAlone(templateOf('flash-trace'), true).sheet;
  const { column } = blockPlace(form);
  const labels = form.fields.map((_, i) =>
    cells.find((cell) => cell.row === fieldRow(form, i) && cell.column === column),
  );
  expect(labels.filter((label) => label !== undefined).map(({ value }) => value)).toEqual([
    'About this recording',
  ]);
});

test('Proof has its summary on pages of its own, and the headings of its checks on each of the others', () => {
  const { page, tables } = planAlone(templateOf('proof'), true).sheet;
  const [sources, checks] = ['Sources', 'Checks'].map(
    (name) => tables.find((table) => table.name === name)?.area,
  );
  expect(sources?.row).toBeLessThan(checks?.row ?? 0);
  // The title of the table stands above its headings.
  expect(page.breaks).toContain((checks?.row ?? 0) - 1);
  expect([page.titlesFrom, page.titleRows]).toEqual([checks?.row, 1]);
});

/** Points of a letter of a warning, bold. */
const LETTER = 0.5 * 1.08 * 9;

describe.each(TEMPLATES.map((template) => [template.name, template] as const))('%s', (_, template) => {
  const { conditions, widths, charts } = planAlone(template, true).sheet;
  const printed = parseAddress(template.printsTo ?? '')?.column ?? template.columns.length - 1;
  const forms = template.blocks.filter(
    (block): block is Form => block.kind === 'form' && blockPlace(block).column <= printed,
  );

  test('a warning has its colour under all of its words, and under no other part', () => {
    const bare = forms.flatMap((form) =>
      form.fields.flatMap(({ warning }, i) => {
        if (!warning) return [];
        const at = { row: fieldRow(form, i), column: blockPlace(form).column + 3 };
        const area = conditions
          .flatMap(({ areas }) => areas)
          .find(({ row, column }) => row === at.row && column === at.column);
        if (!area) return [`${warning.text} has no colour`];
        const isFixed = !warning.text.startsWith('=');
        if (isFixed && (warning.text.length + 2) * LETTER > widthOfColumns(area, widths))
          return [warning.text];
        const end = area.column + area.columns;
        const covered = charts.some(
          ({ place }) =>
            place.row <= at.row &&
            at.row < place.row + place.rows &&
            place.column < end &&
            place.column > at.column,
        );
        return covered || end > printed + 1 ? [`${warning.text} colours more than its words`] : [];
      }),
    );
    expect(bare).toEqual([]);
  });
});
