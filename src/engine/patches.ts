/**
 * Mends seven faults of @univerjs/engine-formula 0.25.1, beside those of plain formulas, which are in mends. Import it once
 * in each thread that calculates, before anything is calculated. It reaches into the engine's insides: the version is
 * pinned, and tests/engine holds each fault and its mending.
 */
import {
  ArrayValueObject,
  AstTreeBuilder,
  type BaseValueObject,
  BaseReferenceObject,
  ErrorType,
  ErrorValueObject,
  Interpreter,
  LexerNode,
  RangeReferenceObject,
  ReferenceNodeFactory,
  StringValueObject,
  SuffixNodeFactory,
  ValueObjectFactory,
} from '@univerjs/engine-formula';
import { CellValueType } from '@univerjs/core';
import './circles';
import './mends/countEffort';
import './mends/keptTrees';
import './mends/quotes';
import './mends/reading/lexer';
import { TooMuch } from './limits';
import { Refusal } from './failures';
import { isCellError } from '../formula/errors';
import { type Constant, lex, type TokenOf } from '../formula/lex';
import { at } from '../exposure/core/at';
import { remark } from './tellTrouble';

/**
 * A native function that throws ends the whole calculation, and in Node the process: =LOOKUP(2,A1:A5,1) does. Its own
 * cell gets #VALUE! instead, and the others their answers. What costs too much ends all of its formula: a LAMBDA is calculated
 * within one, as often as it is called.
 */
const { execute, executeAsync } = Interpreter.prototype;
let depth = 0;
const threw = (reason: unknown): ErrorValueObject => {
  if (reason instanceof TooMuch) {
    if (depth > 0) throw reason;
    return new Refusal(ErrorType.VALUE, reason.message, 'Formula');
  }
  remark('A formula could not be calculated:', reason);
  return ErrorValueObject.create(ErrorType.VALUE);
};
Interpreter.prototype.execute = function (node) {
  depth++;
  try {
    const value = execute.call(this, node);
    depth--;
    return value;
  } catch (reason) {
    depth--;
    return threw(reason);
  }
};
Interpreter.prototype.executeAsync = async function (node) {
  try {
    return await executeAsync.call(this, node);
  } catch (reason) {
    return threw(reason);
  }
};

/** The same for a formula that the parser throws at: its cell gets #NAME?. */
const { parse } = AstTreeBuilder.prototype;
AstTreeBuilder.prototype.parse = function (lexerNode) {
  try {
    return parse.call(this, lexerNode);
  } catch (reason) {
    remark('A formula could not be read:', reason);
    const unknown = new LexerNode();
    unknown.setToken('UNREADABLE');
    return parse.call(this, unknown);
  }
};

type Rectangle = { startRow: number; endRow: number; startColumn: number; endColumn: number };
type Spills = Record<string, Record<string, Record<number, Record<number, Rectangle>>>> | undefined;
interface CellReference {
  isReferenceObject(): boolean;
  isCell(): boolean;
  getRangePosition(): Rectangle;
  getUnitId(): string;
  getSheetId(): string;
  readonly _runtimeArrayFormulaRange: Spills;
  readonly _arrayFormulaRange: Spills;
}

/** The range that the formula in a cell has spilled over, in this pass or the last one. */
function spillRange(cell: CellReference) {
  if (!cell.isReferenceObject() || !cell.isCell()) return ErrorValueObject.create(ErrorType.REF);
  const { startRow, startColumn } = cell.getRangePosition();
  const [unitId, sheetId] = [cell.getUnitId(), cell.getSheetId()];
  const spillIn = (spills: Spills) => spills?.[unitId]?.[sheetId]?.[startRow]?.[startColumn];
  const range = spillIn(cell._runtimeArrayFormulaRange) ?? spillIn(cell._arrayFormulaRange);
  if (!range) return ErrorValueObject.create(ErrorType.REF);
  const reference = new RangeReferenceObject({ ...range }, sheetId, unitId);
  return Object.assign(reference, cell, {
    _token: '',
    _rangeData: { ...range },
    _refOffsetX: 0,
    _refOffsetY: 0,
  });
}

