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

/** The spreadsheet functions that the engine brings along, by family. */
export const NATIVE_FAMILIES = {
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
};

/** Their names. */
export const ENGINE_FUNCTIONS: readonly string[] = Object.values(NATIVE_FAMILIES).flatMap((family) =>
  family.map(([, name]) => String(name)),
);
