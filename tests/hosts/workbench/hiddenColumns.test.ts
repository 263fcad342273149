import { expect, it } from 'vitest';
import type { Grid } from '../../../src/hosts/workbench/grid/grid';
import { hiddenColumns } from '../../../src/hosts/workbench/sheets/hiddenColumns';
import { calculated } from '../../engine/book';

it('knows the columns that somebody has hidden, sheet by sheet', async () => {
  const { workbook, dispose } = await calculated({ Page: [['a', 'b', 'c', 'd']], Other: [['a']] });
  const api = { getActiveWorkbook: () => workbook } as unknown as Grid['api'];
  expect(hiddenColumns({ api }, 'Page')).toEqual([]);
  workbook.getSheetByName('Page')?.hideColumns(1, 2);
  expect(hiddenColumns({ api }, 'Page')).toEqual([1, 2]);
  expect(hiddenColumns({ api }, 'Other')).toEqual([]);
  dispose();
});
