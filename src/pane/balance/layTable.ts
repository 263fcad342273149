import { isFail } from '../../exposure/core/result';
import { readAs } from './readCell';
import { Q } from '../../catalogue/quantities';
import { BLANK } from '../../cells/quantityReader';
import type { Template, TemplateColumn, TemplateValue } from '../../sheets/template';
import { COLUMNS, type HeadRow, ROWS } from './layout';

/** A light that another sheet of the workbook knows, cell by cell as it stands there. */
export interface KnownLight {
  readonly head: string;
  readonly part: string;
  readonly power: TemplateValue;
  readonly reading: TemplateValue;
  readonly tenths: TemplateValue;
  readonly most: TemplateValue;
  readonly least: TemplateValue;
  readonly step: TemplateValue;
  readonly scale: TemplateValue;
  readonly top: TemplateValue;
}

/** What the workbook knows of a set: its lights, the ambient light, and what all of it must read. */
export interface KnownSet {
  /** The sheet's name, for a person. */
  readonly from: string;
  readonly lights: readonly KnownLight[];
  readonly ambient: TemplateValue;
  readonly wanted: TemplateValue;
}

const BEFORE = 5;
const EMPTY_POINTS = 4;
const LONGEST_HEADING = 24;
const TABLE = 'Points';

/** An invented set: three heads that light four points, of which the rim reads too much and the bowl too little. */
const DEMO: KnownSet = {
  from: '',
  wanted: 'f/22',
  ambient: 'f/2',
  lights: [
    light('Alder 600', '1/2', 600, 9.375, 'fraction'),
    light('Birch 1200', '9.5', 1200, 18.75, 'stops', '10'),
    light('Hazel 400', '25%', 400, 6.25, 'percent'),
  ],
};
/** Wanted, within, across, up, ambient, and each head alone. */
const DEMO_POINTS: readonly (readonly TemplateValue[])[] = [
  ['Vessel', 'f/22', 'equal', '0.1', '0', '0', 'f/2', 'f/16 +0.5', 'f/8 +0.9', 'f/5.6 +0.2'],
  ['Bowl', 'f/22', 'equal', '0.2', '30', '-5', 'f/2', 'f/11 +0.3', 'f/11 +0.1', 'f/4 +0.6'],
  ['Rim of the jug', 'f/32', 'at most', '0.1', '-25', '20', 'f/2', 'f/8 +0.4', 'f/4 +0.8', 'f/22 +0.9'],
  ['Slate behind', 'f/11', 'equal', '0.3', '5', '45', 'f/1.4', 'f/8 +0.1', 'f/5.6 +0.5', 'E'],
];

function light(
  head: string,
  power: string,
  most: number,
  least: number,
  scale: string,
  top: TemplateValue = null,
): KnownLight {
  // prettier-ignore
  return { head, part: '', power, reading: null, tenths: null, most, least, step: '0.1', scale, top };
}

/** Headings that a table can have, no two alike: “Hazel 400 rim”. */
function headings(lights: readonly KnownLight[]): string[] {
  const taken = new Set<string>(Object.values(COLUMNS).map((word) => word.toLowerCase()));
  return lights.map(({ head, part }) => {
    const plain = (text: string): string => text.replace(/[^A-Za-z0-9 ]+/g, ' ').replace(/ +/g, ' ').trim(); // prettier-ignore
    const isOnce = lights.filter((other) => other.head === head).length === 1;
    const wanted = plain(isOnce || part === '' ? head : `${head} ${part}`).slice(0, LONGEST_HEADING - 3).trim(); // prettier-ignore
    const base = /^[A-Za-z]/.test(wanted) ? wanted : `Head ${wanted}`.trim();
    let name = base;
    for (let n = 2; taken.has(name.toLowerCase()); n++) name = `${base} ${n}`;
    taken.add(name.toLowerCase());
    return name;
  });
}

/** A reading and its tenths in one cell, as the table has it: f/11 +0.3. */
export function readingIn(reading: TemplateValue, tenths: TemplateValue): TemplateValue {
  if (reading === null || reading === '') return null;
  const read = readAs(reading, Q.aperture, '');
  if (read === BLANK || isFail(read)) return null;
  const plain = String(reading).trim().replace(/^f ?\/ ?/i, ''); // prettier-ignore
  const small = Number(tenths ?? 0);
  return small > 0 && small < 10 ? `f/${plain} +0.${small}` : `f/${plain}`;
}

