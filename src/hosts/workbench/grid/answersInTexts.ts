import { CellValueType, InterceptorEffectEnum } from '@univerjs/core';
import { INTERCEPTOR_POINT } from '@univerjs/preset-sheets-core';
import type { Grid } from './grid';
import { interceptors } from './inside';

/** Behind the grid's own reading of formats, and before the last, which ends it. */
const BEHIND = 0;

/**
 * A number that a formula gives in a cell of texts is drawn as a number, which is rounded to the room there is. The grid would draw
 * it as a text, and cut its first digits off. Call it once a workbook is open.
 */
export function drawAnswersInTexts(grid: Grid): void {
  interceptors(grid).intercept(INTERCEPTOR_POINT.CELL_CONTENT, {
    priority: BEHIND,
    effect: InterceptorEffectEnum.Value | InterceptorEffectEnum.Style,
    handler(cell, { rawData }, next) {
      const isNumber = rawData?.t === CellValueType.NUMBER && Boolean(rawData.f ?? rawData.si);
      return next(isNumber && cell?.t === CellValueType.STRING ? { ...cell, t: CellValueType.NUMBER } : cell);
    },
  });
}
