import { createElement } from 'react';
import type { Grid } from './grid';
import { renderOf } from './sheetView';

/** Lays an element over the grid's canvas, and tells when it lies there. */
export function layOverGrid({ api }: Grid, layer: HTMLElement, isLaid: () => void): void {
  const mounted = (place: HTMLElement | null): void => {
    place?.append(layer);
    isLaid();
  };
  api.registerUIPart(api.Enum.BuiltInUIPart.CONTENT, () => createElement('div', { ref: mounted }));
}

/**
 * Tells after each frame of the grid, so that what lies over it never lags behind the cells. A workbook that is opened is drawn
 * by another engine: gives what has to be called after each change to go on with that one.
 */
export function followFrames(grid: Grid, isDrawn: () => void): () => void {
  let render: ReturnType<typeof renderOf>;
  let frames: { unsubscribe(): void } | undefined;
  return () => {
    const now = renderOf(grid);
    if (now === render) return;
    frames?.unsubscribe();
    render = now;
    frames = render?.engine.endFrame$.subscribe(isDrawn);
  };
}
