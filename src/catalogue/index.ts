import { colour } from './rows/colour';
import { distance } from './rows/distance';
import { duration } from './rows/duration';
import { exposure } from './rows/metering';
import { light } from './rows/light';
import { loss } from './rows/loss';
import { motion } from './rows/motion';
import { pops } from './rows/pops';
import { sharpness } from './rows/sharpness';
import { stops } from './rows/stops';
import { trace } from './rows/trace';
import type { AnyRow } from './types';

/** What stands before the dot in every formula. */
export const NAMESPACE = 'SWEEP';

/** Every function, in the order shown to people. */
export const CATALOGUE: readonly AnyRow[] = [
  ...stops,
  ...light,
  ...exposure,
  ...loss,
  ...distance,
  ...pops,
  ...duration,
  ...trace,
  ...motion,
  ...sharpness,
  ...colour,
];

export const rowOf = (id: string): AnyRow | undefined => CATALOGUE.find((row) => row.id === id);
