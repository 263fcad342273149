import type { MarkedScale } from '../exposure/stops/marks';
import { RECEPTORS } from '../exposure/metering/luxSeconds';

/** How the text of a cell is built, beyond a plain number with a unit. */
export type Grammar = 'aperture' | 'length';
/** What a filter is counted in. */
export type FilterMeasure = 'factor' | 'density' | 'transmission';

/** How a cell is shown and preset, in the number formats of spreadsheets. */
export interface Shown {
  /** Number format of a cell that people type into. */
  readonly input: string;
  /** Number format of a cell that a formula fills: people may type a fraction, a result is a decimal number. */
  readonly result: string;
  readonly align: 'left' | 'right';
  /** An input is preset as text, so that a fraction typed into it stays one. */
  readonly text: boolean;
}

/** Bare numbers that are refused, because somebody meant something else. */
export interface Limits {
  /** What a spreadsheet makes a date of, where it is typed into an unformatted cell: 1/60. */
  readonly date?: string;
  /** What it makes a time of day of: 3:1. */
  readonly clock?: string;
}

/**
 * One kind of quantity: all that the house knows of it. Every argument and result names one of these, and whoever reads,
 * says or shows a value asks its quantity; there is no other list of them.
 */
export interface Quantity {
  /** With its article, for sentences: "an f-number". */
  readonly title: string;
  /** The base unit, as shown beside an argument; empty for a bare number. */
  readonly unit: string;
  /** The unit of one, for things to count: one stop, two stops. */
  readonly one?: string;
  /** What formulas call it. An argument may have a sign of its own. */
  readonly sign?: string;
  /** In a formula its numbers stand without the unit, which counts things or says nothing there. */
  readonly plainInFormula?: true;
  /** How a cell of it is shown and preset on a sheet. */
  readonly shown: Shown;
  /** Texts that are read, for messages and help. Each of them is tested. */
  readonly forms: readonly string[];
  /** Whether an empty cell (0, null or "") is missing, or the real value 0. */
  readonly blank: 'missing' | 'zero';
  /** Bare numbers that equal a mark of this scale are the exact value behind the mark. */
  readonly marks?: MarkedScale;
  /** The same scale, for quantities that take a bare number as typed but know marks in texts such as f/11+0.3. */
  readonly marksInText?: MarkedScale;
  readonly grammar?: Grammar;
  /** It is read from a filter's name too: ND8, ND 0.9, 8x. */
  readonly filter?: FilterMeasure;
  /** Unit words, in small letters, and what one of them is in the base unit. */
  readonly units?: Readonly<Record<string, number>>;
  /** Its title is what its unit words measure, said where one of them stands in a cell of another kind. */
  readonly namesUnits?: true;
  /** Unit words of another kind that are written here by mistake, and what to say of them. */
  readonly strayUnits?: Readonly<Record<string, string>>;
  /** A word that may stand before the number: ISO 400. */
  readonly prefix?: string;
  /** Stops behind the number (1/4 -0.3): `read` into it, or standing `apart`, in a cell of their own. */
  readonly tail?: 'read' | 'apart';
  /** Fractions such as 1/60 and 1 1/3. */
  readonly fraction?: true;
  /** 3:1. */
  readonly pair?: true;
  /** 30%. */
  readonly percent?: true;
  /** Words that stand for a number: infinity. */
  readonly words?: Readonly<Record<string, number>>;
  readonly limits?: Limits;
  /** It is of the kind that the first argument is of. */
  readonly asFirst?: true;
}

