import { parseAddress } from '../formula/address';
import { freeSheetName } from '../sheets/makePlan';
import { TOPS } from '../sheets/offeredTemplates';

/** Letters of the old name that stay: a sheet's name has 31 at most, and " values (2)" has to fit behind them. */
const NAME_KEPT = 20;

/** What a copy of a sheet that holds values is called, in every host alike. */
export const copyName = (sheet: string, taken: readonly string[]): string =>
  freeSheetName(`${sheet.slice(0, NAME_KEPT).trimEnd()} values`, taken);

/**
 * How many columns of a card are printed: a sheet in big type is copied to be read on a phone, and is known by the line that says
 * what to do there; undefined for any other sheet.
 */
export function columnsOfCard(start: unknown): number | undefined {
  const card = TOPS.find((top) => top.big && top.start === start);
  const last = card?.printsTo === undefined ? undefined : parseAddress(card.printsTo);
  return last && last.column + 1;
}
