/** What travels between the Excel library and Excel. */

/** How the library numbers what it asks for. */
export const PATH = { global: 1, property: 4, indexer: 5, reference: 6 };
export const ACTION = { instantiate: 1, query: 2, method: 3, set: 4, trace: 5 };

export interface Arguments {
  Arguments?: unknown[];
  ReferencedObjectPathIds?: number[];
}
export interface ObjectPath {
  ObjectPathType: number;
  Name: string;
  ParentObjectPathId?: number;
  ArgumentInfo?: Arguments;
}
export interface Action {
  Id: number;
  ActionType: number;
  Name: string;
  ObjectPathId: number;
  ArgumentInfo?: Arguments;
  QueryInfo?: { Select?: string[] };
}

/** One batch: what a `context.sync()` sends. */
export interface Batch {
  Actions: Action[];
  ObjectPaths: Record<string, ObjectPath>;
}
export interface Reply {
  /** Marks that were reached: the library takes up its listeners when it sees theirs. */
  TraceIds?: number[];
  Results: { ActionId: number; Value: unknown }[];
  Error?: { Code: string; Message: string; Location: string; ActionIndex: number; HttpStatusCode: number };
}

/** What Excel answers where it does not do as it is told. */
export class Refusal extends Error {
  readonly code: string;
  /** The member that refused, such as WorksheetCollection.add. */
  location = '';
  constructor(code: string, message: string) {
    super(message);
    this.code = code;
  }
}
