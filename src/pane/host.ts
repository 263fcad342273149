/** What became of a wish: done, in a sentence; or refused, with what was kept and what to do. */
export type Outcome = { readonly done: string } | { readonly refused: string };

/** One chart of the sheet in view, with the numbers that it shows now. */
export interface LiveChart {
  readonly type: 'line' | 'column';
  readonly title: string;
  readonly xTitle: string;
  readonly yTitle: string;
  /** Numbers for a line, names for columns. */
  readonly x: readonly (number | string)[];
  readonly series: readonly {
    readonly name: string;
    readonly values: readonly (number | null)[];
    readonly format: string;
  }[];
}

/** All that the pane asks of the spreadsheet it stands beside. A host that cannot do a thing leaves it out. */
export interface PaneHost {
  /** Lays a template as a new sheet and shows it. Never touches a sheet that is there. */
  readonly insertSheet?: (template: string, filled: boolean) => Promise<Outcome>;
  /** Puts a formula into the selected cell, if that is empty. */
  readonly putFormula?: (formula: string) => Promise<Outcome>;
  /** Has the spreadsheet look up all functions anew and calculate everything. */
  readonly recalculate?: () => Promise<Outcome>;
  /** Tells the charts of the sheet in view, now and whenever they change; gives back how to stop. */
  readonly watchCharts?: (tell: (charts: readonly LiveChart[]) => void) => () => void;
  /** Why something is left out, for a person: "Open this page from Excel to insert sheets." */
  readonly missing?: string;
}
