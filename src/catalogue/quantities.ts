import type { MarkedScale } from '../exposure/stops/marks';
import { RECEPTORS } from '../exposure/metering/luxSeconds';

/** How the text of a cell is built, beyond a plain number with a unit. */
export type Grammar = 'aperture' | 'length';
/** What a filter is counted in. */
export type FilterMeasure = 'factor' | 'density' | 'transmission' | 'stops';
/**
 * Which fractions are read: `proper`, such as 1/60 s; `any` in lowest terms, such as 3/2 (50/50 is two shares); `stops`, such as
 * 1/3 and 1 1/3, by what a stop is divided into.
 */
export type Fractions = 'proper' | 'any' | 'stops';

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

/** The last number that is believed where no unit stands beside it. */
export interface Limit {
  readonly at: number;
  /** What somebody meant, and what to write; # is the number. */
  readonly hint: string;
}

/** Bare numbers that are refused, because somebody meant something else. With their unit they are believed. */
export interface Limits {
  /** Numbers from 10,000 up are refused, as a spreadsheet makes a date of 1/60; what to type instead. */
  readonly date?: string;
  /** So is what it makes a time of day of: 3:1. */
  readonly clock?: string;
  readonly least?: Limit;
  readonly most?: Limit;
  /** `least` and `most` hold with a unit as well. */
  readonly always?: true;
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
  /** Words that may stand before the number: ISO 400. */
  readonly prefixes?: readonly string[];
  readonly fraction?: Fractions;
  /**
   * Stops may be written after the number: after a `unit` alone (1/125 s+0.3), after a `space` too (1/60 +0.3), after `any`
   * number (1/4-0.3); or they stand `apart`, in a cell of their own, so that none may be here.
   */
  readonly tails?: 'unit' | 'space' | 'any' | 'apart';
  /**
   * A point before three digits may part thousands: whatever the unit, or in units of these factors. In all others it is a
   * decimal point.
   */
  readonly thousands?: 'all' | readonly number[];
  /** Powers of ten, as files from instruments have them: 4.06E-04. */
  readonly powers?: true;
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
  s: 1, sec: 1, secs: 1, second: 1, seconds: 1, '"': 1, ms: 1e-3, msec: 1e-3, µs: 1e-6, us: 1e-6,
  min: 60, mins: 60, minute: 60, minutes: 60, h: 3600,
}; // prettier-ignore
const TIME = {
  units: TIME_UNITS,
  fraction: 'proper',
  powers: true,
  thousands: [TIME_UNITS.µs],
} as const;
const INCH = 0.0254;
const FOOT = 0.3048;

/** Length units in metres. */
const METRE_UNITS = {
  m: 1, metre: 1, metres: 1, meter: 1, meters: 1, cm: 1e-2, mm: 1e-3, µm: 1e-6, um: 1e-6, nm: 1e-9, km: 1e3,
  ft: FOOT, foot: FOOT, feet: FOOT, "'": FOOT, in: INCH, 'in.': INCH, inch: INCH, inches: INCH, '"': INCH,
}; // prettier-ignore
const lengthUnits = (baseInMetres: number): Record<string, number> =>
  Object.fromEntries(Object.entries(METRE_UNITS).map(([unit, metres]) => [unit, metres / baseInMetres]));

/** What to type instead of a fraction that the spreadsheet turned into a date or a time of day. */
const madeOf = (typed: string): string =>
  `made of ${typed} or the like. Type =${typed.replace(':', '/')}, or ${typed} in a text cell`;
const TYPE_AGAIN =
  'which the cell made of what was typed. Set it to a number format and type the number again';
