import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { NIGHT, PALETTE } from '../../src/book/palette';
import { contrast } from '../sheets/contrast';

const css = readFileSync(resolve(import.meta.dirname, '../../src/pane/pane.css'), 'utf8');
const light = (name: string): string | undefined =>
  new RegExp(`--${name}: light-dark\\((#[0-9a-f]{6}),`).exec(css)?.[1];

test('webviews that know no light-dark() have the light colours, and nothing that they do not know', () => {
  const [plain = '', modern = ''] = css.split('@supports (color: light-dark(#000, #fff)) {');
  const names = [...modern.matchAll(/--([\w-]+): light-dark/g)].map(([, name]) => name as string);
  expect(names.length).toBeGreaterThan(10);
  for (const name of names) expect(plain).toContain(`--${name}: ${light(name)};`);
  const behind = modern.slice(modern.indexOf('\n}\n'));
  expect(behind).toContain('.pane {');
  expect(plain + behind).not.toMatch(/: light-dark\(/);
});

test('the pane has the colours of the sheets', () => {
  expect({
    ink: light('ink'),
    quiet: light('quiet'),
    paper: light('paper'),
    line: light('line'),
    glaze: light('glaze'),
    wash: light('wash'),
    clay: light('clay'),
    'clay-wash': light('clay-wash'),
  }).toEqual({
    ink: PALETTE.slate,
    quiet: PALETTE.slateSoft,
    paper: PALETTE.paper,
    line: PALETTE.stone,
    glaze: PALETTE.glaze,
    wash: PALETTE.glazePale,
    clay: PALETTE.clay,
    'clay-wash': PALETTE.clayPale,
  });
});

test('a card in the dark is legible, and lights nothing', () => {
  expect(contrast(NIGHT.ink, NIGHT.paper)).toBeGreaterThan(7);
  expect(NIGHT.paper).toBe('#000000');
});
