import { CATALOGUE, NAMESPACE } from '../catalogue';
import type { AnyRow, Arg } from '../catalogue/types';
import { argumentHelp, exampleFormula, resultText } from '../catalogue/words';
import { at } from '../exposure/core/at';

const args = (row: AnyRow): readonly Arg[] => row.args as readonly Arg[];
/** These hosts know no namespace with a dot. */
const nameOf = (row: AnyRow): string => `${NAMESPACE}_${row.id}`;
const text = (words: string): string => words.replace(/\*\//g, '* /').replace(/\s+/g, ' ');

/** The comment that both hosts read a function's help from. */
function comment(row: AnyRow): string {
  const lines = [
    text(row.gives),
    ...args(row).map(
      (arg) => `@param {any[][]} ${arg.optional ? `[${arg.name}]` : arg.name} ${text(argumentHelp(arg))}`,
    ),
    `@returns {any[][]} ${text(resultText(row))}. Example: ${text(exampleFormula(row, at(row.examples, 0)).replace(`${NAMESPACE}.`, `${NAMESPACE}_`))}`,
    '@customfunction',
  ];
  return ['/**', ...lines.map((line) => ` * ${line}`), ' */'].join('\n');
}

const parameters = (row: AnyRow): string =>
  args(row)
    .map((arg) => arg.name)
    .join(', ');
const body = (row: AnyRow): string =>
  `return Sweeptable.call("${row.id}", Array.prototype.slice.call(arguments));`;

/** One file to paste into a script project of Google Sheets. */
export const googleSheets = (bundle: string): string =>
  [
    bundle,
    ...CATALOGUE.map(
      (row) => `${comment(row)}\nfunction ${nameOf(row)}(${parameters(row)}) {\n  ${body(row)}\n}`,
    ),
  ].join('\n');

/** One file to paste into the custom functions of ONLYOFFICE. */
export const onlyOffice = (bundle: string): string =>
  [
    '(function () {',
    bundle,
    ...CATALOGUE.map(
      (row) =>
        `${comment(row)}\nApi.AddCustomFunction(function ${nameOf(row)}(${parameters(row)}) {\n  ${body(row)}\n});`,
    ),
    '})();',
  ].join('\n');