const TIMES: Limits = {
  date: madeOf('1/60'),
  clock: 'made of 1:30 or the like. Type seconds, or 1.5 min; round what is calculated, =ROUND(…,4)',
};
const RATIOS: Limits = { date: madeOf('1/4'), clock: madeOf('3:1') };
/** No studio has room for more metres. */
const ROOM: Limits = { most: { at: 20, hint: '# cm? Write the unit: # cm, or # m' } };
const makersTime = (at: number): Limits => ({
  ...TIMES,
  most: { at, hint: 'a maker’s 1/# s is =1/#. Seconds need their unit there: # s' },
});
const F_NUMBER = {
  title: 'an f-number',
  unit: 'f-number',
  sign: 'N',
  plainInFormula: true,
  shown: shown('"f/"General', '"f/"0.0'),
  forms: ['11', 'f/11', 'f/8 2/3', 'f/11+0.3', '11³'],
  blank: 'missing',
  grammar: 'aperture',
  marksInText: 'aperture',
} as const;
const A_TIME = {
  title: 'a time',
  unit: 's',
  shown: shown('0.0##" s"', '0.0" s"'),
  blank: 'missing',
  ...TIME,
} as const;
const FLASH = {
  ...A_TIME,
  title: 'a flash duration',
  forms: ['1/2000', '1/2000 s', '0.0005', '0.5 ms', '385 µs'],
  marksInText: 'time',
} as const;
const ENERGY = {
  title: 'an energy',
  unit: 'Ws',
  strayUnits: { w: 'a power for one second is 1 Ws', kw: 'a power for one second is 1 Ws' },
  shown: shown('[<100]0.0" Ws";[<1000]0" Ws";#\\ ##0" Ws"'),
  forms: ['400', '400 Ws', '400 J', '1.2 kJ'],
  blank: 'missing',
  units: {
    ws: 1, j: 1, joule: 1, joules: 1, wsec: 1, 'w·s': 1, 'w s': 1, 'watt seconds': 1, 'watt-seconds': 1, kj: 1e3, kws: 1e3,
  }, // prettier-ignore
  tails: 'unit',
  thousands: [1],
  powers: true,
} as const;
const STOPS = {
  title: 'a number of stops',
  unit: 'stops',
  one: 'stop',
  plainInFormula: true,
  shown: shown('+0.0" stop";-0.0" stop";0.0" stop"'),
  forms: ['1.5', '-1/3', '2/3', '1 1/3'],
  blank: 'zero',
  units: { stop: 1, stops: 1, ev: 1 },
  fraction: 'stops',
} as const;
const SMALL_STOPS = {
  ...STOPS,
  shown: shown('0.0#" stop"'),
  forms: ['0.1', '1/3', '1/2'],
  blank: 'missing',
} as const;
const DISTANCE = {
  title: 'a distance',
  unit: 'm',
  shown: shown('0.00" m"'),
  forms: ['1.2', '1.2 m', '80 cm', '5 ft', `5' 6"`],
  blank: 'missing',
  grammar: 'length',
  units: lengthUnits(1),
} as const;
const LENS_LENGTH = {
  title: 'a length',
  unit: 'mm',
  shown: shown('0" mm"'),
  forms: ['35', '35 mm', '30 cm', '12 in'],
  blank: 'missing',
  grammar: 'length',
  units: lengthUnits(1e-3),
} as const;
const SHARE = {
  title: 'a share',
  unit: '',
  shown: shown('0%', '0.0%'),
  forms: ['0.5', '1/4', '30%', '1:2'],
  blank: 'missing',
  fraction: 'any',
  pair: true,
  percent: true,
  thousands: 'all',
} as const;

const define = <const Q extends Record<string, Quantity>>(
  quantities: Q,
): { readonly [K in keyof Q]: Quantity } => quantities;

