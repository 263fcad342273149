import { Q, type Quantity } from '../catalogue/quantities';

/** What a unit word measures, for the hint where it stands in a cell of another kind. */
const MEASURES: ReadonlyMap<string, string> = new Map(
  (
    [
      ['a time', Q.duration],
      ['a length', Q.distance],
      ['an energy', Q.energy],
      ['a speed', Q.speed],
      ['a number of stops', Q.stops],
      ['a number of pops', Q.pops],
      ['a number of pixels', Q.pixels],
      ['turns a minute', Q.rpm],
      ['an illuminance', Q.lux],
      ['a luminous exposure', Q.luxSeconds],
    ] as const
  )
    .flatMap(([kind, quantity]) =>
      Object.keys(quantity.units ?? {}).map((unit): readonly [string, string] => [unit, kind]),
    )
    .concat([
      ['w', 'a power'],
      ['kw', 'a power'],
      ['k', 'a colour temperature'],
      ['v', 'a voltage'],
      ['a', 'a current'],
      ['%', 'a percentage'],
    ])
    .reverse(),
);

export const unitFactor = (quantity: Quantity, unit: string): number | undefined =>
  Object.hasOwn(quantity.units ?? {}, unit) ? quantity.units?.[unit] : undefined;

/** What the unit measures, where it is one we know: "a length". */
export const whatItMeasures = (unit: string): string | undefined => MEASURES.get(unit);
