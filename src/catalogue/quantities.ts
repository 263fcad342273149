import type { MarkedScale } from '../exposure/stops/marks';
import { RECEPTORS } from '../exposure/metering/luxSeconds';

/** How the text of a cell is built, beyond a plain number with a unit. */
export type Grammar = 'aperture' | 'length' | 'filter';

/** One kind of quantity: its unit, and how a cell becomes it. Every argument and result names one of these. */
export interface Quantity {
  /** With its article, for sentences: "an f-number". */
  readonly title: string;
  /** The base unit, as shown beside an argument; empty for a bare number. */
  readonly unit: string;
  /** Texts that are read, for messages and help. Each of them is tested. */
  readonly forms: readonly string[];
  /** Whether an empty cell (0, null or "") is missing, or the real value 0. */
  readonly blank: 'missing' | 'zero';
  /** Bare numbers that equal a mark of this scale are the exact value behind the mark. */
  readonly marks?: MarkedScale;
  /** The same scale, for quantities that take a bare number as typed but know marks in texts such as f/11+0.3. */
  readonly marksInText?: MarkedScale;
  readonly grammar?: Grammar;
  /** Unit words, in small letters, and what one of them is in the base unit. */
  readonly units?: Readonly<Record<string, number>>;
  /** A word that may stand before the number: ISO 400. */
  readonly prefix?: string;
  /** Fractions such as 1/60 and 1 1/3. */
  readonly fraction?: true;
  /** 3:1. */
  readonly pair?: true;
  /** 30%. */
  readonly percent?: true;
  /** Words that stand for a number: infinity. */
  readonly words?: Readonly<Record<string, number>>;
  /** What a spreadsheet makes of a fraction typed into an unformatted cell: 1/60 a date, 3:1 also a time of day. */
  readonly mistyped?: 'date' | 'date or clock';
}

const TIME_UNITS = {
  s: 1, sec: 1, second: 1, seconds: 1, '"': 1, ms: 1e-3, µs: 1e-6, us: 1e-6, min: 60, h: 3600,
}; // prettier-ignore
const INCH = 0.0254;
const FOOT = 0.3048;

/** Length units in metres. */
const METRE_UNITS = {
  m: 1, metre: 1, metres: 1, meter: 1, meters: 1, cm: 1e-2, mm: 1e-3, µm: 1e-6, um: 1e-6, nm: 1e-9, km: 1e3,
  ft: FOOT, foot: FOOT, feet: FOOT, "'": FOOT, in: INCH, inch: INCH, inches: INCH, '"': INCH,
}; // prettier-ignore
const lengthUnits = (baseInMetres: number): Record<string, number> =>
  Object.fromEntries(Object.entries(METRE_UNITS).map(([unit, metres]) => [unit, metres / baseInMetres]));

const define = <const Q extends Record<string, Quantity>>(
  quantities: Q,
): { readonly [K in keyof Q]: Quantity } => quantities;

