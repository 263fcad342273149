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

/** The colours of a style sheet by their names, each on a light page and on a dark one. */
const coloursOf = (style: string): ReadonlyMap<string, readonly [light: string, dark: string]> =>
  new Map(
    [...style.matchAll(/--([\w-]+): light-dark\((#[\da-f]{6}), (#[\da-f]{6})\)/g)].map(
      ([, name = '', inLight = '', inDark = '']) => [name, [inLight, inDark]],
    ),
  );
const pane = coloursOf(css);

test('the workbench around it and the pages of help have the colours of the pane', () => {
  for (const file of ['hosts/workbench/workbench.css', 'build/page.ts']) {
    const theirs = coloursOf(readFileSync(resolve(import.meta.dirname, '../../src', file), 'utf8'));
    expect(theirs.size, file).toBeGreaterThan(5);
    for (const [name, pair] of theirs) expect(pair, `${name} in ${file}`).toEqual(pane.get(name));
  }
});

/* WCAG 2.2: letters 4.5 (1.4.3); what a button, a field or a line of a chart is known by 3 (1.4.11). */
const ON: readonly (readonly [ink: string, least: number, grounds: readonly string[]])[] = [
  ['ink', 4.5, ['paper', 'card', 'wash', 'clay-wash']],
  ['quiet', 4.5, ['paper', 'card', 'wash']],
  ['glaze', 4.5, ['paper', 'card', 'wash']],
  ['on-glaze', 4.5, ['glaze']],
  ['clay', 4.5, ['paper', 'card', 'clay-wash']],
  ['third', 4.5, ['card']],
  ['fourth', 4.5, ['card']],
  ['edge', 3, ['paper', 'card']],
];
test.each([
  ['light', 0],
  ['dark', 1],
] as const)('is legible in the %s, charts and fields too', (_, which) => {
  const named = (name: string): string => {
    const pair = pane.get(name);
    if (!pair) throw new Error(`The pane has no colour ${name}.`);
    return pair[which];
  };
  for (const [ink, least, grounds] of ON)
    for (const ground of grounds)
      expect(contrast(named(ink), named(ground)), `${ink} on ${ground}`).toBeGreaterThanOrEqual(least);
});

test('a card in the dark is legible, and lights nothing', () => {
  expect(contrast(NIGHT.ink, NIGHT.paper)).toBeGreaterThan(7);
  expect(NIGHT.paper).toBe('#000000');
});
