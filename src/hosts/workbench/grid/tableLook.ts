import {
  type IUniverSheetsTableConfig,
  UniverSheetsTablePlugin,
  UniverSheetsTableUIPlugin,
} from '@univerjs/preset-sheets-table';

export const PLAIN_TABLE = 'sweeptable-plain';

/** A table without stripes and colours of the grid's own: the sheet's theme has dressed its cells. */
const LOOK: IUniverSheetsTableConfig = {
  userThemes: [{ name: PLAIN_TABLE, style: {} }],
  defaultThemeIndex: 0,
};

/** The table plugins, plain, and without the handles that would insert cells into one table only. */
export const PLAIN_TABLES = {
  plugins: [
    [UniverSheetsTablePlugin, LOOK],
    [UniverSheetsTableUIPlugin, { hideAnchor: true }],
  ],
};
