import { assert, property, nat, tuple } from 'fast-check';
import { expect, it } from 'vitest';
import { PALETTE } from '../../../src/book/palette';
import {
  contrast,
  LEGIBLE,
  luminance,
  NIGHT_PAPER,
  nightColour,
  nightMark,
  nightPair,
  type Rgb,
} from '../../../src/hosts/workbench/grid/dark/nightColour';
import { THEME, WARNED } from '../../../src/sheets/theme';
import { trials } from '../../full';

const WHITE: Rgb = [255, 255, 255];
const rgb = (hex: string): Rgb =>
  [1, 3, 5].map((at) => parseInt(hex.slice(at, at + 2), 16)) as [number, number, number];
const channel = nat(255);
const colour = tuple(channel, channel, channel);
/** Of eight bits a channel, on dark grounds. */
const ROUNDED = 0.98;

it('measures contrast as published', () => {
  // WCAG 2.2: black on white is 21 to 1. #767676 is widely given as the lightest grey that passes on white, with 4.54.
  expect(contrast([0, 0, 0], WHITE)).toBeCloseTo(21, 10);
  expect(contrast(rgb('#767676'), WHITE)).toBeCloseTo(4.54, 2);
  // 0.2126 of the light is red's, by the primaries of sRGB
  expect(luminance([255, 0, 0])).toBeCloseTo(0.2126, 10);
});

it('makes the dark page of white, and keeps letters as far from it as they were from white', () => {
  nightColour(WHITE).forEach((each, i) => expect(Math.abs(each - (NIGHT_PAPER[i] ?? 0))).toBeLessThan(3));
  assert(
    property(colour, (ink) => {
      const before = Math.min(LEGIBLE, contrast(ink, WHITE));
      expect(contrast(nightColour(ink), NIGHT_PAPER)).toBeGreaterThanOrEqual(before * ROUNDED);
    }),
    trials(41, 300),
  );
});

it('leaves no letters hard to read on their fill that were not so before', () => {
  assert(
    property(colour, colour, (ink, fill) => {
      const night = nightPair({ ink, fill });
      expect(contrast(night.ink, night.fill)).toBeGreaterThanOrEqual(Math.min(LEGIBLE, contrast(ink, fill)));
    }),
    trials(42, 300),
  );
});

it.each([...Object.entries(THEME), ['a warning', WARNED] as const])('can be read: %s', (_, { ink, fill }) => {
  const night = fill
    ? nightPair({ ink: rgb(ink), fill: rgb(fill) })
    : { ink: nightColour(rgb(ink)), fill: NIGHT_PAPER };
  expect(contrast(night.ink, night.fill)).toBeGreaterThanOrEqual(LEGIBLE);
  // a dark room stays dark
  expect(luminance(night.fill)).toBeLessThan(0.1);
});

it('tells fills of different meaning apart by their hue', () => {
  const [input, answer, warned] = [PALETTE.cream, PALETTE.glazePale, PALETTE.clayPale].map((fill) =>
    nightColour(rgb(fill)),
  );
  if (!input || !answer || !warned) throw new Error('A fill is missing.');
  expect(input[0]).toBeGreaterThan(input[2]);
  expect(answer[1]).toBeGreaterThan(answer[0]);
  expect(warned[0]).toBeGreaterThan(warned[1] + 10);
});

it('leaves a dark fill and strong marks as they are', () => {
  expect(nightPair({ ink: WHITE, fill: [10, 40, 90] })).toEqual({ ink: WHITE, fill: [10, 40, 90] });
  expect(nightMark([255, 189, 55])).toEqual([255, 189, 55]);
  expect(luminance(nightMark([230, 230, 230]))).toBeLessThan(0.1);
});
