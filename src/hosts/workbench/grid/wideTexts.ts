import { SpreadsheetSkeleton } from '@univerjs/preset-sheets-core';
import { replaceMethod } from '../../../engine/mends/replaceMethod';

/** Left and right of a text in its cell, and a hair by which slanted letters lean over. */
const EDGES = 5;

interface Size {
  readonly width: number;
}

/**
 * A text that is wider than its cell runs on over empty ones. The grid reckons without the edges that it draws beside a text:
 * one that would just have room loses its last letter.
 */
export function letTextsRunOn(): void {
  replaceMethod<[Size, ...unknown[]], unknown>(
    SpreadsheetSkeleton.prototype,
    'getOverflowPosition',
    (original) =>
      function (size, ...more) {
        return original.call(this, { ...size, width: size.width + EDGES }, ...more);
      },
  );
}
