import { describe, expect, it } from 'vitest';
import type { BookCell, BookCondition, BookSheet, BookStyle } from '../../../src/book/book';
import { NIGHT, USUAL_SIZE } from '../../../src/book/palette';
import type { Area } from '../../../src/formula/area';
import {
  contrast,
  LEGIBLE,
  NIGHT_PAPER,
  nightColour,
  nightMark,
  nightPair,
  type Pair,
  type Rgb,
} from '../../../src/hosts/workbench/grid/dark/nightColour';
import { planAlone } from '../../../src/sheets/makePlan';
import { TEMPLATES } from '../../../src/sheets/templates';

/*
 * Source of the formula and of the least contrasts: WCAG 2.2, success criteria 1.4.3 (letters 4.5, and 3 from 18 point or from
 * 14 point bold) and 1.4.11 (3 for what an input is known by). `nightColour.test.ts` holds the formula to published values.
 */
const LEGIBLE_LARGE = 3;
const SEEN = 3;
const LARGE = 18;
const LARGE_BOLD = 14;
const leastFor = ({ size = USUAL_SIZE, bold = false }: BookStyle): number =>
  size >= LARGE || (bold && size >= LARGE_BOLD) ? LEGIBLE_LARGE : LEGIBLE;

const rgb = (hex: string): Rgb =>
  [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16)) as [number, number, number];
const WHITE = '#ffffff';
const BLACK = '#000000';

/** Programs mix the ends of a scale in the numbers of their red, green and blue. */
const STEPS = 32;
const mixed = (low: string, high: string, share: number): string => {
  const [from, to] = [rgb(low), rgb(high)];
  const part = (i: 0 | 1 | 2): string =>
    Math.round(from[i] + share * (to[i] - from[i]))
      .toString(16)
      .padStart(2, '0');
  return `#${part(0)}${part(1)}${part(2)}`;
};

/** All that a condition can make of a look. */
const under = (condition: BookCondition, style: BookStyle): BookStyle[] =>
  condition.kind === 'formula'
    ? [{ ...style, ...condition.look }]
    : Array.from({ length: STEPS + 1 }, (_, i) => ({
        ...style,
        fill: mixed(condition.low, condition.high, i / STEPS),
      }));

const holds = (area: Area, { row, column }: BookCell): boolean =>
  row >= area.row &&
  row < area.row + area.rows &&
  column >= area.column &&
  column < area.column + area.columns;

/** A cell's look, and each that the conditions on it can make of it, one after the other or several at once. */
function looks({ conditions }: BookSheet, cell: BookCell): BookStyle[] {
  const here = conditions.filter(({ areas }) => areas.some((area) => holds(area, cell)));
  return here.reduce<BookStyle[]>(
    (all, condition) => [...all, ...all.flatMap((look) => under(condition, look))],
    [cell.style ?? {}],
  );
}

/** Each look once, with a cell that has it. */
function looksOf(sheet: BookSheet): readonly BookStyle[] {
  const all = new Map(
    sheet.cells.flatMap((cell) =>
      looks(sheet, cell).map((look) => {
        const { ink, fill, size, bold, edges } = look;
        return [JSON.stringify([ink, fill, size, bold, edges]), look] as const;
      }),
    ),
  );
  return [...all.values()];
}

/** Letters and ground as they are drawn on a light page, and on a dark one. */
function drawn({ ink = BLACK, fill }: BookStyle): readonly [light: Pair, dark: Pair] {
  const letters = rgb(ink);
  return fill
    ? [{ ink: letters, fill: rgb(fill) }, nightPair({ ink: letters, fill: rgb(fill) })]
    : [
        { ink: letters, fill: rgb(WHITE) },
        { ink: nightColour(letters), fill: NIGHT_PAPER },
      ];
}
const told = (name: string, { ink, fill, size }: BookStyle): string => `${name}: ${ink} on ${fill}, ${size}`;

describe.each(TEMPLATES.map((template) => [template.name, template] as const))('%s', (_, template) => {
  const all = [true, false].map((filled) => planAlone(template, filled).sheet).flatMap(looksOf);

  it('can be read in light and dark, whatever its warnings and maps colour', () => {
    expect(all.length).toBeGreaterThan(5);
    for (const look of all)
      for (const { ink, fill } of drawn(look))
        expect(contrast(ink, fill), told(template.name, look)).toBeGreaterThanOrEqual(leastFor(look));
  });

  it('shows the edges of what is typed in light and dark, from within and without', () => {
    const edged = all.filter(({ edges }) => edges);
    expect(edged.length).toBeGreaterThan(0);
    for (const look of edged) {
      const [light, dark] = drawn(look);
      for (const { ink } of Object.values(look.edges ?? {})) {
        const line = rgb(ink);
        for (const ground of [light.fill, rgb(WHITE)])
          expect(contrast(line, ground), told(template.name, look)).toBeGreaterThanOrEqual(SEEN);
        for (const ground of [dark.fill, NIGHT_PAPER])
          expect(contrast(nightMark(line), ground), told(template.name, look)).toBeGreaterThanOrEqual(SEEN);
      }
    }
  });
});

it('leaves the card for a phone as it is, grey on black', () => {
  const card = { ink: rgb(NIGHT.ink), fill: rgb(NIGHT.paper) };
  expect(nightPair(card)).toEqual(card);
  expect(contrast(card.ink, card.fill)).toBeGreaterThanOrEqual(LEGIBLE);
});
