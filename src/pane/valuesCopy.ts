import { freeSheetName } from '../sheets/makePlan';

/** Letters of the old name that stay: a sheet's name has 31 at most, and " values (2)" has to fit behind them. */
const NAME_KEPT = 20;

/** What a copy of a sheet that holds values is called, in every host alike. */
export const copyName = (sheet: string, taken: readonly string[]): string =>
  freeSheetName(`${sheet.slice(0, NAME_KEPT).trimEnd()} values`, taken);
