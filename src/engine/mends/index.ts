/**
 * What plain formulas get wrong in the engine, @univerjs/engine-formula 0.25.1, one rule to a file. Functions and operators
 * stand in the place of the engine's own by its option `formula.function`; where that does not reach, its insides are
 * changed as soon as this is imported.
 */
import './dependenciesAnew';
import './emptyResult';
import './filteredRows';
import './literals';
import './missingSheet';
import './noIndex';
import './readFormulasOnce';
import './spilled';
import './textCells';
import { AVERAGES } from './averages';
import { CHOICE } from './choose';
import { CONDITIONAL } from './conditional';
import { DATES } from './dates';
import { FIRST_TRUE } from './firstTrue';
import { FORMATS } from './formats';
import { INDIRECT } from './indirect';
import { LOGIC } from './logic';
import { LOOKUPS } from './lookups';
import type { Mended } from './nativeFunction';
import { OPERATORS } from './operators';
import { PARTS } from './chooseLines';
import { RATE } from './interestRate';
import { ROUNDING } from './rounding';
import { SAMPLES } from './textsInStatistics';
import { SCALARS } from './scalars';
import { SORTING } from './sorting';
import { SPREAD } from './deviation';
import { SWITCHING } from './switching';
import { TEXTS } from './texts';
import { TIME } from './clockTimes';

export const MENDED: readonly Mended[] = [
  ...OPERATORS,
  ...LOGIC,
  ...SWITCHING,
  ...FIRST_TRUE,
  ...CONDITIONAL,
  ...LOOKUPS,
  ...SORTING,
  ...CHOICE,
  ...TEXTS,
  ...FORMATS,
  ...DATES,
  ...ROUNDING,
  ...SCALARS,
  ...AVERAGES,
  ...SAMPLES,
  ...SPREAD,
  ...TIME,
  ...RATE,
  ...PARTS,
  ...INDIRECT,
];
