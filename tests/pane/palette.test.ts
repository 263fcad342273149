import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { PALETTE } from '../../src/book/palette';

const css = readFileSync(resolve(import.meta.dirname, '../../src/pane/pane.css'), 'utf8');
const light = (name: string): string | undefined =>
  new RegExp(`--${name}: light-dark\\((#[0-9a-f]{6}),`).exec(css)?.[1];

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
