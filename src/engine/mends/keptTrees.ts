/**
 * The library keeps the tree of each formula by its text, with what the names of the workbook stood for. A row above such a
 * name's cells gives the name other cells, but the formula its old tree. When a name changes, the trees are made anew.
 *
 * For @univerjs/engine-formula 0.25.1.
 */
import { DefinedNamesService, FORMULA_REF_TO_ARRAY_CACHE, FunctionService } from '@univerjs/engine-formula';

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
