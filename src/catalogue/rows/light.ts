import { EVENNESS_SCALES, lightEvenness } from '../../exposure/light/lightEvenness';
import { lightMinus } from '../../exposure/light/lightMinus';
import { lightMinusRange, METER_STEP } from '../../exposure/light/lightMinusRange';
import { lightRatio, RATIO_BASES } from '../../exposure/light/lightRatio';
import { lightShare } from '../../exposure/light/lightShare';
import { lightSum } from '../../exposure/light/lightSum';
import { lightTargets } from '../../exposure/light/lightTargets';
import { lightMean, lightRepeat, lightSpread } from '../../exposure/light/repeats';
import { ABOVE_ZERO, NOT_NEGATIVE } from '../../exposure/core/range';
import { isFail, type Result } from '../../exposure/core/result';
import { lightUnmix } from '../../exposure/light/unmix/lightUnmix';
import { measurementPattern, PATTERN_HEADS } from '../../exposure/light/unmix/measurementPattern';
import { Q } from '../quantities';
import {
  choice,
  define,
  flag,
  gappedList,
  grid,
  list,
  maybeList,
  one,
  pool,
  type AnswerRows,
  withDefault,
} from '../types';

const above = { range: ABOVE_ZERO };
/** Named one by one, as some hosts fail over arguments that repeat. */
const moreReadings = [2, 3, 4, 5, 6, 7, 8, 9, 10].map((n) =>
  pool(`readings${n}`, 'More readings: a cell or a range', Q.aperture, { ...above, optional: true }),
);
const ONE_AT_A_TIME = 'Meter each light alone: where heads cannot be fired alone, switch the others off.';
const repeated = list('readings', 'Readings of the same light, at least one', Q.aperture, {
  ...above,
  exactTogether: true,
});
const AS_DECIMALS =
  'One number that is no mark makes every plain number of the list exact: a list read to decimals.';

/** A row a head: what it reads alone, and how far off that may be. */
function unmixed(pattern: readonly (readonly number[])[], readings: readonly number[]): Result<AnswerRows> {
  const heads = lightUnmix(pattern, readings);
  return isFail(heads) ? heads : heads.map(({ reading, plusMinus }) => [reading, plusMinus]);
}

