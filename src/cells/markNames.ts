import type { Quantity } from '../catalogue/quantities';
import { markAt } from '../exposure/stops/markAt';
import type { MarkedScale } from '../exposure/stops/marks';
import type { Reading, Reason } from './reason';

/** The scale on which a number is looked for that names no mark itself. */
function scaleFor(by: Reason['by'], { marks, marksInText }: Quantity): MarkedScale | undefined {
  if (by === 'stops') return marks ?? marksInText;
  return by === 'number' || by === 'unit' ? marks : undefined;
}

/** A reading that says of which mark its number is the exact value, or which tenths above a full stop it comes to. */
export function withMark<Value>(reading: Reading<Value>, quantity: Quantity | undefined): Reading<Value> {
  if (!('value' in reading) || typeof reading.value !== 'number' || quantity === undefined) return reading;
  const { by } = reading.reason;
  const scale = scaleFor(by, quantity);
  const mark = scale && markAt(scale, reading.value);
  // where tenths stand in a cell of their own, a figure has none
  if (mark === undefined || (mark.tenths > 0 && quantity.tails === 'apart')) return reading;
  return { ...reading, reason: { by: by as 'number' | 'stops' | 'unit', mark } };
}
