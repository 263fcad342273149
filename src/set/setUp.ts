import type { Place3 } from './space';

/** A light as it was written down. Lengths in metres; what was not written is undefined. */
export interface Light {
  readonly name: string;
  /** Its name alone, where the list has names besides parts and heads: no other light has the same. */
  readonly own?: string;
  /** Centre of its front. */
  readonly at: Place3 | undefined;
  /** The place that its front is turned to. */
  readonly aim: Place3 | undefined;
  readonly width: number | undefined;
  readonly height: number | undefined;
  /** What it is set to, as on the head: 1/2, 9.5. */
  readonly setting: string;
  /** What the meter shows of it alone: f/11 +0.3. */
  readonly reading: string;
  /** From its front to the subject, or else to its aim, as typed: a light that does not reach the subject has it to its aim. */
  readonly distance: number | undefined;
  /** Whether its light does not reach the subject. */
  readonly isAway?: boolean;
}

/**
 * The camera. Its lens is at a place and its sensor at right angles to the lens axis, so far behind as the lens is drawn out.
 * Movements besides rise and shift are not known.
 */
export interface Camera {
  /** The lens. */
  readonly at: Place3;
  /** A place on the lens axis, in front of it. */
  readonly aim: Place3;
  /** Width and height of the sensor, and from lens to sensor; undefined where one of them is not known: no field then. */
  readonly optics: Optics | undefined;
}

export interface Optics {
  readonly sensorWidth: number;
  readonly sensorHeight: number;
  /** v, from the rear principal point of the lens to the sensor. */
  readonly draw: number;
  /** How far the lens stands above the middle of the sensor. */
  readonly rise: number;
  /** How far it stands to the right of it, seen from behind the camera. */
  readonly shift: number;
}

/** A flat glossy thing, a rectangle. Untilted it lies level, its width along x, its height along y, its polish upwards. */
export interface Surface {
  /** Its middle. */
  readonly at: Place3;
  readonly width: number;
  readonly height: number;
  /** Degrees, counter-clockwise as seen against each axis: first about x, then about y, then about the height. */
  readonly tilt: Place3;
}

/** A set, as far as it was written down. */
export interface SetUp {
  readonly lights: readonly Light[];
  readonly camera: Camera | undefined;
  readonly subject: Place3 | undefined;
  readonly surface: Surface | undefined;
  /** How far the datum lies above the floor, from which all heights count. */
  readonly datumHeight?: number;
  /** What the datum is, where there is a place to say so. */
  readonly datum?: { readonly name: string };
  /** The ISO of the readings, where there is a place to say so; undefined where nothing stands there. */
  readonly meter?: { readonly iso: number | undefined };
}
