import { checkSet, type Doubt } from './checkSet';
import { figuresOf } from './figures';
import { pictureOf } from './picture';
import { besideLight, notesOf, pictureInWords } from './said';
import type { SetPicture } from './shapes';
import type { SetUp } from './setUp';

/** A set as a picture, and in words. */
export interface DrawnSet {
  readonly picture: SetPicture;
  readonly said: string;
  readonly doubts: readonly Doubt[];
}

/**
 * Draws a set as it was written down, for a width in pixels. What cannot be drawn is said.
 *
 * @param unread - what could not be read of it, in sentences.
 */
export function drawSet(written: SetUp, width: number, unread: readonly string[] = []): DrawnSet {
  const { setUp, doubts } = checkSet(written);
  const figures = figuresOf(setUp);
  const words = {
    beside: setUp.lights.map(besideLight),
    notes: [...notesOf(setUp, figures, doubts), ...unread],
  };
  return {
    picture: pictureOf(figures, words, width),
    said: [pictureInWords(setUp, figures, doubts), ...unread].join(' '),
    doubts,
  };
}
