import { BooleanNumber } from '@univerjs/core';
import { FunctionType, type IFunctionInfo } from '@univerjs/engine-formula';
import { CATALOGUE } from '../catalogue';
import { PLAIN_FUNCTIONS, type PlainFamily } from '../catalogue/plain';
import type { AnyRow, Arg } from '../catalogue/types';
import { argumentHelp, exampleAnswer, exampleFormula, functionName } from '../catalogue/words';

/** Our functions and the plain ones that we explain, for the autocompletion and argument help of the grid. */
export const descriptions = (): IFunctionInfo[] => [...ourDescriptions(), ...plainDescriptions()];

const truth = (is: boolean): BooleanNumber => (is ? BooleanNumber.TRUE : BooleanNumber.FALSE);

const ourDescriptions = (): IFunctionInfo[] =>
  CATALOGUE.map((row) => ({
    functionName: functionName(row),
    functionType: FunctionType.User,
    abstract: row.gives,
    description: [row.gives, row.formula, row.notes, row.caution, exampleOf(row)].filter(Boolean).join(' '),
    functionParameter: (row.args as readonly Arg[]).map((arg) => ({
      name: arg.name,
      detail: argumentHelp(arg),
      example: '',
      require: truth(!arg.optional),
      repeat: BooleanNumber.FALSE,
    })),
  }));

/** One example as a whole: what the grid would join of the arguments' own need not go together. */
function exampleOf(row: AnyRow): string {
  const [first] = row.examples;
  return first === undefined
    ? ''
    : `For example ${exampleFormula(row, first)} gives ${exampleAnswer(first, String)}.`;
}

/** Under which heading the grid lists a family. */
const HEADINGS: Readonly<Record<PlainFamily, FunctionType>> = {
  arithmetic: FunctionType.Math,
  rounding: FunctionType.Math,
  conditions: FunctionType.Logical,
  countsAndSums: FunctionType.Statistical,
  statistics: FunctionType.Statistical,
  text: FunctionType.Text,
  dates: FunctionType.Date,
  lookUp: FunctionType.Lookup,
  lists: FunctionType.Array,
  money: FunctionType.Financial,
};

const plainDescriptions = (): IFunctionInfo[] =>
  PLAIN_FUNCTIONS.map(({ name, family, gives, args }) => ({
    functionName: name,
    functionType: HEADINGS[family],
    abstract: gives,
    description: `${gives} For example =${name}(${args.map(({ example }) => example).join(',')}).`,
    functionParameter: args.map((arg) => ({
      name: arg.name,
      detail: arg.about,
      example: arg.example,
      require: truth(!arg.optional),
      repeat: truth(arg.repeats),
    })),
  }));
