/**
 * The engine (0.25.1) keeps an index of the values of each column. It answers comparisons from the second time on, and
 * wrongly: an empty cell, "" and 0 are one in it, texts are numbers, errors and FALSE are dropped, and arrays on the way are
 * put into it as if they stood around A1. And each result of a formula is put there by a search through all values of its
 * column: ten thousand rows of four formulas take half a minute with it and a few seconds without. Nothing is put there any
 * more, and so nothing is found. The look-ups have an index of their own, in keys.ts.
 */
import { CELL_INVERTED_INDEX_CACHE as index } from '@univerjs/engine-formula';

for (const method of ['set', 'setContinueBuildingCache', 'canUseCache'] as const)
  if (typeof index[method] !== 'function')
    throw new Error(`The index of the formula engine has no ${method}: was its version changed?`);

index.set = () => {};
index.setContinueBuildingCache = () => {};
index.canUseCache = () => ({ rowsInCache: [], rowsNotInCache: [] });
