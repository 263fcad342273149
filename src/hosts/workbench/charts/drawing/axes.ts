import type uPlot from 'uplot';
import { numberText, plainNumber } from '../../../../pane/numberText';
import { fontAt } from './words';

/** Colours as the page's styles settle them, light, dark or forced. */
export interface Inks {
  readonly text: string;
  readonly lines: string;
  /** One for each series. */
  readonly series: readonly string[];
}

/** How large a chart is drawn: in pixels of the page, with everything in it as large as the zoom says. */
export interface Size {
  readonly width: number;
  readonly height: number;
  readonly zoom: number;
}

export const TITLE_SIZE = 20;

export const axisLook = (inks: Inks, label: string, zoom: number): uPlot.Axis => ({
  stroke: inks.text,
  font: fontAt(zoom),
  labelFont: fontAt(zoom),
  label,
  labelSize: label === '' ? 0 : TITLE_SIZE * zoom,
  labelGap: 0,
  gap: 5 * zoom,
  grid: { stroke: inks.lines, width: zoom },
  ticks: { show: false },
});

/** Numbers along an axis, as the cells show them; with more decimals where two of them would look alike. */
export function tickTexts(format: string): uPlot.Axis.DynamicValues {
  return (_, splits) => {
    const texts = splits.map((split) => numberText(split, format));
    return new Set(texts).size === texts.length ? texts : splits.map(plainNumber);
  };
}
