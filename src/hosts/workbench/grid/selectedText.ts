import { DocSelectionRenderService, type ITextSelectionStyle } from '@univerjs/preset-sheets-core';
import { replaceMethod } from '../../../engine/mends/replaceMethod';

/** Letters are read through it, on a cell that is typed into as on one in the dark. */
const FILL = 'rgba(45, 139, 132, 0.3)';

/**
 * Letters that are chosen while a cell is written into: the grid lays the system's colour over them, as thickly as that is, and
 * hides them. Call it before there is a grid.
 */
export function showSelectedText(): void {
  replaceMethod<[style?: ITextSelectionStyle], void>(
    DocSelectionRenderService.prototype,
    '_setRangeStyle',
    (original) =>
      function (style) {
        original.call(this, style && { ...style, fill: FILL });
      },
  );
}
