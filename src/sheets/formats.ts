import { Q } from '../catalogue/quantities';

/** How a cell of a quantity is shown and preset. */
export interface CellFormat {
  /** Of an input. */
  readonly input: string;
  /** Of a result. */
  readonly result: string;
  readonly unit: string;
  readonly align: 'left' | 'right';
  /** An input of this kind is preset as text, so that a fraction typed into it stays one. */
  readonly text: boolean;
}

const GENERAL = 'General';
const TEXT = '@';
const energy = '[<100]0.0" Ws";[<1000]0" Ws";#\\ ##0" Ws"';
const stops = '+0.0" stop";-0.0" stop";0.0" stop"';

const number = (input: string, unit: string, result = input): CellFormat => ({
  input,
  result,
  unit,
  align: 'right',
  text: false,
});
const asText = (result: string, unit: string): CellFormat => ({
  input: TEXT,
  result,
  unit,
  align: 'right',
  text: true,
});

/** Formats of the catalogue's quantities, and of what only sheets hold. The cell stays a number. */
const FORMATS: Readonly<Record<string, CellFormat>> = {
  aperture: number('"f/"General', Q.aperture.unit, '"f/"0.0'),
  shutterTime: asText('0.000" s"', Q.shutterTime.unit),
  duration: number('0.0##" s"', Q.duration.unit, '0.0" s"'),
  wait: number('0.0##" s"', Q.wait.unit, '0.0" s"'),
  energy: number(energy, Q.energy.unit),
  distance: number('0.00" m"', Q.distance.unit),
  lensLength: number('0" mm"', Q.lensLength.unit),
  stops: number(stops, Q.stops.unit),
  /** Stops off a target: to a hundredth, so that a small miss does not read as none. */
  miss: number('+0.00" stop";-0.00" stop";0.00" stop"', Q.stops.unit),
  /** Stops lost: never negative, to a hundredth. */
  loss: number('0.00" stop"', Q.stops.unit),
  /** Stops lost in filters, written as a photographer would: 1/3. */
  filterStops: asText(stops, Q.stops.unit),
  filterFactor: asText('0.0', ''),
  share: number('0%', '', '0.0%'),
  ratio: number('0.0":1"', '', '0.0":1"'),
  pops: number('0', Q.pops.unit),
  tenths: number('0', Q.tenths.unit),
  /** N² of a reading: adds up where readings do not. */
  light: number('0', 'f²'),
  speed: number('0.00" m/s"', Q.speed.unit),
  pitch: number('0.00" µm"', Q.pitch.unit),
  pixels: number('0.0" px"', Q.pixels.unit),
  rpm: number('0" rpm"', Q.rpm.unit),
  magnification: number('0.00', ''),
  /** The same where it may be typed as 1:4. */
  imageScale: asText('0.000', ''),
  /** A setting of the lens, as the ring says it. */
  mark: number('"f/"General', Q.aperture.unit),
  /** Depth that is sharp, and steps of focus. */
  depth: number('0.0##" mm"', Q.lensLength.unit, '0.0" mm"'),
  blurCircle: number('0.00#" mm"', Q.smallLength.unit),
  micrometres: number('0.0" µm"', Q.micrometres.unit),
  /** A trigger delay. */
  instant: number('0.000" s"', Q.wait.unit),
  /** The duration of a flash. */
  flash: asText('0.000000" s"', Q.duration.unit),
  /** One over a duration, shown as the fraction that flash durations are written as. */
  perSecond: number('"1/"0" s"', ''),
  /** Instants of a recording, and waits that are as short as a flash. */
  sampleTime: number('0.000000" s"', Q.wait.unit),
  shortWait: number('0.0#####" s"', Q.wait.unit),
  /** A recorded value, in whatever unit. */
  signal: number(GENERAL, Q.signal.unit, '0.000'),
  milliseconds: number('0.000', 'ms'),
  /** Part of the height of a flash. */
  level: number('0.0', Q.share.unit),
  /** A text longer than its cell, which stands elsewhere line by line. */
  onePiece: { input: GENERAL, result: ';;;"…"', unit: '', align: 'left', text: false },
  count: number('0', ''),
  /** Any number, with as many figures as its cell has room for. */
  number: number(GENERAL, ''),
  /** What should be next to nothing. */
  difference: number('0.0E+00', ''),
  text: { input: GENERAL, result: GENERAL, unit: '', align: 'left', text: false },
  words: { input: TEXT, result: TEXT, unit: '', align: 'left', text: true },
};

export const formatOf = (quantity: string): CellFormat | undefined =>
  Object.hasOwn(FORMATS, quantity) ? FORMATS[quantity] : undefined;
export const SHEET_QUANTITIES: readonly string[] = Object.keys(FORMATS);
