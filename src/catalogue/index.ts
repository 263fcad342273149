import { colourRows } from './rows/colour';
import { distanceRows } from './rows/distance';
import { durationRows } from './rows/duration';
import { meteringRows } from './rows/metering';
import { hireRows } from './rows/hire';
import { lightRows } from './rows/light';
import { lossRows } from './rows/loss';
import { motionRows } from './rows/motion';
import { popsRows } from './rows/pops';
import { sharpnessRows } from './rows/sharpness';
import { stopsRows } from './rows/stops';
import { supplyRows } from './rows/supply';
import { traceRows } from './rows/trace';
import type { AnyRow } from './types';

/** What stands before the dot in every formula. */
export const NAMESPACE = 'SWEEP';

/** Every function, in the order shown to people. */
export const CATALOGUE: readonly AnyRow[] = [
  ...stopsRows,
  ...lightRows,
  ...meteringRows,
  ...lossRows,
  ...distanceRows,
  ...popsRows,
  ...durationRows,
  ...traceRows,
  ...motionRows,
  ...sharpnessRows,
  ...colourRows,
  ...supplyRows,
  ...hireRows,
];

export const rowOf = (id: string): AnyRow | undefined => CATALOGUE.find((row) => row.id === id);
