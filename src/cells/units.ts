import { Q, type Quantity } from '../catalogue/quantities';

const unitWords = ({ unit, units }: Quantity): readonly string[] => Object.keys(units ?? { [unit]: 1 });

/** What a unit word measures, for the hint where it stands in a cell of another kind; the first that has the word. */
const MEASURES: ReadonlyMap<string, string> = new Map(
  Object.values(Q)
    .filter(({ namesUnits }) => namesUnits)
    .flatMap((quantity) =>
      unitWords(quantity).map((word): readonly [string, string] => [word, quantity.title]),
    )
    .reverse(),
);

export const unitFactor = (quantity: Quantity, unit: string): number | undefined =>
  Object.hasOwn(quantity.units ?? {}, unit) ? quantity.units?.[unit] : undefined;

/** What the unit measures, where it is one we know: "a length". */
export const whatItMeasures = (unit: string): string | undefined => MEASURES.get(unit);
