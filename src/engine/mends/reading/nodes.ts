import {
  ArrayValueObject,
  AstRootNodeFactory,
  type BaseReferenceObject,
  type BaseValueObject,
  BooleanValueObject,
  ErrorType,
  ErrorValueObject,
  LexerNode,
  NumberValueObject,
  PrefixNodeFactory,
  RangeReferenceObject,
  StringValueObject,
} from '@univerjs/engine-formula';
import { isCellError } from '../../../formula/errors';
import type { Constant } from '../../../formula/lex';

type Value = BaseValueObject | BaseReferenceObject;

/** A node of the engine's tree, as far as ours go. Its children are calculated before it. */
export interface TreeNode {
  getChildren(): TreeNode[];
  getValue(): Value | null | undefined;
  setValue(value: Value): void;
  execute(): void;
}

/**
 * A node that calculates as we say. The library makes its nodes by factories, by what a piece of the formula is called; a
 * piece with the name of the root becomes a node that only passes on what stands below it, and that one calculates by us.
 */
export class OwnNode extends LexerNode {
  made: TreeNode | undefined;
  readonly calculate: (node: TreeNode) => Value;

  readonly sort: PropertyDescriptor | undefined;

  constructor(calculate: (node: TreeNode) => Value, sort?: PropertyDescriptor) {
    super();
    this.calculate = calculate;
    this.sort = sort;
  }
}

const { checkAndCreateNodeType } = AstRootNodeFactory.prototype;
AstRootNodeFactory.prototype.checkAndCreateNodeType = function (piece) {
  const made = checkAndCreateNodeType.call(this, piece);
  if (!made || !(piece instanceof OwnNode)) return made;
  const node = made as unknown as TreeNode;
  node.execute = () => node.setValue(piece.calculate(node));
  if (piece.sort) Object.defineProperty(node, 'nodeType', piece.sort);
  piece.made = node;
  return made;
};

export function valueObject(value: Constant): BaseValueObject {
  if (typeof value === 'string') return StringValueObject.create(value);
  if (typeof value === 'boolean') return BooleanValueObject.create(value);
  if (isCellError(value)) return ErrorValueObject.create(value.error as ErrorType);
  return NumberValueObject.create(value);
}

/** Each time anew: functions such as SORT change what they are given. */
export const constant = (value: Constant): OwnNode => new OwnNode(() => valueObject(value));

export const list = (rows: readonly (readonly Constant[])[]): OwnNode =>
  new OwnNode(() =>
    ArrayValueObject.create({
      calculateValueList: rows.map((row) => row.map(valueObject)),
      rowCount: rows.length,
      columnCount: Math.max(...rows.map((row) => row.length)),
      unitId: '',
      sheetId: '',
      row: -1,
      column: -1,
    }),
  );

const valueOf = (node: TreeNode | undefined): Value =>
  node?.getValue() ?? ErrorValueObject.create(ErrorType.VALUE);

/** LET: its children are the values that have names, in their order, and last what is made of them. */
export const letNode = (): OwnNode => new OwnNode((node) => valueOf(node.getChildren().at(-1)));

/** A name that LET gives to a value: it was calculated before, except where the engine looks ahead for references. */
export const nameOf = (scope: OwnNode, index: number): OwnNode =>
  new OwnNode(() => {
    const named = scope.made?.getChildren()[index];
    if (named && !named.getValue()) calculateAll(named);
    return valueOf(named);
  });

function calculateAll(node: TreeNode): void {
  for (const child of node.getChildren()) calculateAll(child);
  node.execute();
}

const isReference = (value: Value): value is BaseReferenceObject => value.isReferenceObject();

/** What the library takes for a union. It asks such a node beforehand which cells it names, and those count as read. */
const UNION = { value: 10 };

/** Two references as one, by what becomes of their edges; none where they have nothing in common. */
const between = (join: (a: Rectangle, b: Rectangle) => Rectangle | undefined): OwnNode =>
  new OwnNode((node) => {
    const values = node.getChildren().map(valueOf);
    const [left, right] = values;
    const wrong = values.find((value) => value.isError());
    if (wrong) return wrong;
    if (!left || !right || !isReference(left) || !isReference(right))
      return ErrorValueObject.create(ErrorType.REF);
    const isApart = left.getSheetId() !== right.getSheetId() || left.getUnitId() !== right.getUnitId();
    const range = isApart ? undefined : join(left.getRangePosition(), right.getRangePosition());
    return range ? referenceTo(range, left) : ErrorValueObject.create(ErrorType.NULL);
  }, UNION);

/** The cells that two references have in common. */
export const commonNode = (): OwnNode =>
  between((a, b) => {
    const range = {
      startRow: Math.max(a.startRow, b.startRow),
      endRow: Math.min(a.endRow, b.endRow),
      startColumn: Math.max(a.startColumn, b.startColumn),
      endColumn: Math.min(a.endColumn, b.endColumn),
    };
    return range.startRow > range.endRow || range.startColumn > range.endColumn ? undefined : range;
  });

/** The least range that has two references in it. */
export const rangeNode = (): OwnNode =>
  between((a, b) => ({
    startRow: Math.min(a.startRow, b.startRow),
    endRow: Math.max(a.endRow, b.endRow),
    startColumn: Math.min(a.startColumn, b.startColumn),
    endColumn: Math.max(a.endColumn, b.endColumn),
  }));

interface Rectangle {
  startRow: number;
  endRow: number;
  startColumn: number;
  endColumn: number;
}

/** A reference to cells of the same sheet, that looks where the other looks. */
export function referenceTo(range: Rectangle, other: BaseReferenceObject): RangeReferenceObject {
  const reference = new RangeReferenceObject({ ...range }, other.getSheetId(), other.getUnitId());
  return Object.assign(reference, other, {
    _token: '',
    _rangeData: { ...range },
    _refOffsetX: 0,
    _refOffsetY: 0,
  });
}

interface At {
  readonly _handlerAT: (value: Value) => Value;
}

/** @ makes one value of several. The library refuses a single cell and what a function gives: both are one value, or begin with one. */
const { checkAndCreateNodeType: prefixNode } = PrefixNodeFactory.prototype;
PrefixNodeFactory.prototype.checkAndCreateNodeType = function (piece) {
  const node = prefixNode.call(this, piece);
  if (node?.getToken() !== '@') return node;
  const { _handlerAT: ofRange } = node as unknown as At;
  const one = (value: Value): Value => {
    if (isReference(value)) return value.isCell() ? value : ofRange.call(node, value);
    return value.isArray() ? (value as ArrayValueObject).getFirstCell() : value;
  };
  return Object.assign(node, { _handlerAT: one });
};
