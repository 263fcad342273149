import { Q, type Quantity } from '../catalogue/quantities';

/** What a unit word measures, for the hint where it stands in a cell of another kind. */
const MEASURES: ReadonlyMap<string, string> = new Map(
  (
    [
      ['a time', Q.duration],
      ['a power', Q.watts],
      ['a colour temperature', Q.kelvin],
      ['a mired shift', Q.mired],
      ['a voltage', Q.volts],
      ['a current', Q.amperes],
      ['an angle', Q.angle],
      ['a number of days', Q.days],
      ['a number of frames', Q.frames],
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
    .concat([['%', 'a percentage']])
    .reverse(),
);

export const unitFactor = (quantity: Quantity, unit: string): number | undefined =>
  Object.hasOwn(quantity.units ?? {}, unit) ? quantity.units?.[unit] : undefined;

/** What the unit measures, where it is one we know: "a length". */
export const whatItMeasures = (unit: string): string | undefined => MEASURES.get(unit);
