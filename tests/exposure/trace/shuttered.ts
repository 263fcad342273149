import { record, type Recording, type Shape, twoTimes } from './shapes';

const DECAY = 400e-6;
/** From two samples on the rise to a rise half as slow as the fall. */
const RISES = Array.from({ length: 100 }, (_, k) => 0.02 + 0.0048 * k);
/** Samples before the rise, and in a decay time. */
const BEFORE = 40;
const IN_DECAY = 100;

export interface Shuttered extends Recording {
  readonly shape: Shape;
}

/** A hundred rise-and-decay recordings of 1 % noise with 40 samples before the rise, so many decay times long. */
export const shuttered = (decays: number, firstSeed: number): readonly Shuttered[] =>
  RISES.map((rise, k) => {
    const shape = twoTimes(DECAY * rise, DECAY);
    const samples = IN_DECAY * decays + BEFORE;
    const setting = { decays, samples, lead: BEFORE / samples, noise: 0.01, seed: firstSeed + k };
    return { shape, ...record(shape, setting) };
  });

/** Opening from the rise through three times the noise at which so much of the light is lost, by bisection. */
export function openingFor(shape: Shape, loss: number): number {
  const passed = 2 ** -loss * shape.total;
  let [early, late] = [0, 20 * DECAY];
  for (let i = 0; i < 80; i++) {
    const middle = (early + late) / 2;
    if (shape.sum(middle) < passed) early = middle;
    else late = middle;
  }
  return early - shape.rise(0.03);
}

export const countWithin = (share: number, errors: readonly number[]): number =>
  errors.filter((error) => Math.abs(error) <= share).length;
