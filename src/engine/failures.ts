import {
  ErrorValueObject,
  FormulaRuntimeService,
  type IFormulaRuntimeService,
} from '@univerjs/engine-formula';
import type { ArrayValueObject, ErrorType } from '@univerjs/engine-formula';

interface Place {
  readonly unitId: string;
  readonly sheetId: string;
  /** Counted from 0. */
  readonly row: number;
  readonly column: number;
}

/** A cell that shows an error of ours, and the sentence that explains it. */
export interface Failure extends Place {
  /** The function that refused, as typed: SWEEP.STOPDIFF. */
  readonly name: string;
  readonly code: string;
  readonly message: string;
}

/** A cell that had a failure and has it no longer. */
export interface Cleared extends Place {
  readonly cleared: true;
}

/**
 * What the engine has to tell about one cell: it replaces whatever was told about that cell before. Only changes are
 * told, each once. A cell that is emptied or typed over without being calculated tells nothing, so who shows a
 * failure makes sure that the cell still shows its code.
 */
export type FailureReport = Failure | Cleared;

type Report = (report: FailureReport) => void;

/** Who hears what an engine itself refuses. */
const hearers = new WeakMap<FormulaRuntimeService, Report>();
export const hear = (engine: IFormulaRuntimeService, report: Report): void => {
  hearers.set(engine as FormulaRuntimeService, report);
};

/** Who hears it in a thread whose engine nobody has in hand. */
let anyone: Report | undefined;
export const hearHere = (report: Report): void => {
  anyone = report;
};

/**
 * The error value of a refusal. It travels through a formula like any error (=1+SWEEP.…), so that a formula is judged
 * by what reaches its cell: IFERROR takes a refusal away, and a refused cell within a spill is found in its place.
 */
export class Refusal extends ErrorValueObject {
  readonly functionName: string;
  readonly report: Report | undefined;

  /** @param report - left out where the engine itself refuses: then whoever hears that engine is told. */
  constructor(code: ErrorType, message: string, functionName: string, report?: Report) {
    super(code, message);
    this.functionName = functionName;
    this.report = report;
  }
}

interface Found {
  readonly place: Place;
  readonly refusal: Refusal;
}
/** By formula cell, what it was found to have when it was last calculated. Each engine has its own. */
const toldBy = new WeakMap<FormulaRuntimeService, Map<string, Found[]>>();

function found(value: unknown, origin: Place): Found[] {
  if (value instanceof Refusal) return [{ place: origin, refusal: value }];
  const array = value as ArrayValueObject;
  if (!array.isValueObject() || !array.isArray()) return [];
  return array
    .getArrayValue()
    .flatMap((row, i) =>
      row.flatMap((member, j) =>
        member instanceof Refusal
          ? [{ place: { ...origin, row: origin.row + i, column: origin.column + j }, refusal: member }]
          : [],
      ),
    );
}

const key = ({ unitId, sheetId, row, column }: Place) => `${unitId}!${sheetId}!${row},${column}`;
const sentence = ({ refusal }: Found) =>
  `${refusal.functionName} ${refusal.getErrorType()} ${refusal.getErrorContent()}`;

/** The engine hands every result of a formula to this method, with the cell it belongs to. */
const { setRuntimeData } = FormulaRuntimeService.prototype;
FormulaRuntimeService.prototype.setRuntimeData = function (value) {
  setRuntimeData.call(this, value);
  const origin: Place = {
    unitId: this.currentUnitId,
    sheetId: this.currentSubUnitId,
    row: this.currentRow,
    column: this.currentColumn,
  };
  let told = toldBy.get(this);
  if (!told) toldBy.set(this, (told = new Map()));
  const before = told.get(key(origin)) ?? [];
  const now = found(value, origin);
  if (before.length === 0 && now.length === 0) return;

  const reportOf = ({ report }: Refusal) => report ?? hearers.get(this) ?? anyone;
  const stillThere = new Map(now.map((each) => [key(each.place), each]));
  for (const { place, refusal } of before)
    if (!stillThere.has(key(place))) reportOf(refusal)?.({ ...place, cleared: true });
  const known = new Map(before.map((each) => [key(each.place), sentence(each)]));
  for (const each of now) {
    if (known.get(key(each.place)) === sentence(each)) continue;
    const { place, refusal } = each;
    reportOf(refusal)?.({
      ...place,
      name: refusal.functionName,
      code: refusal.getErrorType(),
      message: refusal.getErrorContent(),
    });
  }
  if (now.length > 0) told.set(key(origin), now);
  else told.delete(key(origin));
};
