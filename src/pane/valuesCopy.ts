import { parseAddress, type Place } from '../formula/address';
import { freeSheetName } from '../sheets/makePlan';
import { TOPS } from '../sheets/offeredTemplates';

/** Letters of the old name that stay: a sheet's name has 31 at most, and " values (2)" has to fit behind them. */
const NAME_KEPT = 20;

/** What a copy of a sheet that holds values is called, in every host alike. */
export const copyName = (sheet: string, taken: readonly string[]): string =>
  freeSheetName(`${sheet.slice(0, NAME_KEPT).trimEnd()} values`, taken);

/**
 * The last cell of a sheet in big type, which is copied to be read in a dark room: by the line that says what to type there;
 * undefined for any other sheet.
 */
export function lastOfCard(start: unknown): Place | undefined {
  const card = TOPS.find((top) => top.big && top.start === start);
  return card?.printsTo === undefined ? undefined : parseAddress(card.printsTo);
}
