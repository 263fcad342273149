import { filterByTables as filterIn } from '../../../engine/filter/filteredRows';
import type { Grid } from './grid';

/** Hidden rows of tables are filtered out, once a workbook has been opened. */
export const filterByTables = ({ univer }: Grid): void => filterIn(univer);
