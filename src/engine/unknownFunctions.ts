import { CATALOGUE } from '../catalogue';
import { functionName } from '../catalogue/words';
import { functionsIn } from '../formula/calls';
import { lex } from '../formula/lex';
import { LACKING } from './mends/lackingFunctions';
import { ENGINE_FUNCTIONS } from './natives';

const lacking: ReadonlySet<string> = new Set(LACKING);
const KNOWN: ReadonlySet<string> = new Set([
  ...CATALOGUE.map(functionName),
  ...ENGINE_FUNCTIONS.filter((name) => !lacking.has(name)),
]);

/** Names that a sentence has room for. */
const MOST = 8;

interface Formulas {
  readonly sheets: readonly { readonly cells: readonly { readonly formula?: string }[] }[];
  readonly names: readonly { readonly name: string; readonly formula: string }[];
}

/** The functions that cells and names of a book call and that nothing here calculates, in the order they are met. */
function unknownFunctions({ sheets, names }: Formulas): string[] {
  const own = new Set(names.map(({ name }) => name.toUpperCase()));
  const found = new Set<string>();
  const look = (formula: string | undefined): void => {
    if (formula === undefined) return;
    for (const name of functionsIn(lex(formula))) if (!KNOWN.has(name) && !own.has(name)) found.add(name);
  };
  for (const { formula } of names) look(formula);
  for (const { cells } of sheets) for (const { formula } of cells) look(formula);
  return [...found];
}

/** A sentence on the functions of an opened book that are not calculated here; none where all are. */
export function sayUnknownFunctions(book: Formulas): readonly string[] {
  const unknown = unknownFunctions(book);
  if (unknown.length === 0) return [];
  const more = unknown.length > MOST ? ` and ${unknown.length - MOST} more` : '';
  return [
    `This grid has no function ${unknown.slice(0, MOST).join(', ')}${more}: their formulas stay, and their cells show #NAME? in the place of the last figures.`,
  ];
}