const shown = (input: string, result = input): Shown => ({ input, result, align: 'right', text: false });
/** For what is typed as a fraction or a ratio, which an unformatted cell would turn into a date. */
const shownAsTyped = (result: string): Shown => ({ input: '@', result, align: 'right', text: true });
const WORDS: Shown = { input: 'General', result: 'General', align: 'left', text: false };

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
    sign: 'N',
    plainInFormula: true,
    shown: shown('"f/"General', '"f/"0.0'),
    forms: ['11', 'f/11', 'f/8 2/3', 'f/11+0.3', '11³'],
    blank: 'missing',
    grammar: 'aperture',
    marks: 'aperture',
    marksInText: 'aperture',
  },
  apertureAsTyped: {
    title: 'an f-number',
    unit: 'f-number',
    sign: 'N',
    plainInFormula: true,
    shown: shown('"f/"General', '"f/"0.0'),
    forms: ['11', 'f/11', 'f/8 2/3', 'f/11+0.3', '11³'],
    blank: 'missing',
    grammar: 'aperture',
    marksInText: 'aperture',
  },
  /** An f-number beside which its tenths stand on their own. */
  apertureFigure: {
    title: 'an f-number',
    unit: 'f-number',
    sign: 'N',
    plainInFormula: true,
    shown: shown('"f/"General', '"f/"0.0'),
    forms: ['11', 'f/11', 'f/11 exact'],
    blank: 'missing',
    grammar: 'aperture',
    marks: 'aperture',
    marksInText: 'aperture',
    tail: 'apart',
  },
  shutterTime: {
    title: 'a shutter time',
    unit: 's',
    sign: 't',
    shown: shownAsTyped('0.000" s"'),
    forms: ['1/60', '1/250 s', '0.004', '4 ms', '30"', '1 min'],
    blank: 'missing',
    units: TIME_UNITS,
    fraction: true,
    marks: 'time',
    marksInText: 'time',
    limits: { date: '1/60' },
  },
  duration: {
    title: 'a time',
    unit: 's',
    namesUnits: true,
    shown: shown('0.0##" s"', '0.0" s"'),
    forms: ['0.004', '1/250 s', '4 ms', '350 µs', '2 s', '1 min'],
    blank: 'missing',
    units: TIME_UNITS,
    fraction: true,
    marksInText: 'time',
    limits: { date: '1/60' },
  },
  /** A wait, which may well be none. */
  wait: {
    title: 'a time',
    unit: 's',
    shown: shown('0.0##" s"', '0.0" s"'),
    forms: ['0.5', '1/4 s', '250 ms', '2 s'],
    blank: 'zero',
    units: TIME_UNITS,
    fraction: true,
    limits: { date: '1/60' },
  },
  iso: {
    title: 'an ISO speed',
    unit: 'ISO',
    sign: 'S',
    plainInFormula: true,
    shown: shown('"ISO "0'),
    forms: ['100', 'ISO 400'],
    blank: 'missing',
    prefix: 'iso',
    marks: 'iso',
    marksInText: 'iso',
  },
  energy: {
    title: 'an energy',
    unit: 'Ws',
    namesUnits: true,
    strayUnits: { w: 'a power for one second is 1 Ws', kw: 'a power for one second is 1 Ws' },
    shown: shown('[<100]0.0" Ws";[<1000]0" Ws";#\\ ##0" Ws"'),
    forms: ['400', '400 Ws', '400 J', '1.2 kJ'],
    blank: 'missing',
    units: { ws: 1, j: 1, kj: 1e3, kws: 1e3 },
  },
  distance: {
    title: 'a distance',
    unit: 'm',
    shown: shown('0.00" m"'),
    forms: ['1.2', '1.2 m', '80 cm', '5 ft', `5' 6"`],
    blank: 'missing',
    grammar: 'length',
    fraction: true,
    units: lengthUnits(1),
  },
  /** What the modelling lamp alone takes none of. */
  energyOrNone: {
    title: 'an energy',
    unit: 'Ws',
    strayUnits: { w: 'a power for one second is 1 Ws', kw: 'a power for one second is 1 Ws' },
    shown: shown('[<100]0.0" Ws";[<1000]0" Ws";#\\ ##0" Ws"'),
    forms: ['400', '400 Ws', '400 J', '1.2 kJ', 'none'],
    blank: 'missing',
    words: { none: 0 },
    units: { ws: 1, j: 1, kj: 1e3, kws: 1e3 },
  },
  lensLength: {
    title: 'a length',
    unit: 'mm',
    namesUnits: true,
    shown: shown('0" mm"'),
    forms: ['35', '35 mm', '30 cm', '12 in'],
    blank: 'missing',
    grammar: 'length',
    fraction: true,
    units: lengthUnits(1e-3),
  },
  pitch: {
    title: 'a pixel pitch',
    unit: 'µm',
    shown: shown('0.00" µm"'),
    forms: ['3.76', '3.76 µm'],
    blank: 'missing',
    units: lengthUnits(1e-6),
  },
  pixels: {
    title: 'a number of pixels',
    unit: 'px',
    plainInFormula: true,
    namesUnits: true,
    shown: shown('0.0" px"'),
    forms: ['2', '2 px'],
    blank: 'missing',
    units: { px: 1, pixel: 1, pixels: 1 },
  },
  guide: {
    title: 'a guide number',
    unit: 'm',
    sign: 'G',
    shown: shown('0.0" m"'),
    forms: ['45', '45 m', '80 ft'],
    blank: 'missing',
    grammar: 'length',
    units: lengthUnits(1),
  },
  speed: {
    title: 'a speed',
    unit: 'm/s',
    namesUnits: true,
    shown: shown('0.00" m/s"'),
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
    one: 'stop',
    plainInFormula: true,
    namesUnits: true,
    shown: shown('+0.0" stop";-0.0" stop";0.0" stop"'),
    forms: ['1.5', '-1/3', '2/3', '1 1/3'],
    blank: 'zero',
    units: { stop: 1, stops: 1 },
    fraction: true,
    limits: { date: '1/4' },
  },
  /** Stops of which none at all makes no sense, so that an empty cell is missing. */
  stopsStep: {
    title: 'a number of stops',
    unit: 'stops',
    one: 'stop',
    plainInFormula: true,
    shown: shown('0.0#" stop"'),
    forms: ['0.1', '1/3', '1/2'],
    blank: 'missing',
    units: { stop: 1, stops: 1 },
    fraction: true,
    limits: { date: '1/4' },
  },
  /** What a display of stops shows at full power, where 0 is said as a word. */
  stopsAtFull: {
    title: 'a number of stops',
    unit: 'stops',
    one: 'stop',
    plainInFormula: true,
    shown: shown('0.0" stop"'),
    forms: ['10', '7 1/3', 'none'],
    blank: 'missing',
    words: { none: 0 },
    units: { stop: 1, stops: 1 },
    fraction: true,
    limits: { date: '1/4' },
  },
  /** A display of fractions, with the stops off them. */
  fullFraction: {
    title: 'a fraction of full power',
    unit: '',
    shown: shownAsTyped('0.000'),
    forms: ['1/4', '1/4 -0.3', '1/8 +0.7', '0.25', '1'],
    blank: 'missing',
    fraction: true,
    tail: 'read',
    limits: { date: '1/4', clock: '3:1' },
  },
  fullPercent: {
    title: 'a percentage of full power',
    unit: '',
    shown: shown('0%', '0.0%'),
    forms: ['41%', '41 %', '0.41'],
    blank: 'missing',
    percent: true,
  },
  ratio: {
    title: 'a ratio',
    unit: '',
    shown: shown('0.0":1"'),
    forms: ['3', '3:1', '1:2', '1/4', '30%'],
    blank: 'missing',
    fraction: true,
    pair: true,
    percent: true,
    limits: { date: '1/4', clock: '3:1' },
  },
  share: {
    title: 'a share',
    unit: '',
    shown: shown('0%', '0.0%'),
    forms: ['0.5', '1/4', '30%', '1:2'],
    blank: 'missing',
    fraction: true,
    pair: true,
    percent: true,
    limits: { date: '1/4', clock: '3:1' },
  },
  magnification: {
    title: 'a magnification',
    unit: '',
    sign: 'm',
    shown: shown('0.00'),
    forms: ['0.5', '1:2', '1/2', '50%', 'infinity'],
    blank: 'missing',
    fraction: true,
    pair: true,
    percent: true,
    words: { infinity: 0 },
    limits: { date: '1/4', clock: '3:1' },
  },
  factor: {
    title: 'a factor',
    unit: '',
    shown: shown('0.0##'),
    forms: ['8', '3:1', '1/4', '30%'],
    blank: 'missing',
    fraction: true,
    pair: true,
    percent: true,
  },
  filterFactor: {
    title: 'a filter',
    unit: '',
    shown: shownAsTyped('0.0'),
    forms: ['8', '8x', 'ND8', 'ND 0.9'],
    blank: 'missing',
    filter: 'factor',
  },
  filterDensity: {
    title: 'a density',
    unit: '',
    shown: shownAsTyped('0.00'),
    forms: ['0.9', 'ND 0.9', 'ND8'],
    blank: 'zero',
    filter: 'density',
  },
  filterTransmission: {
    title: 'a transmission',
    unit: '',
    shown: shownAsTyped('0.0%'),
    forms: ['0.125', '12.5%', '1/8', 'ND8', 'ND 0.9'],
    blank: 'missing',
    filter: 'transmission',
    fraction: true,
    percent: true,
    limits: { date: '1/4', clock: '3:1' },
  },
  pops: {
    title: 'a number of pops',
    unit: 'pops',
    one: 'pop',
    sign: 'n',
    plainInFormula: true,
    namesUnits: true,
    shown: shown('0'),
    forms: ['4', '4 pops'],
    blank: 'missing',
    units: { pop: 1, pops: 1 },
  },
  tenths: {
    title: 'tenths of a stop',
    unit: 'tenths',
    one: 'tenth',
    plainInFormula: true,
    shown: shown('0'),
    forms: ['3'],
    blank: 'missing',
  },
  headCount: { title: 'a number of heads', unit: '', shown: shown('0'), forms: ['3'], blank: 'missing' },
  rpm: {
    title: 'turns a minute',
    unit: 'rpm',
    plainInFormula: true,
    namesUnits: true,
    shown: shown('0" rpm"'),
    forms: ['33', '33 rpm', '1/2'],
    blank: 'missing',
    units: { rpm: 1 },
    fraction: true,
  },
  luxSeconds: {
    title: 'a luminous exposure',
    unit: 'lx·s',
    sign: 'H',
    namesUnits: true,
    shown: shown('0" lx·s"'),
    forms: ['640', '640 lx·s', '640 lx s'],
    blank: 'missing',
    units: { 'lx·s': 1, 'lx s': 1, lxs: 1 },
  },
  receptor: {
    title: 'a receptor',
    unit: 'lx·s',
    sign: 'C',
    shown: shown('0" lx·s"'),
    forms: ['flat', 'dome', '250'],
    blank: 'missing',
    words: RECEPTORS,
    units: { 'lx·s': 1, 'lx s': 1, lxs: 1 },
  },
  lux: {
    title: 'an illuminance',
    unit: 'lx',
    namesUnits: true,
    shown: shown('0" lx"'),
    forms: ['2560', '2560 lx'],
    blank: 'missing',
    units: { lx: 1, lux: 1 },
  },
  /** Whatever a recorder gives: volts, counts. */
  signal: {
    title: 'a number',
    unit: '',
    shown: shown('General', '0.000'),
    forms: ['0.42', '-3.1'],
    blank: 'zero',
  },
  /** What a recorder gives without light; it is found where it is not given, so that nothing is said as a word. */
  base: {
    title: 'a number',
    unit: '',
    shown: shown('General', '0.000'),
    forms: ['0.02', '-3.1', 'zero'],
    blank: 'missing',
    words: { zero: 0 },
  },
  /** Lit or not, or a part of the power it was metered at. */
  lit: {
    title: 'a share of the power',
    unit: '',
    shown: shown('0%'),
    forms: ['1', '0', '0.5', '1/4', '50%'],
    blank: 'zero',
    fraction: true,
    percent: true,
    limits: { date: '1/4' },
  },
  raw: { title: 'a raw value', unit: '', shown: shown('0'), forms: ['12000'], blank: 'missing' },
  wavelength: {
    title: 'a wavelength',
    unit: 'nm',
    sign: 'λ',
    shown: shown('0" nm"'),
    forms: ['550', '550 nm', '0.55 µm'],
    blank: 'missing',
    units: lengthUnits(1e-9),
  },
  smallLength: {
    title: 'a length',
    unit: 'mm',
    shown: shown('0.00#" mm"'),
    forms: ['0.03', '0.03 mm', '30 µm'],
    blank: 'missing',
    units: lengthUnits(1e-3),
  },
  micrometres: {
    title: 'a length',
    unit: 'µm',
    shown: shown('0.0" µm"'),
    forms: ['21.5', '21.5 µm'],
    blank: 'missing',
    units: lengthUnits(1e-6),
  },
  angle: {
    title: 'an angle',
    unit: '°',
    namesUnits: true,
    shown: shown('0.0"°"'),
    forms: ['8', '8°', '8 deg'],
    blank: 'missing',
    units: { '°': 1, deg: 1, degrees: 1 },
  },
  kelvin: {
    title: 'a colour temperature',
    unit: 'K',
    namesUnits: true,
    shown: shown('0" K"'),
    forms: ['5600', '5600 K'],
    blank: 'missing',
    units: { k: 1, kelvin: 1 },
  },
  mired: {
    title: 'a mired shift',
    unit: 'mired',
    plainInFormula: true,
    namesUnits: true,
    shown: shown('+0" mired";-0" mired";0" mired"'),
    forms: ['-20', '131 mired'],
    blank: 'zero',
    units: { mired: 1, mireds: 1 },
  },
  volts: {
    title: 'a voltage',
    unit: 'V',
    namesUnits: true,
    shown: shown('0" V"'),
    forms: ['230', '230 V'],
    blank: 'missing',
    units: { v: 1, volt: 1, volts: 1 },
  },
  amperes: {
    title: 'a current',
    unit: 'A',
    namesUnits: true,
    shown: shown('0.0" A"'),
    forms: ['10', '10 A'],
    blank: 'zero',
    units: { a: 1 },
  },
  watts: {
    title: 'a power',
    unit: 'W',
    namesUnits: true,
    shown: shown('0" W"'),
    forms: ['250', '250 W', '1.2 kW'],
    blank: 'zero',
    units: { w: 1, kw: 1e3 },
  },
  money: {
    title: 'an amount of money',
    unit: '',
    shown: shown('0.00'),
    forms: ['85', '85.50'],
    blank: 'zero',
  },
  days: {
    title: 'a number of days',
    unit: 'days',
    one: 'day',
    plainInFormula: true,
    namesUnits: true,
    shown: shown('0.0#'),
    forms: ['3', '1.5', '1/2', '3 days'],
    blank: 'missing',
    fraction: true,
    units: { day: 1, days: 1 },
  },
  frames: {
    title: 'a number of frames',
    unit: 'frames',
    one: 'frame',
    plainInFormula: true,
    namesUnits: true,
    shown: shown('0'),
    forms: ['12', '12 frames'],
    blank: 'missing',
    units: { frame: 1, frames: 1 },
  },
  exponent: {
    title: 'an exponent',
    unit: '',
    sign: 'P',
    shown: shown('0.00'),
    forms: ['1.31'],
    blank: 'missing',
  },
  ev: {
    title: 'an exposure value',
    unit: 'EV',
    plainInFormula: true,
    shown: shown('0.0'),
    forms: ['12'],
    blank: 'zero',
  },
  percent: {
    title: 'a percentage',
    unit: '%',
    plainInFormula: true,
    namesUnits: true,
    shown: shown('0.0" %"'),
    forms: ['5'],
    blank: 'zero',
  },
  onScale: {
    title: 'a value on the same scale',
    unit: '',
    asFirst: true,
    shown: shown('General'),
    forms: [],
    blank: 'missing',
  },
  text: { title: 'a text', unit: '', shown: WORDS, forms: [], blank: 'missing' },
});
