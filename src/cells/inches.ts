import type { Quantity } from '../catalogue/quantities';
import { fail, type Fail, isFail } from '../exposure/core/result';
import { decimal, FIGURE } from './textParts';
import { unitFactor } from './units';

const FEET = `(\\d+) ?(?:'|ft|foot|feet) ?`;
const INCHES = `(?:(${FIGURE})|(?:(\\d+) )?(\\d+)/(2|4|8|16|32|64)) ?(?:"|in\\.?|inch|inches)`;
const FORM = new RegExp(`^(?:${FEET})?${INCHES}$`);
const INCHES_A_FOOT = 12;

/** Feet and inches, and parts of inches: 5' 6", 5 ft 6 in, 22 1/2 in. Undefined where the text is nothing of these. */
export function readInches(text: string, quantity: Quantity): number | Fail | undefined {
  const found = FORM.exec(text);
  if (!found) return undefined;
  const [, feet, digits, whole, over, under] = found;
  const inches = digits === undefined ? Number(whole ?? 0) + Number(over) / Number(under) : decimal(digits);
  if (isFail(inches)) return inches;
  if (feet !== undefined && inches >= INCHES_A_FOOT)
    return fail('unreadable', 'has too many inches: 12 inches make a foot');
  return (Number(feet ?? 0) * INCHES_A_FOOT + inches) * (unitFactor(quantity, '"') as number);
}
