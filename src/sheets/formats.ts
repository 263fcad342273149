import { Q, type Quantity, type Shown } from '../catalogue/quantities';

/** How a cell is shown and preset, and the unit of its number. */
export interface CellFormat extends Shown {
  readonly unit: string;
}

/** A quantity as it is shown, but for what is said. */
const view = (quantity: Quantity, other: Partial<CellFormat> = {}): CellFormat => ({
  ...quantity.shown,
  unit: quantity.unit,
  ...other,
});
const as = (format: string): Partial<CellFormat> => ({ input: format, result: format });
const typedAs = (result: string): Partial<CellFormat> => ({ input: '@', result, text: true });

/** How guide numbers are shown: in metres, and told from a distance by its digits alone. */
export const GUIDE_NUMBERS = Q.guide.shown.result;

/** What only sheets hold, and other looks of a quantity. The cell stays a number. */
const VIEWS: Readonly<Record<string, CellFormat>> = {
  /** Stops off a target: to a hundredth, so that a small miss does not read as none. */
  miss: view(Q.stops, as('+0.00" stop";-0.00" stop";0.00" stop"')),
  /** Stops beside others of a map, which says what they are; to a thousandth, for limits of a hundredth. */
  fromCentre: view(Q.stops, as('+0.000;-0.000;0.000')),
  /** Stops lost: never negative, to a hundredth. */
  loss: view(Q.stops, as('0.00" stop"')),
  /** Stops lost in filters, written as a photographer would: 1/3. */
  filterStops: view(Q.stops, { input: '@', text: true }),
  /** N² of a reading: adds up where readings do not. */
  light: view(Q.signal, { ...as('0'), unit: 'f²' }),
  /** A magnification where it may be typed as 1:4. */
  imageScale: view(Q.magnification, typedAs('0.000')),
  /** A setting of the lens, as the ring says it. */
  mark: view(Q.aperture, { result: Q.aperture.shown.input }),
  /** Depth that is sharp, and steps of focus. */
  depth: view(Q.lensLength, { input: '0.0##" mm"', result: '0.0" mm"' }),
  blurCircle: view(Q.smallLength),
  /** The duration of a flash, as its maker prints it. */
  flash: view(Q.duration, typedAs('0.000000" s"')),
  /** A duration as short as a flash. */
  microseconds: view(Q.signal, { ...as('[<10]0.0" µs";0" µs"'), unit: 'µs' }),
  /** One over a duration, shown as the fraction that flash durations are written as. */
  perSecond: view(Q.signal, as('"1/"0" s"')),
  /** Instants of a recording, and waits that are as short as a flash. */
  sampleTime: view(Q.wait, as('0.000000" s"')),
  shortWait: view(Q.wait, typedAs('0.0#####" s"')),
  milliseconds: view(Q.wait, { ...as('0.000'), unit: 'ms' }),
  /** A delay or an opening that stands alone. */
  inMilliseconds: view(Q.wait, { ...as('0.00" ms"'), unit: 'ms' }),
  /** Part of the height of a flash. */
  level: view(Q.share, as('0.0')),
  /** A text longer than its cell, which stands elsewhere line by line. */
  onePiece: view(Q.text, { result: ';;;"…"' }),
  /** A reading in the words of a meter, f/16 +0.7, beside numbers. */
  meterText: view(Q.text, { align: 'right' }),
  count: view(Q.signal, as('0')),
  /** Money in whatever currency: all three decimals of those that have them. */
  amount: view(Q.money, as('[<1000]0.00#;[<1000000]#\\ ##0.00#;#\\ ###\\ ##0.00#')),
  /** A day, written so that nobody takes its month for its day (ISO 8601). */
  date: view(Q.signal, { ...as('yyyy-mm-dd;@'), align: 'left' }),
  minutes: view(Q.signal, as('0.0#')),
  /** Seconds along a chart, which says so beside its axis. */
  seconds: view(Q.wait, as('0.0#')),
  /** Any number, with as many figures as its cell has room for. */
  number: view(Q.signal, as('General')),
  /** What should be next to nothing. */
  difference: view(Q.signal, as('0.0E+00')),
  /** A text that is no number, however much it looks like one. */
  words: view(Q.text, typedAs('General')),
};

const FORMATS: Readonly<Record<string, CellFormat>> = {
  ...Object.fromEntries(Object.entries(Q).map(([name, quantity]) => [name, view(quantity)])),
  ...VIEWS,
};

export const formatOf = (quantity: string): CellFormat | undefined =>
  Object.hasOwn(FORMATS, quantity) ? FORMATS[quantity] : undefined;
/** Every quantity of the catalogue, and the views that sheets have of them. */
export const SHEET_QUANTITIES: readonly string[] = Object.keys(FORMATS);
