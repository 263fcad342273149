import { type AnyRow, type Arg, isChoice } from '../../catalogue/types';
import { argumentHelp } from '../../catalogue/words';

/** Where the add-in's pages live until a build is made for another address. */
export const LOCAL_ORIGIN = 'https://localhost:3000/';

interface Parameter {
  readonly name: string;
  readonly description: string;
  readonly type: 'any';
  readonly dimensionality: 'matrix';
  readonly optional?: true;
  readonly customEnumId?: string;
}

const wordListId = (row: AnyRow, arg: Arg): string => `${row.id}.${arg.name}`;

/**
 * Every argument is `any` and `matrix`: Excel then converts nothing by itself, hands over error cells instead of
 * answering in our place, and takes a range wherever it takes a cell.
 */
function parameter(row: AnyRow, arg: Arg): Parameter {
  return {
    name: arg.name,
    description: argumentHelp(arg),
    type: 'any',
    dimensionality: 'matrix',
    ...(arg.optional && { optional: true }),
    ...(isChoice(arg.kind) && { customEnumId: wordListId(row, arg) }),
  };
}

/** The words that Excel offers while an argument is typed. Versions of Excel that know no such lists pass over them. */
const wordLists = (row: AnyRow) =>
  row.args.flatMap((arg: Arg) =>
    isChoice(arg.kind)
      ? [
          {
            id: wordListId(row, arg),
            type: 'string',
            values: arg.kind.choices.map((word) => ({ name: word, stringValue: word })),
          },
        ]
      : [],
  );

/** The file from which Excel learns the functions, made from the catalogue. */
export const functionsJson = (rows: readonly AnyRow[], origin = LOCAL_ORIGIN) => ({
  $schema: 'https://developer.microsoft.com/json-schemas/office-js/custom-functions.schema.json',
  allowErrorForDataTypeAny: true,
  functions: rows.map((row) => ({
    id: row.id,
    name: row.id,
    description: row.gives,
    helpUrl: `${origin}help.html#${row.id.toLowerCase()}`,
    parameters: row.args.map((arg: Arg) => parameter(row, arg)) as readonly Parameter[],
    result: { type: 'any', dimensionality: 'matrix' },
  })),
  enums: rows.flatMap(wordLists),
});
