import { CellValueType } from '@univerjs/core';
import { Text } from '@univerjs/preset-sheets-core';
import { fitted } from '../cell/fitted';

/**
 * A number that is wider than its cell: the grid draws it from its first digit on, and what does not fit is cut off, so that
 * another number stands there. Here it is rounded or made of #. A hair more than fits is still drawn in the edge of the cell.
 */
const EDGE = 2;

export function fitNumbers(): void {
  const draw = Text.drawWith.bind(Text);
  Text.drawWith = (ctx, props, ...more) => {
    const { text, width, fontStyle, cellValueType } = props;
    if (cellValueType !== CellValueType.NUMBER) return draw(ctx, props, ...more);
    ctx.font = fontStyle;
    const shown = fitted(text, width + EDGE, (each) => ctx.measureText(each).width);
    return draw(ctx, shown === text ? props : { ...props, text: shown, warp: false }, ...more);
  };
}
