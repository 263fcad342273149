/**
 * The library keeps the tree of each formula by its text, with what the names of the workbook stood for. A row above such a
 * name's cells gives the name other cells, but the formula its old tree. When a name changes, the trees are made anew. When a
 * table does, the library makes those of the formulas that name it anew for each cell, and again each time that one is asked for
 * in that calculation, so that a new table costs as many readings as it has formulas, twice. Here they are forgotten once, as
 * the calculation begins.
 *
 * For @univerjs/engine-formula 0.25.1.
 */
import {
  DefinedNamesService,
  FORMULA_REF_TO_ARRAY_CACHE,
  FormulaCurrentConfigService,
  FunctionService,
  type IFormulaDatasetConfig,
} from '@univerjs/engine-formula';
import { replaceMethod } from './replaceMethod';

interface Kept {
  _hash(key: string): string;
}

/** It finds what it keeps of a long formula by a number of 32 bits, which two formulas may share: then one gives the other's answer. */
const kept = Object.getPrototypeOf(FORMULA_REF_TO_ARRAY_CACHE) as Kept;
if (typeof kept._hash !== 'function')
  throw new Error('The formula engine keeps formulas otherwise than it did: was its version changed?');
kept._hash = (key) => key;

/** Every key contains the empty text. The method needs nothing of the service that it belongs to. */
const { deleteFormulaAstCacheKey } = FunctionService.prototype;
const forget = (): void => deleteFormulaAstCacheKey.call({} as FunctionService, '');

const { prototype } = DefinedNamesService;
for (const method of [
  'registerDefinedNames',
  'registerDefinedName',
  'removeDefinedName',
  'removeUnitDefinedName',
] as const) {
  const change = prototype[method] as (...args: unknown[]) => void;
  prototype[method] = function (this: DefinedNamesService, ...args: unknown[]) {
    change.apply(this, args);
    forget();
  };
}

replaceMethod<[IFormulaDatasetConfig], void>(
  FormulaCurrentConfigService.prototype,
  'load',
  (original) =>
    function (config) {
      if (Object.keys(config.dirtySuperTableMap ?? {}).length > 0) forget();
      original.call(this, { ...config, dirtySuperTableMap: {} });
    },
);