export const Q = define({
  aperture: {
    title: 'an f-number',
    unit: 'f-number',
    forms: ['11', 'f/11', 'f/8 2/3', 'f/11+0.3', '11³'],
    blank: 'missing',
    grammar: 'aperture',
    marks: 'aperture',
    marksInText: 'aperture',
  },
  apertureAsTyped: {
    title: 'an f-number',
    unit: 'f-number',
    forms: ['11', 'f/11', 'f/8 2/3', 'f/11+0.3', '11³'],
    blank: 'missing',
    grammar: 'aperture',
    marksInText: 'aperture',
  },
  shutterTime: {
    title: 'a shutter time',
    unit: 's',
    forms: ['1/60', '1/250 s', '0.004', '4 ms', '30"', '1 min'],
    blank: 'missing',
    units: TIME_UNITS,
    fraction: true,
    marks: 'time',
    marksInText: 'time',
    mistyped: 'date',
  },
  duration: {
    title: 'a time',
    unit: 's',
    forms: ['0.004', '1/250 s', '4 ms', '350 µs', '2 s', '1 min'],
    blank: 'missing',
    units: TIME_UNITS,
    fraction: true,
    marksInText: 'time',
    mistyped: 'date',
  },
  /** A wait, which may well be none. */
  wait: {
    title: 'a time',
    unit: 's',
    forms: ['0.5', '1/4 s', '250 ms', '2 s'],
    blank: 'zero',
    units: TIME_UNITS,
    fraction: true,
    mistyped: 'date',
  },
  iso: {
    title: 'an ISO speed',
    unit: 'ISO',
    forms: ['100', 'ISO 400'],
    blank: 'missing',
    prefix: 'iso',
    marks: 'iso',
    marksInText: 'iso',
  },
  energy: {
    title: 'an energy',
    unit: 'Ws',
    forms: ['400', '400 Ws', '400 J', '1.2 kJ'],
    blank: 'missing',
    units: { ws: 1, j: 1, kj: 1e3, kws: 1e3 },
  },
  distance: {
    title: 'a distance',
    unit: 'm',
    forms: ['1.2', '1.2 m', '80 cm', '5 ft', `5' 6"`],
    blank: 'missing',
    grammar: 'length',
    fraction: true,
    units: lengthUnits(1),
  },
  lensLength: {
    title: 'a length',
    unit: 'mm',
    forms: ['35', '35 mm', '30 cm', '12 in'],
    blank: 'missing',
    grammar: 'length',
    fraction: true,
    units: lengthUnits(1e-3),
  },
  pitch: {
    title: 'a pixel pitch',
    unit: 'µm',
    forms: ['3.76', '3.76 µm'],
    blank: 'missing',
    units: lengthUnits(1e-6),
  },
  pixels: {
    title: 'a number of pixels',
    unit: 'px',
    forms: ['2', '2 px'],
    blank: 'missing',
    units: { px: 1, pixel: 1, pixels: 1 },
  },
  guide: {
    title: 'a guide number',
    unit: 'm',
    forms: ['45', '45 m', '80 ft'],
    blank: 'missing',
    grammar: 'length',
    units: lengthUnits(1),
  },
  speed: {
    title: 'a speed',
    unit: 'm/s',
    forms: ['2', '2 m/s', '7 km/h', '5 mph'],
    blank: 'missing',
    units: {
      'm/s': 1,
      'cm/s': 1e-2,
      'mm/s': 1e-3,
      'km/h': 1 / 3.6,
      kph: 1 / 3.6,
      mph: 0.44704,
      'ft/s': FOOT,
    },
  },
  stops: {
    title: 'a number of stops',
    unit: 'stops',
    forms: ['1.5', '-1/3', '2/3', '1 1/3'],
    blank: 'zero',
    units: { stop: 1, stops: 1 },
    fraction: true,
    mistyped: 'date',
  },
  /** Stops of which none at all makes no sense, so that an empty cell is missing. */
  stopsStep: {
    title: 'a number of stops',
    unit: 'stops',
    forms: ['0.1', '1/3', '1/2'],
    blank: 'missing',
    units: { stop: 1, stops: 1 },
    fraction: true,
    mistyped: 'date',
  },
  ratio: {
    title: 'a ratio',
    unit: '',
    forms: ['3', '3:1', '1:2', '1/4', '30%'],
    blank: 'missing',
    fraction: true,
    pair: true,
    percent: true,
    mistyped: 'date or clock',
  },
  share: {
    title: 'a share',
    unit: '',
    forms: ['0.5', '1/4', '30%', '1:2'],
    blank: 'missing',
    fraction: true,
    pair: true,
    percent: true,
    mistyped: 'date or clock',
  },
  magnification: {
    title: 'a magnification',
    unit: '',
    forms: ['0.5', '1:2', '1/2', '50%', 'infinity'],
    blank: 'missing',
    fraction: true,
    pair: true,
    percent: true,
    words: { infinity: 0 },
    mistyped: 'date or clock',
  },
  factor: {
    title: 'a factor',
    unit: '',
    forms: ['8', '3:1', '1/4', '30%'],
    blank: 'missing',
    fraction: true,
    pair: true,
    percent: true,
  },
  filterFactor: {
    title: 'a filter',
    unit: '',
    forms: ['8', '8x', 'ND8', 'ND 0.9'],
    blank: 'missing',
    grammar: 'filter',
  },
  filterDensity: {
    title: 'a density',
    unit: '',
    forms: ['0.9', 'ND 0.9', 'ND8'],
    blank: 'zero',
    grammar: 'filter',
  },
  filterTransmission: {
    title: 'a transmission',
    unit: '',
    forms: ['0.125', '12.5%', '1/8', 'ND8', 'ND 0.9'],
    blank: 'missing',
    grammar: 'filter',
    fraction: true,
    percent: true,
    mistyped: 'date or clock',
  },
  pops: {
    title: 'a number of pops',
    unit: 'pops',
    forms: ['4', '4 pops'],
    blank: 'missing',
    units: { pop: 1, pops: 1 },
  },
  tenths: { title: 'tenths of a stop', unit: 'tenths', forms: ['3', '0'], blank: 'zero' },
  headCount: { title: 'a number of heads', unit: '', forms: ['3'], blank: 'missing' },
  rpm: {
    title: 'turns a minute',
    unit: 'rpm',
    forms: ['33', '33 rpm', '1/2'],
    blank: 'missing',
    units: { rpm: 1 },
    fraction: true,
  },
  luxSeconds: {
    title: 'a luminous exposure',
    unit: 'lx·s',
    forms: ['640', '640 lx·s', '640 lx s'],
    blank: 'missing',
    units: { 'lx·s': 1, 'lx s': 1, lxs: 1 },
  },
  receptor: {
    title: 'a receptor',
    unit: 'lx·s',
    forms: ['flat', 'dome', '250'],
    blank: 'missing',
    words: RECEPTORS,
    units: { 'lx·s': 1, 'lx s': 1, lxs: 1 },
  },
  lux: {
    title: 'an illuminance',
    unit: 'lx',
    forms: ['2560', '2560 lx'],
    blank: 'missing',
    units: { lx: 1, lux: 1 },
  },
  /** Whatever a recorder gives: volts, counts. */
  signal: { title: 'a number', unit: '', forms: ['0.42', '-3.1'], blank: 'zero' },
  /** What a recorder gives without light; it is found where it is not given, so that nothing is said as a word. */
  base: {
    title: 'a number',
    unit: '',
    forms: ['0.02', '-3.1', 'zero'],
    blank: 'missing',
    words: { zero: 0 },
  },
  /** Lit or not, or a part of the power it was metered at. */
  lit: {
    title: 'a share of the power',
    unit: '',
    forms: ['1', '0', '0.5', '1/4', '50%'],
    blank: 'zero',
    fraction: true,
    percent: true,
    mistyped: 'date',
  },
  raw: { title: 'a raw value', unit: '', forms: ['12000'], blank: 'missing' },
  wavelength: {
    title: 'a wavelength',
    unit: 'nm',
    forms: ['550', '550 nm', '0.55 µm'],
    blank: 'missing',
    units: lengthUnits(1e-9),
  },
  smallLength: {
    title: 'a length',
    unit: 'mm',
    forms: ['0.03', '0.03 mm', '30 µm'],
    blank: 'missing',
    units: lengthUnits(1e-3),
  },
  micrometres: {
    title: 'a length',
    unit: 'µm',
    forms: ['21.5', '21.5 µm'],
    blank: 'missing',
    units: lengthUnits(1e-6),
  },
  angle: {
    title: 'an angle',
    unit: '°',
    forms: ['8', '8°', '8 deg'],
    blank: 'missing',
    units: { '°': 1, deg: 1, degrees: 1 },
  },
  kelvin: {
    title: 'a colour temperature',
    unit: 'K',
    forms: ['5600', '5600 K'],
    blank: 'missing',
    units: { k: 1, kelvin: 1 },
  },
  mired: {
    title: 'a mired shift',
    unit: 'mired',
    forms: ['-20', '131 mired'],
    blank: 'zero',
    units: { mired: 1, mireds: 1 },
  },
  volts: {
    title: 'a voltage',
    unit: 'V',
    forms: ['230', '230 V'],
    blank: 'missing',
    units: { v: 1, volt: 1, volts: 1 },
  },
  amperes: { title: 'a current', unit: 'A', forms: ['10', '10 A'], blank: 'zero', units: { a: 1 } },
  watts: {
    title: 'a power',
    unit: 'W',
    forms: ['250', '250 W', '1.2 kW'],
    blank: 'zero',
    units: { w: 1, kw: 1e3 },
  },
  money: { title: 'an amount of money', unit: '', forms: ['85', '85.50'], blank: 'zero' },
  days: {
    title: 'a number of days',
    unit: 'days',
    forms: ['3', '1.5', '1/2', '3 days'],
    blank: 'missing',
    fraction: true,
    units: { day: 1, days: 1 },
  },
  frames: {
    title: 'a number of frames',
    unit: 'frames',
    forms: ['12', '12 frames'],
    blank: 'missing',
    units: { frame: 1, frames: 1 },
  },
  exponent: { title: 'an exponent', unit: '', forms: ['1.31'], blank: 'missing' },
  ev: { title: 'an exposure value', unit: 'EV', forms: ['12'], blank: 'zero' },
  percent: { title: 'a percentage', unit: '%', forms: ['5'], blank: 'zero' },
  onScale: { title: 'a value on the same scale', unit: '', forms: [], blank: 'missing' },
  text: { title: 'a text', unit: '', forms: [], blank: 'missing' },
});
