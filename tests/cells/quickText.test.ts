import { assert, boolean, constantFrom, nat, oneof, property, stringMatching, tuple } from 'fast-check';
import { describe, expect, test } from 'vitest';
import { trials } from '../full';
import { Q, type Quantity } from '../../src/catalogue/quantities';
import { bareOf } from '../../src/cells/bareNumber';
import { commonText } from '../../src/cells/quickText';
import { readingOf, valueOf } from '../../src/cells/quantityReader';

const quantities = Object.entries(Q) as [string, Quantity][];
const units = [...new Set(quantities.flatMap(([, { units: own }]) => Object.keys(own ?? {})))];

/** Small ones are drawn often, as many quantities are believed within narrow limits alone. */
const whole = oneof(nat({ max: 99_999 }), nat({ max: 2000 }), nat({ max: 2 })).map(String);
const decimal = tuple(whole, constantFrom('.', '.', '.', ',', ''), stringMatching(/^\d{0,4}$/));
const figure = oneof(
  { weight: 4, arbitrary: whole },
  { weight: 4, arbitrary: decimal.map((parts) => parts.join('')) },
  { weight: 1, arbitrary: stringMatching(/^\d{14,20}(?:\.\d{1,5})?$/) },
  { weight: 1, arbitrary: constantFrom('0', '00', '0.0', '007', '.5', '5.', '1e3', '11³', '½') },
);
const fraction = tuple(figure, figure).map(([over, under]) => `${over}/${under}`);
const ahead = constantFrom(
  '',
  '',
  '',
  'f/',
  'F/',
  'f',
  'f ',
  'ISO ',
  'iso',
  'Iso  ',
  'nd',
  '-',
  '+',
  ' ',
  'ƒ/',
);
const between = constantFrom('', '', ' ', ' ', '  ', '\u00a0', '+', '-', ' +', ' -', '−', ':', '/');
const behind = oneof(
  constantFrom(...units, ...units.map((unit) => unit.toUpperCase())),
  constantFrom(
    '',
    '',
    'exact',
    'half',
    'stop',
    'stops',
    '%',
    'x',
    'parsecs',
    ' ',
    's +0.3',
    '\' 6"',
    '\u212a',
  ),
  figure,
  fraction,
);
/** What is typed into a cell of a quantity on most days. */
const plainText = ({ units: own, grammar }: Quantity) =>
  tuple(
    constantFrom('', grammar === 'aperture' ? 'f/' : ''),
    oneof(
      whole,
      tuple(whole, constantFrom('.', ','), stringMatching(/^\d{1,2}$/)).map((parts) => parts.join('')),
    ),
    constantFrom('', ...Object.keys(own ?? {}).flatMap((unit) => [unit, ` ${unit}`])),
  ).map((parts) => parts.join(''));
/** Many of these are common forms, where next to none of all that could be typed would be. */
const likelyText = tuple(
  constantFrom('', '', 'f/', 'F/', 'ISO '),
  oneof(figure, fraction),
  oneof(
    constantFrom('', ...units.flatMap((unit) => [unit, ` ${unit}`])),
    tuple(constantFrom('+', '-', ' +', ' -', ' '), oneof(figure, fraction)).map((parts) => parts.join('')),
  ),
).map((parts) => parts.join(''));
/** Whatever people may type, and much that nobody would. */
const anyText = tuple(ahead, oneof(figure, fraction), between, behind, constantFrom('', '', '', ' ')).map(
  (parts) => parts.join(''),
);

describe('common forms are read as the grammar reads them', () => {
  test.each(quantities)('%s', (_, quantity) => {
    let met = 0;
    assert(
      property(oneof(plainText(quantity), likelyText, anyText), boolean(), (text, exact) => {
        const common = commonText(text, quantity, bareOf(quantity, exact, true));
        if (Number.isNaN(common)) return;
        met++;
        expect(common).toBe(valueOf(readingOf(text, quantity, 'it', exact)));
      }),
      trials(402, 1500),
    );
    expect(met, 'common forms among them').toBeGreaterThan(0);
  });
});

/** Forms that the grammar alone reads would pass the property above as well. */
test.each([
  ['aperture', '11', 2 ** 3.5],
  ['aperture', 'f/11', 2 ** 3.5],
  ['aperture', 'F/11+0.5', 2 ** 3.75],
  ['aperture', 'f/11 +0.5', 2 ** 3.75],
  ['apertureAsTyped', 'f/11', 11],
  ['aperture', 'f/16 -0.5', 2 ** 3.75],
  ['shutterTime', '1/60', 1 / 64],
  ['shutterTime', '1/125 s', 1 / 128],
  ['duration', '4 ms', 0.004],
  ['duration', '4 MS', 0.004],
  ['energy', '400Ws', 400],
  ['energy', '1.5 kJ', 1500],
  ['distance', '80 cm', 0.8],
] as const)('%s: %s is a common form', (key, text, value) =>
  expect(commonText(text, Q[key], bareOf(Q[key], false, true))).toBeCloseTo(value, 12),
);

/** What is no such quantity, or is refused, is left to the grammar. */
test.each([
  ['apertureFigure', 'f/11+0.3'],
  ['aperture', '11+0.3'],
  ['shutterTime', '1.0/60'],
  ['shutterTime', '1/1'],
  ['energy', '1.200 Ws'],
  ['duration', '4 Ms'],
  ['duration', '4 parsecs'],
] as const)('%s: %s is no common form', (key, text) =>
  expect(commonText(text, Q[key], bareOf(Q[key], false, true))).toBeNaN(),
);
