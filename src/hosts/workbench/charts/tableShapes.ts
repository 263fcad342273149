import type { IRange } from '@univerjs/core';
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { TableShape } from '../../../book/chart';
import { areaOfGridRange } from '../../../engine/gridRange';

interface OfGrid {
  readonly name: string;
  readonly range: IRange;
  readonly columns: readonly { readonly displayName: string }[];
}

/** What a chart has to know of a table of the grid. */
export const tableShape = ({ name, range, columns }: OfGrid): TableShape => ({
  name,
  area: areaOfGridRange(range),
  columns: columns.map(({ displayName }) => ({ name: displayName })),
});

export const tableShapes = (sheet: FWorksheet): readonly TableShape[] =>
  sheet.getSubTableInfos().map(tableShape);
