import { ColorKit, type IStyleData, ThemeService } from '@univerjs/core';
import {
  ICanvasColorService,
  SheetSkeletonManagerService,
  SpreadsheetSkeleton,
} from '@univerjs/preset-sheets-core';
import { replaceMethod } from '../../../../engine/mends/replaceMethod';
import type { Grid } from '../grid';
import { inside } from '../inside';
import { renderOf } from '../sheetView';
import { nightColour, nightMark, nightPair, type Rgb } from './nightColour';

/** Stands before a colour that is settled for a dark page, so that it is not settled again when it is drawn. */
const SETTLED = 'settled:';
const BLACK: Rgb = [0, 0, 0];
const settledText = ([red, green, blue]: Rgb): string => `${SETTLED}rgb(${red},${green},${blue})`;

let isDark = false;

/** A colour as the grid writes it; nothing for what is none. */
function read(text: string): { readonly rgb: Rgb; readonly alpha: number } | undefined {
  const colour = new ColorKit(text);
  if (!colour.isValid) return undefined;
  const { r, g, b, a = 1 } = colour.toRgb();
  return { rgb: [r, g, b], alpha: a };
}

const nightTexts = new Map<string, string>();
function nightText(text: string): string {
  const known = nightTexts.get(text);
  if (known !== undefined) return known;
  const colour = read(text);
  const night = colour ? `rgba(${nightMark(colour.rgb).join(',')},${colour.alpha})` : text;
  nightTexts.set(text, night);
  return night;
}

/** Ink and fill of a cell, settled together: each by itself, one could be hard to read on the other. */
function nightStyle(style: IStyleData): IStyleData {
  const fill = style.bg?.rgb ? read(style.bg.rgb) : undefined;
  const ink = (style.cl?.rgb ? read(style.cl.rgb)?.rgb : undefined) ?? BLACK;
  if (!fill) return { ...style, cl: { ...style.cl, rgb: settledText(nightColour(ink)) } };
  const night = nightPair({ ink, fill: fill.rgb });
  return { ...style, cl: { rgb: settledText(night.ink) }, bg: { rgb: settledText(night.fill) } };
}

const nightStyles = new Map<string, Pick<IStyleData, 'cl' | 'bg'>>();
function shownStyle(style: IStyleData | undefined): IStyleData | undefined {
  if (!isDark || !style) return style;
  const key = `${style.cl?.rgb ?? ''} ${style.bg?.rgb ?? ''}`;
  if (key.includes(SETTLED)) return style;
  const { cl, bg } = nightStyles.get(key) ?? nightStyle(style);
  nightStyles.set(key, { cl, bg });
  return { ...style, ...(cl ? { cl } : {}), ...(bg ? { bg } : {}) };
}

/**
 * Has the canvas draw cells in dark where the page is dark. Only what is drawn changes: the workbook, what is stored of it, files
 * and paper stay as they are. The grid's own way takes each colour for itself and turns hues.
 */
export function letCanvasBeDark(grid: Grid): void {
  type Drawn = [row: number, column: number, style: IStyleData | undefined, ...more: unknown[]];
  for (const name of ['_setBgStylesCache', '_setBorderStylesCache'])
    replaceMethod<Drawn, void>(
      SpreadsheetSkeleton.prototype,
      name,
      (original) =>
        function (row, column, style, ...more) {
          original.call(this, row, column, shownStyle(style), ...more);
        },
    );
  type Written = [row: number, column: number, cell: object | undefined, style: IStyleData | undefined];
  replaceMethod<Written, void>(
    SpreadsheetSkeleton.prototype,
    '_setFontStylesCache',
    (original) =>
      function (row, column, cell, style) {
        const shown = shownStyle(style);
        original.call(this, row, column, shown === style ? cell : { ...cell, s: shown }, shown);
      },
  );
  inside(grid).get(ICanvasColorService).getRenderColor = (colour) => {
    if (colour.startsWith(SETTLED)) return colour.slice(SETTLED.length);
    return isDark ? nightText(colour) : colour;
  };
}

/** Draws the grid, and all that belongs to it, dark or light. */
export function drawGrid(grid: Grid, dark: boolean): void {
  isDark = dark;
  const skeletons = renderOf(grid)?.with(SheetSkeletonManagerService);
  for (const sheet of grid.api.getActiveWorkbook()?.getSheets() ?? [])
    skeletons?.getSkeletonParam(sheet.getSheetId())?.skeleton.resetCache();
  inside(grid).get(ThemeService).setDarkMode(dark);
}