export const Q = define({
  aperture: {
    ...F_NUMBER,
    marks: 'aperture',
    limits: {
      least: { at: 0.1, hint: 'a shutter time? An aperture so wide is written f/#' },
      most: { at: 1000, hint: 'a date, or lux? An aperture so small is written f/#' },
    },
  },
  /** An f-number for formulas, as large as it may be. */
  anyAperture: { ...F_NUMBER, marks: 'aperture', limits: { date: TYPE_AGAIN } },
  /** A reading that may as well be lux or a raw value. */
  evenReading: {
    ...F_NUMBER,
    marks: 'aperture',
    limits: {
      most: { at: 128, hint: 'write the scale: lux, raw or aperture. An aperture so small is written f/#' },
    },
  },
  apertureAsTyped: {
    ...F_NUMBER,
    limits: { most: { at: 1000, hint: 'a date, or lux? An aperture so small is written f/#' } },
  },
  /** An f-number beside which its tenths stand on their own. */
  apertureFigure: {
    ...F_NUMBER,
    forms: ['11', 'f/11', 'f/11 exact'],
    marks: 'aperture',
    tails: 'apart',
    limits: { date: TYPE_AGAIN },
  },
  shutterTime: {
    ...A_TIME,
    title: 'a shutter time',
    sign: 't',
    shown: shownAsTyped('0.000" s"'),
    forms: ['1/60', '1/250 s', '0.004', '4 ms', '30"', '1 min'],
    marks: 'time',
    marksInText: 'time',
    tails: 'space',
    limits: TIMES,
  },
  duration: {
    ...A_TIME,
    namesUnits: true,
    forms: ['0.004', '1/250 s', '4 ms', '350 µs', '2 s', '1 min'],
    marksInText: 'time',
    tails: 'space',
    limits: TIMES,
  },
  flashDuration: { ...FLASH, limits: makersTime(1) },
  /** How long a moving thing is lit: by a flash, or by light that stays on. */
  litTime: { ...FLASH, title: 'a time', limits: makersTime(30) },
  /** A wait, which may well be none. */
  wait: { ...A_TIME, forms: ['0.5', '1/4 s', '250 ms', '2 s'], blank: 'zero', limits: TIMES },
  iso: {
    title: 'an ISO speed',
    unit: 'ISO',
    sign: 'S',
    plainInFormula: true,
    shown: shown('"ISO "0'),
    forms: ['100', 'ISO 400'],
    blank: 'missing',
    namesUnits: true,
    prefixes: ['iso', 'asa', 'ei'],
    units: { iso: 1, asa: 1 },
    tails: 'space',
    thousands: 'all',
    limits: { least: { at: 3, hint: 'a speed so low is written ISO #' } },
    marks: 'iso',
    marksInText: 'iso',
  },
  energy: { ...ENERGY, namesUnits: true },
  /** What the modelling lamp alone takes none of. */
  energyOrNone: { ...ENERGY, forms: [...ENERGY.forms, 'none'], words: { none: 0 } },
  /** A length for formulas, as long as it may be. */
  distance: { ...DISTANCE, limits: { date: TYPE_AGAIN } },
  lightDistance: { ...DISTANCE, limits: ROOM },
  /** Width or height of a front, and other things in a studio that are measured in metres. */
  size: { ...DISTANCE, title: 'a length', limits: ROOM },
  lensLength: { ...LENS_LENGTH, namesUnits: true },
  focalLength: {
    ...LENS_LENGTH,
    title: 'a focal length',
    limits: {
      least: {
        at: 5,
        hint: 'a tolerance in the place of the focal length? With its unit it is believed: # mm',
      },
    },
  },
  pitch: {
    title: 'a pixel pitch',
    unit: 'µm',
    shown: shown('0.00" µm"'),
    forms: ['3.76', '3.76 µm'],
    blank: 'missing',
    units: lengthUnits(1e-6),
    limits: {
      least: { at: 0.1, hint: '# mm? Write the unit: # mm, or # µm' },
      most: { at: 100, hint: '# nm? Write the unit: # nm, or # µm' },
    },
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
      mps: 1,
      'metres per second': 1,
      'meters per second': 1,
      'km/h': 1 / 3.6,
      'km/hr': 1 / 3.6,
      kmh: 1 / 3.6,
      kph: 1 / 3.6,
      mph: 0.44704,
      'ft/s': FOOT,
    },
  },
  stops: { ...STOPS, namesUnits: true, limits: { date: madeOf('1/4') } },
  /** Stops of which none at all makes no sense, so that an empty cell is missing. */
  stopsStep: { ...SMALL_STOPS, limits: { date: madeOf('1/4') } },
  tolerance: {
    ...SMALL_STOPS,
    title: 'a tolerance in stops',
    forms: ['0.1', '1/3', '1/2', 'none'],
    words: { none: 0 },
    limits: {
      date: madeOf('1/4'),
      most: {
        at: 1,
        hint: 'a focal length in the place of the tolerance? With its unit it is believed: # stops',
      },
    },
  },
  /** Stops that the light loses on its way, or what the filter says that takes them. */
  lightLoss: {
    ...STOPS,
    forms: ['1.5', '2/3', '1 1/3', 'ND8', 'ND 0.9', 'x2.5'],
    filter: 'stops',
    limits: {
      date: madeOf('1/4'),
      clock: TYPE_AGAIN,
      most: {
        at: 20,
        hint: 'a focal length in the place of the loss? With its unit it is believed: # stops',
      },
    },
  },
  /** What a display of stops shows at full power, where 0 is said as a word. */
  stopsAtFull: {
    ...STOPS,
    shown: shown('0.0" stop"'),
    forms: ['10', '7 1/3', 'none'],
    blank: 'missing',
    words: { none: 0 },
    limits: { date: madeOf('1/4') },
  },
  /** A display of fractions, with the stops off them. */
  fullFraction: {
    title: 'a fraction of full power',
    unit: '',
    shown: shownAsTyped('0.000'),
    forms: ['1/4', '1/4 -0.3', '1/8 +0.7', '0.25', '1'],
    blank: 'missing',
    fraction: 'any',
    tails: 'any',
    thousands: 'all',
    limits: {
      clock: TYPE_AGAIN,
      most: { at: 1, hint: 'a date made of 1/4, or another scale? A quarter is typed =1/4' },
    },
  },
  fullPercent: {
    title: 'a percentage of full power',
    unit: '',
    shown: shown('0%', '0.0%'),
    forms: ['41%', '41 %', '0.41'],
    blank: 'missing',
    percent: true,
    thousands: 'all',
    limits: { most: { at: 1, hint: 'write #%' } },
  },
  ratio: {
    title: 'a ratio',
    unit: '',
    shown: shown('0.0":1"'),
    forms: ['3', '3:1', '1:2', '1/4', '30%'],
    blank: 'missing',
    fraction: 'any',
    pair: true,
    percent: true,
    thousands: 'all',
    limits: RATIOS,
  },
  share: { ...SHARE, limits: RATIOS },
  /** Part of the height of a flash at which its duration is taken. */
  pulseLevel: {
    ...SHARE,
    title: 'a level of the flash',
    forms: ['0.5', 't0.5', 't.5', '50%', '1/10'],
    prefixes: ['t'],
    limits: RATIOS,
  },
  magnification: {
    title: 'a magnification',
    unit: '',
    sign: 'm',
    shown: shown('0.00'),
    forms: ['0.5', '1:2', '1/2', '50%', '2x', 'infinity'],
    blank: 'missing',
    fraction: 'any',
    pair: true,
    percent: true,
    units: { x: 1 },
    thousands: 'all',
    words: { infinity: 0, '∞': 0 },
    limits: { ...RATIOS, most: { at: 50, hint: 'a focal length? A magnification so large is written #:1' } },
  },
  factor: {
    title: 'a factor',
    unit: '',
    shown: shown('0.0##'),
    forms: ['8', '8x', '3:1', '1/4', '30%'],
    blank: 'missing',
    namesUnits: true,
    fraction: 'any',
    pair: true,
    percent: true,
    units: { x: 1 },
    thousands: 'all',
    limits: { clock: madeOf('3:1') },
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
    fraction: 'any',
    percent: true,
    thousands: 'all',
    limits: { date: madeOf('1/4'), clock: TYPE_AGAIN },
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
    thousands: 'all',
    limits: { date: TYPE_AGAIN },
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
    forms: ['33', '33 rpm', '0.5'],
    blank: 'missing',
    units: { rpm: 1 },
    thousands: 'all',
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
    thousands: 'all',
    powers: true,
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
    thousands: 'all',
    powers: true,
  },
  /** Whatever a recorder gives: volts, counts. */
  signal: {
    title: 'a number',
    unit: '',
    shown: shown('General', '0.000'),
    forms: ['0.42', '-3.1', '4.06E-04'],
    blank: 'zero',
    powers: true,
  },
  /** What a recorder gives without light; it is found where it is not given, so that nothing is said as a word. */
  base: {
    title: 'a number',
    unit: '',
    shown: shown('General', '0.000'),
    forms: ['0.02', '-3.1', 'zero'],
    blank: 'missing',
    words: { zero: 0 },
    powers: true,
  },
  /** Lit or not, or a part of the power it was metered at. */
  lit: {
    title: 'a share of the power',
    unit: '',
    shown: shown('0%'),
    forms: ['1', '0', '0.5', '1/4', '50%'],
    blank: 'zero',
    fraction: 'any',
    percent: true,
    limits: { date: madeOf('1/4') },
  },
  raw: {
    title: 'a raw value',
    unit: '',
    shown: shown('0'),
    forms: ['12000'],
    blank: 'missing',
    thousands: 'all',
    powers: true,
  },
  wavelength: {
    title: 'a wavelength',
    unit: 'nm',
    sign: 'λ',
    shown: shown('0" nm"'),
    forms: ['550', '550 nm', '0.55 µm'],
    blank: 'missing',
    units: lengthUnits(1e-9),
    thousands: 'all',
    limits: {
      least: { at: 200, hint: '# µm? Write the unit: # µm, or # nm' },
      most: { at: 2000, hint: 'no light of a studio. Write the unit: # nm' },
    },
  },
  smallLength: {
    title: 'a length',
    unit: 'mm',
    shown: shown('0.00#" mm"'),
    forms: ['0.03', '0.03 mm', '30 µm'],
    blank: 'missing',
    units: lengthUnits(1e-3),
    limits: { most: { at: 2, hint: '# µm? 7.5 µm is 0.0075 mm. Write the unit: # µm, or # mm' } },
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
    units: { k: 1, kelvin: 1, '°k': 1 },
    thousands: 'all',
    limits: { least: { at: 500, hint: 'kelvin are written in full: 5600' }, always: true },
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
    thousands: 'all',
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
    thousands: [1],
  },
  money: {
    title: 'an amount of money',
    unit: '',
    shown: shown('0.00'),
    forms: ['85', '85.50', 'none'],
    blank: 'missing',
    words: { none: 0 },
    thousands: 'all',
  },
  days: {
    title: 'a number of days',
    unit: 'days',
    one: 'day',
    plainInFormula: true,
    namesUnits: true,
    shown: shown('0.0#'),
    forms: ['3', '1.5', '3 days'],
    blank: 'missing',
    units: { d: 1, day: 1, days: 1 },
    thousands: 'all',
    limits: {
      date: TYPE_AGAIN,
      most: { at: 1000, hint: 'a date, or a year? So many days are written # days' },
    },
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
    thousands: 'all',
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
