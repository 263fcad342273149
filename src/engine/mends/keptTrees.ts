/**
 * The library keeps the tree of each formula by its text, with what the names and tables of the workbook stood for. A row above
 * a name's cells gives the name other cells, but the formula its old tree; a table that is taken away leaves the trees in which it
 * was one. When a name or a table changes, the trees are made anew. Of a table that comes in, or is another, the library knows
 * as much, but makes the trees of the formulas that name it anew for each cell and each time that one is asked for in that
 * calculation: a new table would cost as many readings as it has formulas, twice.
 *
 * For @univerjs/engine-formula 0.25.1.
 */
import {
  DefinedNamesService,
  FORMULA_REF_TO_ARRAY_CACHE,
  FormulaCurrentConfigService,
  FunctionService,
  type IFormulaDatasetConfig,
  SuperTableService,
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

/** What makes names and tables others. */
const CHANGES: readonly (readonly [service: object, methods: readonly string[]])[] = [
  [
    DefinedNamesService.prototype,
    ['registerDefinedNames', 'registerDefinedName', 'removeDefinedName', 'removeUnitDefinedName'],
  ],
  [SuperTableService.prototype, ['registerTable', 'remove']],
];
for (const [service, methods] of CHANGES)
  for (const method of methods)
    replaceMethod(
      service,
      method,
      (change) =>
        function (...args) {
          change.apply(this, args);
          forget();
        },
    );

replaceMethod<[IFormulaDatasetConfig], void>(
  FormulaCurrentConfigService.prototype,
  'load',
  (original) =>
    function (config) {
      original.call(this, { ...config, dirtySuperTableMap: {} });
    },
);
