import { roundSteady } from '../core/numbers';
import { isFail, type Result } from '../core/result';
import { type Division, exactMark, exactHalfMark, type MarkedScale, markText, nearestMark } from './marks';
import { stopsPerDoubling } from './scales';

export type TextDivision = Division | 'tenth';
export const TEXT_DIVISIONS: readonly TextDivision[] = ['tenth', 'third', 'half', 'full'];

/**
 * A value as one reads it aloud on the set.
 *
 * `tenth`: the full stop at or below and the tenths above it, 0 to 9, carried over so that it never says +1.0:
 * `f/11 +0.3`, plain `f/11` for none. `third`, `half`, `full`: the nearest mark.
 * A half-stop figure that the third-stop series uses for another value is followed by `half`, so that it reads back.
 *
 * @param value - exact f-number, time in seconds or ISO speed (above 0).
 * @returns text that a cell reader turns back into the rounded value; a `no-answer` refusal beyond the series.
 */
export function stopText(
  value: number,
  scale: MarkedScale = 'aperture',
  division: TextDivision = 'tenth',
): Result<string> {
  if (division === 'tenth') {
    const tenths = tenthsOf(value, scale);
    return isFail(tenths) ? tenths : nameText(tenths);
  }
  const mark = nearestMark(scale, value, division);
  if (isFail(mark)) return mark;
  const shared = division === 'half' && exactHalfMark(scale, mark.marked) !== exactMark(scale, mark.marked);
  return `${markText(scale, mark.marked)}${shared ? ' half' : ''}`;
}

/** Where a value lies on a scale: on a mark, or tenths above a full stop. */
export interface MarkName {
  readonly scale: MarkedScale;
  /** The mark, or the full stop, as it is written. */
  readonly figure: number;
  /** 0 on the mark, up to 9. */
  readonly tenths: number;
}

/** The full stop at or below a value, and the tenths above it, rounded. */
export function tenthsOf(value: number, scale: MarkedScale): Result<MarkName> {
  const origin = scale === 'iso' ? 100 : 1;
  const tenths = roundSteady(10 * stopsPerDoubling(scale) * Math.log2(value / origin));
  const full = Math.floor(tenths / 10);
  const base = nearestMark(scale, origin * 2 ** (full / stopsPerDoubling(scale)), 'full');
  return isFail(base) ? base : { scale, figure: base.marked, tenths: tenths - 10 * full };
}

/** f/11 +0.3, or f/11 for no tenths. */
export const nameText = ({ scale, figure, tenths }: MarkName): string =>
  `${markText(scale, figure)}${tenths === 0 ? '' : ` +0.${tenths}`}`;