/** As text; three digits behind a point, which may part thousands, get a fourth. */
const text = (value: TemplateValue): TemplateValue =>
  value === null || value === '' ? null : String(value).replace(/^\d+\.\d{3}$/, '$&0');

function headRows({ lights }: KnownSet): TemplateValue[][] {
  const row = (key: HeadRow, cell: (one: KnownLight) => TemplateValue): TemplateValue[] => [
    ROWS[key],
    ...Array.from({ length: BEFORE + 1 }, () => null),
    ...lights.map(cell),
    null,
  ];
  return [
    row('model', ({ head }) => text(head)),
    row('metered', ({ power }) => text(power)),
    row('scale', ({ scale }) => text(scale)),
    row('top', ({ top }) => text(top)),
    row('most', ({ most }) => text(most)),
    row('least', ({ least }) => text(least)),
    row('step', ({ step }) => text(step)),
    row('locked', () => null),
    row('mayGoOff', () => null),
    row('mostPops', () => '1'),
    row('setTo', () => null),
    row('pops', () => null),
  ];
}

function pointRows({ lights, ambient, wanted }: KnownSet): TemplateValue[][] {
  const readings = lights.map(({ reading, tenths }) => readingIn(reading, tenths));
  const subject = ['Subject', text(wanted), 'equal', '0.1', '0', '0', ambient ?? 'none', ...readings, null];
  const blank = Array.from({ length: EMPTY_POINTS }, () => subject.map(() => null));
  return [subject, ...blank];
}

const NOTES: Readonly<Record<keyof typeof COLUMNS, string>> = {
  wanted: 'What all light together shall read there: 11, 11 3 or f/11+0.3.',
  kind: 'Equal, at least, at most or ignore. Blank is equal.',
  within: 'Stops that may be missed: 0.1, 1/3. Blank is none.',
  across: 'Where it lies, as seen from the camera: to the right, in any unit. Blank for no picture.',
  up: 'The same upwards.',
  ambient: 'With all heads off, as long as the shutter is open: or none.',
  all: '',
  measured:
    'With all heads set as said: fill it for every point, read the table again, and the next round starts.',
};

/**
 * A sheet to balance, with what the workbook knows of the set; the demo job where it knows nothing.
 *
 * It is made here and no file, as it has a column for each head of the set.
 */
export function balanceSheet(known: KnownSet | undefined): Template {
  const set = known ?? DEMO;
  const names = headings(set.lights);
  const column = (key: keyof typeof COLUMNS): TemplateColumn => ({
    id: COLUMNS[key],
    quantity: 'words',
    note: NOTES[key],
  });
  const before = (['wanted', 'kind', 'within', 'across', 'up', 'ambient'] as const).map(column);
  const points = known ? pointRows(set) : DEMO_POINTS.map((row) => [...row, null]);
  return {
    id: 'balance',
    name: 'Balance',
    answers: 'Which powers bring several points nearest to what each shall read?',
    start:
      'Meter each head alone at each point and type what the meter shows: 11 3, f/11+0.3, E or none. Then select a cell of the table and press Read the selected table, under Balance in the pane.',
    words: ['balance', 'points'],
    columns: [16, 11, 9, 8, 8, 8, 10, ...names.map(() => 14), 11],
    freezeRows: 2,
    landscape: true,
    blocks: [
      {
        kind: 'table',
        title: 'Points and heads',
        at: 'A4',
        id: TABLE,
        columns: [
          { id: 'Point', quantity: 'text', note: 'First what is known of each head, then a row a point.' },
          ...before,
          ...names.map((id): TemplateColumn => ({ id, quantity: 'words' })),
          column('measured'),
        ],
        rows: [...headRows(set), ...points],
      },
    ],
    charts: [],
    cautions: [
      "Flash heads hold a charge that can kill, even when off, and their lamps are hot: keep to the maker's instructions and local codes.",
    ],
  };
}
