import { FunctionType } from '@univerjs/engine-formula';
import { IDescriptionService } from '@univerjs/preset-sheets-core';
import { NAMESPACE } from '../../../catalogue';
import { PLAIN_FUNCTIONS } from '../../../catalogue/plain';
import type { Grid } from './grid';
import { inside } from './inside';

const PREFIX = `${NAMESPACE}.`;
const EXPLAINED: ReadonlySet<string> = new Set(PLAIN_FUNCTIONS.map(({ name }) => name));
const OF_THE_WORKBOOK: ReadonlySet<FunctionType> = new Set([FunctionType.DefinedName, FunctionType.Table]);

type Offered = ReturnType<IDescriptionService['getSearchListByNameFirstLetter']>[number];

/**
 * How a name can fit, the best first. One that is typed in full is meant, whatever else has it in the middle of its own name;
 * ours that have it behind their beginning come last.
 */
const FITS = ['whole', 'ours', 'of the workbook', 'plain', 'ours inside'] as const;
type Fit = (typeof FITS)[number];

/** How a name fits what was typed in capital letters; undefined where it does not. */
function fitOf({ name: written, functionType }: Offered, typed: string): Fit | undefined {
  const name = written.toUpperCase();
  if (name === typed) return 'whole';
  if (name.startsWith(PREFIX)) {
    const id = name.slice(PREFIX.length);
    const part = typed.startsWith(PREFIX) ? typed.slice(PREFIX.length) : typed;
    // One letter does not ask for the namespace, and so for all of ours.
    const isNamespace = typed.length > 1 && name.startsWith(typed);
    if (isNamespace || id.startsWith(part)) return 'ours';
    return id.includes(part) ? 'ours inside' : undefined;
  }
  if (!name.startsWith(typed)) return undefined;
  return OF_THE_WORKBOOK.has(functionType) ? 'of the workbook' : 'plain';
}

interface Fitting {
  readonly item: Offered;
  readonly fit: Fit;
}
/** Ours stay in the order of the catalogue, plain ones come in that of the alphabet. */
const inOrder = (a: Fitting, b: Fitting): number =>
  FITS.indexOf(a.fit) - FITS.indexOf(b.fit) ||
  (a.fit === 'plain' ? a.item.name.localeCompare(b.item.name) : 0);

/**
 * What is offered while somebody types a formula: our functions by any part of their name, with or without the namespace,
 * then the plain ones that begin so and that we explain. The grid itself offers the first ten of its list that begin so, of
 * hundreds: those that a studio has no use for are calculated where somebody types them, and have no help.
 */
export function offerFunctions(grid: Grid): void {
  const descriptions = inside(grid).get(IDescriptionService);
  const every = descriptions.getSearchListByNameFirstLetter.bind(descriptions);
  const isOffered = ({ name, functionType }: Offered): boolean =>
    name.startsWith(PREFIX) || EXPLAINED.has(name) || OF_THE_WORKBOOK.has(functionType);
  descriptions.unregisterDescriptions(
    every('')
      .filter((item) => !isOffered(item))
      .map(({ name }) => name),
  );
  descriptions.getSearchListByNameFirstLetter = (text) => {
    const typed = text.trim().toUpperCase();
    const found = every('')
      .flatMap((item): Fitting[] => {
        const fit = fitOf(item, typed);
        return fit === undefined ? [] : [{ item, fit }];
      })
      .sort(inOrder)
      .map(({ item }) => item);
    // The grid cuts its own list off; this one scrolls.
    found.slice = () => [...found];
    return found;
  };
}