export const lightRows = [
  define({
    id: 'LIGHTSUM',
    family: 'light',
    gives: 'Reading of all lights together.',
    args: [
      pool('readings', 'Reading of each light alone: a cell or a range', Q.aperture, above),
      ...moreReadings,
    ],
    result: Q.aperture,
    answers: 'one',
    formula: '√(N₁² + N₂² + …)',
    run: lightSum,
    sources: ['adding-light', 'navy-photography'],
    examples: [
      { cells: [8, 8], gives: 11.313708498984761 },
      { cells: [[16, 11, 8]], gives: 21.166010488516726 },
    ],
    caution: ONE_AT_A_TIME,
    words: ['add', 'combine', 'together', 'several heads'],
  }),
  define({
    id: 'LIGHTMINUS',
    family: 'light',
    gives: 'Reading that is left once a part of the light is taken away.',
    args: [
      one('total', 'Reading of all the light', Q.aperture, above),
      one('part', 'Reading of the part alone: ambient, or one head', Q.aperture, above),
    ],
    result: Q.aperture,
    answers: 'one',
    formula: '√(total² − part²)',
    run: lightMinus,
    sources: ['adding-light'],
    examples: [{ cells: ['f/11', 'f/8'], gives: 8 }],
    notes:
      'A part of as much as the total, or more, is #N/A. Where the two read nearly the same, a meter that shows tenths leaves nearly everything open: LIGHTMINUSRANGE says between what and what.',
    words: ['subtract', 'ambient', 'without'],
  }),
  define({
    id: 'LIGHTMINUSRANGE',
    family: 'light',
    gives: 'Least, likely and most of the reading that is left once a part of the light is taken away.',
    args: [
      one('total', 'Reading of all the light', Q.aperture, above),
      one('part', 'Reading of the part alone: ambient, or one head', Q.aperture, above),
      withDefault(
        'step',
        'Stops between two readings that the meter can show; none for exact readings',
        Q.stopsStep,
        METER_STEP,
        {
          range: NOT_NEGATIVE,
        },
      ),
    ],
    result: Q.aperture,
    answers: ['least', 'likely', 'most'],
    formula:
      'least: √(total² · 2^(−step / 2) − part² · 2^(step / 2)); likely: √(total² − part²); most: √(total² · 2^(step / 2) − part² · 2^(−step / 2))',
    run: lightMinusRange,
    sources: ['adding-light'],
    examples: [
      { cells: ['5 exact', '4 exact', 'none'], gives: [3, 3, 3] },
      { cells: ['f/16+0.3', 'f/16+0.2'], gives: [0, 4.59414746575005, 6.499056527247843] },
    ],
    notes:
      'Each reading may be off by half a step either way. 0 is no light, not f/0, and feeds nothing. #N/A stands only where even the most is none. To know better, meter the part nearer, or what is left by itself.',
    words: ['subtract', 'ambient', 'without', 'uncertain', 'plus or minus'],
  }),
  define({
    id: 'LIGHTSHARE',
    family: 'light',
    gives: "Each light's share of the whole exposure.",
    args: [list('readings', 'Reading of each light alone', Q.aperture, above)],
    result: Q.share,
    answers: 'list',
    formula: 'N² / (N₁² + N₂² + …)',
    run: lightShare,
    sources: ['adding-light'],
    examples: [{ cells: [[16, 11, 8]], gives: [4 / 7, 2 / 7, 1 / 7] }],
    caution: ONE_AT_A_TIME,
    words: ['percentage', 'contribution'],
  }),
  define({
    id: 'LIGHTRATIO',
    family: 'light',
    gives: 'The x of an x:1 lighting ratio.',
    args: [
      one('key', 'Reading of the key light alone', Q.aperture, above),
      one('fill', 'Reading of the fill light alone', Q.aperture, above),
      choice(
        'basis',
        'sum: key and fill together against the fill; each: one reading against the other',
        RATIO_BASES,
      ),
    ],
    result: Q.ratio,
    answers: 'one',
    formula: 'sum: (key² + fill²) / fill²; each: key² / fill²',
    run: lightRatio,
    sources: ['army-lighting', 'common-practice'],
    examples: [
      { cells: [11, 8], gives: 3, source: 'army-lighting' },
      { cells: [11, 5.6, 'each'], gives: 4 },
    ],
    notes:
      'Two conventions are in use. sum, the default, is for key and fill metered alone, the fill reaching both sides. each is also for readings of the lit and the shadow side with all lights on.',
    words: ['contrast', 'key', 'fill'],
  }),
  define({
    id: 'LIGHTTARGETS',
    family: 'light',
    gives: 'What each light must read alone so that together they read the total.',
    args: [
      one('total', 'Reading wanted of all together', Q.aperture, above),
      gappedList(
        'stopsFromKey',
        'Stops of each light from the key light: 0 for the key, -1 for a stop less; an empty text for no light, or with readings for the distance it has',
        Q.stops,
        { emptyText: 'gap' },
      ),
      maybeList(
        'readings',
        'Present reading of each light alone: where its stops are an empty text it keeps its distance from the first light with 0',
        Q.aperture,
        above,
      ),
    ],
    result: Q.aperture,
    answers: 'list',
    formula: 'total · √(2^s / (2^s₁ + 2^s₂ + …))',
    run: lightTargets,
    sources: ['adding-light'],
    examples: [
      { cells: [11, [0, 0]], gives: [8, 8] },
      { cells: [11, [0, '', 0]], gives: [8, '', 8] },
      { cells: ['10 exact', [0, ''], [8, 8]], gives: [Math.SQRT2 * 5, Math.SQRT2 * 5] },
    ],
    notes:
      'An empty cell is 0 stops, an empty text none: in a table pass a helper column of =IF([@Wanted]="","",[@Wanted]). With readings a 0 must stand in the row of the key, which needs its reading; the answer goes to POPSPLAN as its targets.',
    words: ['balance', 'plan the set', 'fill'],
  }),
  define({
    id: 'LIGHTUNMIX',
    family: 'light',
    gives: 'What each head reads alone, from readings of several heads at once.',
    args: [
      grid(
        'pattern',
        'A row a measurement, a column a head: 1 lit, 0 off, or the share of its power; ones for ambient light',
        Q.lit,
        { range: NOT_NEGATIVE },
      ),
      list('readings', 'Reading of each measurement', Q.aperture, above),
    ],
    result: Q.aperture,
    answers: {
      table: [
        { name: 'reading', quantity: Q.aperture },
        { name: 'plus or minus', quantity: Q.stops },
      ],
      each: 'one a head',
    },
    formula: 'readings √x with the smallest sum of ((Σ pattern · x − N²) / N²)², x ≥ 0',
    run: unmixed,
    sources: ['adding-light', 'least-squares', 'rounded-readings'],
    examples: [
      {
        cells: [
          [
            [1, 1],
            [1, 0],
          ],
          ['10 exact', 8],
        ],
        gives: [
          [8, 0.05],
          [6, 0.186599679338],
        ],
      },
    ],
    notes:
      'For heads that cannot be fired one at a time, on one pack or one trigger. LIGHTPATTERN proposes what to light. Look at the second column: ± is for readings to a tenth of a stop, and the head lies within it 19 times out of 20 or more; where no rounding explains the readings, it is #N/A. A measurement without a reading is left out.',
    words: ['separate', 'pack', 'several heads', 'unknown', 'solve'],
  }),
  define({
    id: 'LIGHTPATTERN',
    family: 'light',
    gives: 'Which heads to light in each measurement, so that LIGHTUNMIX can tell them apart.',
    args: [
      one('heads', 'Number of heads', Q.headCount, { range: PATTERN_HEADS }),
      flag('withAmbient', 'TRUE adds the ambient light: a column of ones, and a measurement without flash'),
    ],
    result: Q.lit,
    answers: {
      table: [{ name: 'head', quantity: Q.lit }],
      each: 'one a measurement: 1 lit, 0 off',
      endless: true,
    },
    formula: 'groups of three heads: the first with each of the others, then the others without it',
    run: measurementPattern,
    sources: ['every-pattern'],
    examples: [
      {
        cells: [3],
        gives: [
          [1, 1, 0],
          [1, 0, 1],
          [0, 1, 1],
        ],
      },
    ],
    notes:
      'As many measurements as heads: fewer never suffice. From three heads on at least two are lit in each. The fewer are lit, the less light of others is mistaken for that of the one sought.',
    words: ['measure', 'fewest', 'pack', 'several heads'],
  }),
  define({
    id: 'LIGHTSPREAD',
    family: 'light',
    gives: 'Range of repeated readings, in stops.',
    args: [repeated],
    result: Q.stops,
    answers: 'one',
    formula: '2 · log2(highest / lowest)',
    run: lightSpread,
    sources: ['geometric-mean'],
    examples: [{ cells: [[8, 11, 8]], gives: 1 }],
    notes: AS_DECIMALS,
    words: ['repeatability', 'consistency', 'variation'],
  }),
  define({
    id: 'LIGHTMEAN',
    family: 'light',
    gives: 'Mean of repeated readings, taken in stops, as a reading.',
    args: [repeated],
    result: Q.aperture,
    answers: 'one',
    formula: '2^(mean of log2 N)',
    run: lightMean,
    sources: ['geometric-mean'],
    examples: [{ cells: [[8, 16]], gives: 11.313708498984761 }],
    notes: AS_DECIMALS,
    words: ['average', 'repeatability'],
  }),
  define({
    id: 'LIGHTREPEAT',
    family: 'light',
    gives: 'Repeatability: sample standard deviation of repeated readings, in stops.',
    args: [repeated],
    result: Q.stops,
    answers: 'one',
    formula: 'standard deviation (n − 1) of 2 · log2 N',
    run: lightRepeat,
    sources: ['geometric-mean'],
    examples: [{ cells: [[8, 8, 11]], gives: 0.57735026919 }],
    notes: `${AS_DECIMALS} One reading has no deviation (#N/A).`,
    words: ['standard deviation', 'consistency', 'pop to pop'],
  }),
  define({
    id: 'LIGHTEVENNESS',
    family: 'light',
    gives: 'Unevenness of the light over a flat original, in percent.',
    args: [
      list(
        'values',
        'Readings over the field, at least one',
        { by: 'scale', of: { aperture: Q.evenReading, lux: Q.lux, raw: Q.raw } },
        above,
      ),
      choice('scale', 'f-numbers, lux, or raw values of a linear file', EVENNESS_SCALES),
    ],
    result: Q.percent,
    answers: 'one',
    formula: '100 · (most − least) / most of the light; the light goes with the square of an f-number',
    run: lightEvenness,
    sources: ['evenness-formula', 'evenness'],
    examples: [
      { cells: [[100, 95, 98], 'lux'], gives: 5 },
      { cells: [[8, 11]], gives: 50 },
    ],
    notes:
      'Published limits are 8, 5, 3 and 1 %, by how good a copy has to be. A meter read to a tenth of a stop steps by 6.7 %: it cannot show a limit of 5 %. Use lux or raw values for that.',
    words: ['copy work', 'uniformity', 'flat art'],
  }),
];
