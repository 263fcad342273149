import {
  functionArray,
  functionCompatibility,
  functionDatabase,
  functionDate,
  functionEngineering,
  functionFinancial,
  functionInformation,
  functionLogical,
  functionLookup,
  functionMath,
  functionStatistical,
  functionText,
  functionWeb,
} from '@univerjs/engine-formula';

/** The names of the spreadsheet functions that the engine brings along. */
export const NATIVE_FUNCTIONS: readonly string[] = [
  functionArray,
  functionCompatibility,
  functionDatabase,
  functionDate,
  functionEngineering,
  functionFinancial,
  functionInformation,
  functionLogical,
  functionLookup,
  functionMath,
  functionStatistical,
  functionText,
  functionWeb,
].flatMap((family) => family.map(([, name]) => String(name)));