/** Spill references (A1#) are read, but left unfinished in the engine: they give #VALUE!. */
const { checkAndCreateNodeType } = SuffixNodeFactory.prototype;
SuffixNodeFactory.prototype.checkAndCreateNodeType = function (param) {
  const node = checkAndCreateNodeType.call(this, param);
  if (node?.getToken() === '#') Object.assign(node, { _handlerPound: spillRange });
  return node;
};

/** Every value of a formula passes here: only a text and a list are read. */
function textOrList(raw: string): TokenOf<'value' | 'list'> | undefined {
  if (!/^\s*["{]/.test(raw)) return undefined;
  const [token, more] = lex(raw.trim());
  if (more || (token?.kind !== 'value' && token?.kind !== 'list')) return undefined;
  return token;
}

const valueOf = (value: Constant): BaseValueObject => {
  if (typeof value === 'string') return StringValueObject.create(value);
  return createValue(isCellError(value) ? value.error : String(value).toUpperCase());
};

/**
 * A text in quotes is a text. The engine makes a date or a time of one that looks like it, so that =IF(TRUE,"1/4","")
 * gives a date and no lookup finds "1:2"; and it cuts the texts of an array constant at their commas, {"f/5,6";8}, and takes a
 * number spelt otherwise than it would itself for a text: {.5;1}.
 */
const createValue = ValueObjectFactory.create.bind(ValueObjectFactory);
ValueObjectFactory.create = (raw, ...rest) => {
  if (typeof raw !== 'string') return createValue(raw, ...rest);
  const read = textOrList(raw);
  if (!read) return createValue(raw, ...rest);
  if (read.kind === 'value') return valueOf(read.value);
  return ArrayValueObject.create({
    calculateValueList: read.rows.map((row) => row.map(valueOf)),
    rowCount: read.rows.length,
    columnCount: Math.max(...read.rows.map((row) => row.length)),
    unitId: '',
    sheetId: '',
    row: -1,
    column: -1,
  });
};

/**
 * A text of no signs that a formula gives is a text: ="" is not blank. The engine knows it for a formula's by the formula beside
 * it, which stands in the sheet but not with what has just been calculated or spilled, and takes it there for an empty cell. One
 * that stands in a cell is a text as well, as a person types it by ' alone and a file keeps it; but a cell of texts that a person
 * empties holds one too, by another type, and is empty.
 */
const { getCellData } = BaseReferenceObject.prototype;
BaseReferenceObject.prototype.getCellData = function (row, column) {
  const cell = getCellData.call(this, row, column);
  if (cell?.v !== '') return cell;
  const isInSheet = cell === this.getCurrentActiveSheetData()?.cellData.getValue(row, column);
  return isInSheet && cell.t !== CellValueType.FORCE_STRING ? cell : { ...cell, f: '=""' };
};

interface TableReferences {
  _checkTokenIsTableReference(token: string): boolean;
  _getTableMap(): ReadonlyMap<string, unknown> | undefined;
}

/**
 * The engine takes no name with an underscore or a dot for a table: =SUM(Lights_2[Light]) gives #NAME?. What stands
 * before the bracket is a table if there is a table of that name.
 */
const references = ReferenceNodeFactory.prototype as unknown as TableReferences;
const { _checkTokenIsTableReference: isTable } = references;
references._checkTokenIsTableReference = function (token) {
  return isTable.call(this, token) || this._getTableMap()?.has(at(token.split('[', 1), 0)) === true;
};

/**
 * What INDEX or OFFSET finds in a table of another sheet is read on the sheet of the formula: a table's reference knows its
 * sheet by id alone, and the engine looks the sheet up by its name, which is empty.
 */
const { setForcedSheetId } = BaseReferenceObject.prototype;
BaseReferenceObject.prototype.setForcedSheetId = function (idsByName) {
  if (this.getForcedSheetName() !== '') setForcedSheetId.call(this, idsByName);
};
