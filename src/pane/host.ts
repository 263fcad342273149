import type { CellRows } from '../explain/explain';
import type { Join, Way } from '../sheets/links/findJoins';
import type { NamedSheet, SheetRead } from '../sheets/sheetRead';
import type { Template } from '../sheets/template';
import type { SheetAsRead } from '../set/sheetAsRead';
import type { Block, CellWrite } from './balance/block';

/** What became of a wish: done, in a sentence; or refused, with what was kept and what to do. */
export type Outcome = Done | { readonly refused: string };

export interface Done {
  readonly done: string;
  /** Makes it undone, where nobody has changed anything of it since. Left out where the spreadsheet's own undo is as good. */
  readonly takeBack?: () => Promise<Outcome>;
}

/** A cell whose formula is mended, or could be. */
export interface MendedCell {
  readonly sheet: string;
  readonly cell: string;
  readonly before: string;
  readonly after: string;
}

/** The outcome of a repair, with the cells that it speaks of. */
export type Mended =
  { readonly done: string; readonly cells: readonly MendedCell[] } | { readonly refused: string };

/** One way to join a sheet, with the columns that were chosen. */
export interface ChosenWay extends Way {
  readonly sheet: string;
}

/** The cell that is selected, as the spreadsheet has it now. */
export interface SelectedCell {
  /** As a person knows it: B7. */
  readonly address: string;
  /** Empty where the cell has none. */
  readonly formula: string;
  /** Its value or error as the cell shows it; empty for an empty cell. */
  readonly shown: string;
  /** The values of a reference, as it is written in the formula; undefined where they are not known. */
  readonly look: (reference: string) => CellRows | undefined;
}

/** What a view asks that reads a table of the sheet and writes into it. */
export interface TableHost {
  /** The table around the selected cells, or else the filled cells around them, as they stand. */
  readonly readBlock: () => Promise<Block | { readonly refused: string }>;
  /** The values behind references, as formulas write them; undefined for what the workbook does not have. */
  readonly look: (references: readonly string[]) => Promise<readonly (CellRows | undefined)[]>;
  /** Writes into a block, all or nothing, where its cells still are as they were read. */
  readonly writeCells: (block: Block, writes: readonly CellWrite[]) => Promise<Outcome>;
  /** Lays a sheet that was made for this workbook, and shows it. */
  readonly laySheet: (template: Template) => Promise<Outcome>;
}

/** Sheets that are read as they stand, and laid with what was made of them. */
export interface SheetHost {
  /** Of the sheets that are wanted for their tables the one in view, or else the first; undefined where none is. */
  readonly read: (
    isWanted: (sheet: Pick<SheetRead, 'tables'>) => boolean,
  ) => Promise<NamedSheet | undefined | { readonly refused: string }>;
  /** Lays a sheet with all that its template holds, and shows it. Never touches a sheet that is there. */
  readonly lay: (template: Template) => Promise<Outcome>;
}

/** A picture on its way to a sheet. */
export interface SheetPicture {
  /** The sheet that it was drawn from. */
  readonly of: SheetAsRead;
  /** What it shows, in words. */
  readonly said: string;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  /** Its pixels, for a spreadsheet that cannot draw it itself. */
  readonly png: () => Promise<Blob>;
}

/** What a view asks that draws what stands on the sheet. */
export interface PictureHost {
  /** The sheet in view as it stands. */
  readonly readSheet: () => Promise<SheetAsRead | { readonly refused: string }>;
  /** Puts a picture of the set on its sheet, at the cell that is selected or where it covers nothing, in the place of an earlier one. */
  readonly putPicture: (picture: SheetPicture) => Promise<Outcome>;
}

/** All that the pane asks of the spreadsheet it stands beside. A host that cannot do a thing leaves it out. */
export interface PaneHost {
  /** Lays a template as a new sheet and shows it. Never touches a sheet that is there. */
  readonly insertSheet?: (template: string, filled: boolean) => Promise<Outcome>;
  /** Lays the sheets of a whole job with the demo job in them, one looking up in the other, in one step, and shows the first. */
  readonly newJob?: () => Promise<Outcome>;
  /** Puts a formula into the selected cell, if that is empty. */
  readonly putFormula?: (formula: string) => Promise<Outcome>;
  /** Has the spreadsheet look up all functions anew and calculate everything. */
  readonly recalculate?: () => Promise<Outcome>;
  /** Looks through the workbook for formulas in which our functions lost their names. Changes nothing. */
  readonly findLost?: () => Promise<Mended>;
  /** Mends formulas that were found, each where it still stands; gives those that were mended. */
  readonly mendLost?: (cells: readonly MendedCell[]) => Promise<Mended>;
  /** Puts formulas back that were mended, each where nobody has changed it since. */
  readonly takeBack?: (cells: readonly MendedCell[]) => Promise<Outcome>;
  /** Looks for sheets that could look something up in each other and do not. Changes nothing. */
  readonly findJoins?: () => Promise<{ readonly joins: readonly Join[] } | { readonly refused: string }>;
  /** Writes what was chosen, where the cells still hold what they held when they were found. */
  readonly link?: (way: ChosenWay) => Promise<Outcome>;
  /** Adds a copy of the sheet in view with values in the place of formulas, for people who have no Sweeptable. */
  readonly copyValues?: () => Promise<Outcome>;
  /** What such a copy costs besides, in a sentence for those who think of making one. */
  readonly copyCosts?: string;
  /** Lays an estimate for another job, with the prices of the one that there is. Never touches a sheet that is there. */
  readonly newEstimate?: () => Promise<Outcome>;
  /** Makes a workbook for a client: the one sheet that clients read, as values, and nothing else. */
  readonly prepareClientPage?: () => Promise<Outcome>;
  /** Prints the same page, and nothing else. */
  readonly printClientPage?: () => Promise<Outcome>;
  /** Address of the page that explains everything, where there is one; support, privacy and licences stand beside it. */
  readonly help?: string;
  /** Tells the selected cell, now and whenever it is another or changes; nothing while there is not exactly one. Gives back how to stop. */
  readonly watchCell?: (tell: (cell: SelectedCell | undefined) => void) => () => void;
  /** Tells when another workbook takes the place of the one that the pane stands beside; gives back how to stop. */
  readonly watchWorkbook?: (changed: () => void) => () => void;
  /** Reads sheets whole, and lays what was made of them. */
  readonly sheets?: SheetHost;
  /** Reads and writes tables of the sheet. */
  readonly tables?: TableHost;
  /** Reads whole sheets and puts pictures on them. */
  readonly pictures?: PictureHost;
  /** Why something is left out, for a person: "Open this page from Excel to insert sheets." */
  readonly missing?: string;
}
