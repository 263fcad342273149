import { describe, expect, test } from 'vitest';
import { layout } from '../../src/sheets/layout';
import { planChart } from '../../src/sheets/planChart';
import type { Template, TemplateColumn } from '../../src/sheets/template';
import { templateOf } from './support';

const CHART = { title: 'Light', table: 'Heads', x: 'Along', series: ['Up'], xTitle: 'x', yTitle: 'y', from: 'B12', to: 'D20' } as const; // prettier-ignore

function planned(type: 'line' | 'column', along: Partial<TemplateColumn>) {
  const columns = [
    { id: 'Along', quantity: 'number', ...along },
    { id: 'Up', quantity: 'number' },
  ];
  const block = { kind: 'table', title: 'Heads', at: 'A4', id: 'Heads', columns, rows: [] } as const;
  const template: Template = { ...templateOf('pops-build'), blocks: [block] };
  return planChart({ ...CHART, type }, layout(template), new Map([['Heads', 'Heads_2']]));
}

describe('a chart of a template', () => {
  test('names columns of its table as the workbook calls it, and covers its cells', () =>
    expect(planned('line', {})).toEqual({
      kind: 'scatter',
      title: 'Light',
      xTitle: 'x',
      yTitle: 'y',
      x: { table: 'Heads_2', column: 'Along' },
      series: [{ name: 'Up', values: { table: 'Heads_2', column: 'Up' } }],
      place: { row: 11, column: 1, rows: 9, columns: 3 },
    }));
  test('draws a constant line after its lines, and a marked point from two cells of forms', () => {
    const [pops, open] = ['pops', 'open'].map((id) => layout(templateOf('pops-build')).cells.get(id)?.place);
    const chart = { ...CHART, type: 'line', limit: 'Most', point: { name: 'Now', x: 'pops', y: 'open' } } as const; // prettier-ignore
    const template = templateOf('pops-build');
    const table = { kind: 'table', title: 'Heads', at: 'A60', id: 'Heads', columns: [{ id: 'Along', quantity: 'number' }], rows: [] } as const; // prettier-ignore
    const map = layout({ ...template, blocks: [...template.blocks, table] });
    const one = (place: typeof pops) => ({ cells: { ...place, rows: 1, columns: 1 } });
    expect(planChart(chart, map, new Map([['Heads', 'Heads']])).series.slice(1)).toEqual([
      { name: 'Most', values: { table: 'Heads', column: 'Most' }, role: 'limit' },
      { name: 'Now', x: one(pops), values: one(open), role: 'point' },
    ]);
  });
  test('names its points from a column, and does not join them', () => {
    const columns = ['Along', 'Up', 'Called'].map((id) => ({ id, quantity: id === 'Called' ? 'text' : 'number' }));
    const block = { kind: 'table', title: 'Heads', at: 'A4', id: 'Heads', columns, rows: [] } as const;
    const template: Template = { ...templateOf('pops-build'), blocks: [block] };
    const chart = planChart({ ...CHART, type: 'line', names: 'Called' }, layout(template), new Map([['Heads', 'Heads']]));
    expect(chart.names).toEqual({ table: 'Heads', column: 'Called' });
    expect(chart.series).toEqual([{ name: 'Up', values: { table: 'Heads', column: 'Up' }, role: 'named' }]);
  }); // prettier-ignore
  test.each([
    ['columns over numbers', 'column', {}, 'column'],
    ['a line over words', 'line', { quantity: 'words' }, 'line'],
    ['a line over words that are worked out', 'line', { quantity: 'text', formula: '=[@Up]&""' }, 'line'],
    ['a line over texts such as 1/125', 'line', { quantity: 'shutterTime' }, 'line'],
    ['a line over shutter times that are worked out', 'line', { quantity: 'shutterTime', formula: '=[@Up]' }, 'scatter'],
  ] as const)('%s', (_what, type, along, kind) => expect(planned(type, along).kind).toBe(kind)); // prettier-ignore
});
