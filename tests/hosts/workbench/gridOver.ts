import type { Injector } from '@univerjs/core';
import type { Grid } from '../../../src/hosts/workbench/grid/grid';
import type { calculated } from '../../engine/book';

type Workbook = Awaited<ReturnType<typeof calculated>>['workbook'];

/** A workbook without a page, as the workbench's own code sees it, and what the library keeps behind it. */
export function gridOver(workbook: Workbook): { grid: Grid; injector: Injector } {
  const { _injector: injector } = workbook as unknown as { readonly _injector: Injector };
  const univer = { __getInjector: () => injector };
  return { grid: { univer, api: { getActiveWorkbook: () => workbook } } as unknown as Grid, injector };
}
