import { cameraAxes, fieldSlopes, type HalfSpace, inField } from './field';
import { BELIEVED } from './limits';
import { before, mirrorOf } from './mirror';
import { type Axes, dot, length, minus, NO_LENGTH, type Place3 } from './space';
import type { Camera, Light, Optics, SetUp, Surface } from './setUp';

/** What is wrong with a set, or not known of it, as it was written down. Lengths in metres. */
export type Doubt =
  | { readonly kind: 'no place'; readonly light: string }
  | { readonly kind: 'far'; readonly what: string; readonly metres: number }
  | { readonly kind: 'same name'; readonly light: string; readonly count: number }
  | { readonly kind: 'below'; readonly what: string; readonly metres: number }
  | { readonly kind: 'aimed at itself'; readonly light: string }
  | { readonly kind: 'no aim'; readonly light: string }
  | { readonly kind: 'no width'; readonly light: string }
  | { readonly kind: 'wide front'; readonly light: string; readonly metres: number }
  | { readonly kind: 'wide surface'; readonly metres: number }
  | { readonly kind: 'distance'; readonly light: string; readonly typed: number; readonly drawn: number }
  | { readonly kind: 'many'; readonly count: number }
  | { readonly kind: 'too many'; readonly count: number; readonly drawn: number }
  | {
      readonly kind:
        | 'no datum'
        | 'no ISO'
        | 'no camera'
        | 'no lens axis'
        | 'no field'
        | 'odd field'
        | 'subject behind'
        | 'subject outside'
        | 'steep'
        | 'no surface size';
    }
  | { readonly kind: 'lens in the plane' | 'lens behind the polish' };

export interface CheckedSet {
  /** What can be drawn. */
  readonly setUp: SetUp;
  readonly doubts: readonly Doubt[];
}

/** More lights than this are no set for one picture; they are drawn all the same. */
const MANY = 20;
/** More than these are not drawn: a page would stand still while their numbers look for places. */
const MOST = 40;
/** A typed distance may be so far off the drawn one: so many metres, or this part of it where that is more. */
const OFF = { metres: 0.03, part: 0.03 } as const;
const SLACK = 1e-9;
/** No field reaches farther to a side of the lens axis than so many times its distance: 80°. */
const STEEPEST_EDGE = Math.tan((80 * Math.PI) / 180);

const isFar = ({ x, y, z }: Place3): boolean =>
  Math.max(Math.abs(x), Math.abs(y)) > BELIEVED.place || Math.abs(z) > BELIEVED.height;

/** The lights that can be drawn, and all that is to be said of the set. Lights keep their places in the list. */
export function checkSet(set: SetUp): CheckedSet {
  const shown = set.lights.slice(0, MOST);
  const count = set.lights.length;
  const doubts: Doubt[] = [...sameNames(shown)];
  if (count > MOST) doubts.push({ kind: 'too many', count, drawn: MOST });
  else if (count > MANY) doubts.push({ kind: 'many', count });
  const subject = kept(set.subject, 'The subject', doubts);
  const camera = checkedCamera(set.camera, subject, doubts);
  const datum = kept({ x: 0, y: 0, z: set.datumHeight ?? 0 }, 'The datum', doubts);
  const lights = shown.map((light) => checkedLight(light, subject, doubts));
  const surface = checkedSurface(set.surface, camera, doubts);
  if (set.datum?.name === '' && lights.some(({ at }) => at)) doubts.push({ kind: 'no datum' });
  if (set.meter && set.meter.iso === undefined && lights.some(({ reading }) => reading !== ''))
    doubts.push({ kind: 'no ISO' });
  return { setUp: { ...set, lights, camera, subject, surface, datumHeight: datum?.z ?? 0 }, doubts };
}

function sameNames(lights: readonly Light[]): Doubt[] {
  const counts = new Map<string, number>();
  const keyOf = ({ name, own = name }: Light): string => own.toLowerCase();
  for (const light of lights) counts.set(keyOf(light), (counts.get(keyOf(light)) ?? 0) + 1);
  return [...counts].flatMap(([key, count]): Doubt[] => {
    const { name, own: light = name } = lights.find((one) => keyOf(one) === key) ?? { name: '' };
    return count > 1 && key !== '' ? [{ kind: 'same name', light, count }] : [];
  });
}

function kept(place: Place3 | undefined, what: string, doubts: Doubt[]): Place3 | undefined {
  if (place && isFar(place)) {
    doubts.push({ kind: 'far', what, metres: length(place) });
    return undefined;
  }
  if (place && place.z < 0) doubts.push({ kind: 'below', what, metres: -place.z });
  return place;
}

function checkedLight(light: Light, subject: Place3 | undefined, doubts: Doubt[]): Light {
  const name = light.name;
  if (!light.at) {
    doubts.push({ kind: 'no place', light: name });
    return light;
  }
  const at = kept(light.at, name, doubts);
  if (!at) return { ...light, at: undefined };
  const aim = kept(light.aim, `The aim of ${name}`, doubts);
  if (light.aim === undefined) doubts.push({ kind: 'no aim', light: name });
  if (aim && length(minus(aim, at)) < NO_LENGTH) doubts.push({ kind: 'aimed at itself', light: name });
  const widths = [light.width, light.height].map((each) => each ?? 0);
  const widest = Math.max(...widths);
  const isWide = widest > BELIEVED.size;
  if (isWide) doubts.push({ kind: 'wide front', light: name, metres: widest });
  else if (!(light.width !== undefined && light.width > 0)) doubts.push({ kind: 'no width', light: name });
  const to = light.isAway ? aim : (subject ?? aim);
  const drawn = to && length(minus(to, at));
  if (light.distance !== undefined && drawn !== undefined && isOff(light.distance, drawn))
    doubts.push({ kind: 'distance', light: name, typed: light.distance, drawn });
  return { ...light, at, aim, ...(isWide ? { width: undefined, height: undefined } : {}) };
}

const isOff = (typed: number, drawn: number): boolean =>
  Math.abs(typed - drawn) > Math.max(OFF.metres, OFF.part * drawn) + SLACK;

/** Whether lens and sensor have a field that a camera could take in. */
function hasField(optics: Optics): boolean {
  const farthest = Math.max(...Object.values(fieldSlopes(optics)).map(Math.abs));
  return optics.draw > 0 && farthest < STEEPEST_EDGE;
}

/** Whether a place before the lens is not in its picture. */
function isOutside(place: Place3, lens: Place3, axes: Axes, optics: Optics): boolean {
  const [ahead, ...edges] = inField(lens, axes, fieldSlopes(optics));
  const below = ({ normal, offset }: HalfSpace): boolean => dot(normal, place) - offset < -SLACK;
  return ahead !== undefined && !below(ahead) && edges.some(below);
}

function checkedCamera(
  camera: Camera | undefined,
  subject: Place3 | undefined,
  doubts: Doubt[],
): Camera | undefined {
  const at = camera && kept(camera.at, 'The camera', doubts);
  if (!camera || !at) {
    if (!camera) doubts.push({ kind: 'no camera' });
    return undefined;
  }
  const axes = cameraAxes(camera);
  if (!axes) doubts.push({ kind: 'no lens axis' });
  else if (Math.hypot(axes.forward.x, axes.forward.y) < 1e-3) doubts.push({ kind: 'steep' });
  if (axes && subject && dot(minus(subject, at), axes.forward) <= 0) doubts.push({ kind: 'subject behind' });
  if (!camera.optics) doubts.push({ kind: 'no field' });
  else if (!hasField(camera.optics)) {
    doubts.push({ kind: 'odd field' });
    return { ...camera, at, optics: undefined };
  } else if (axes && subject && isOutside(subject, at, axes, camera.optics))
    doubts.push({ kind: 'subject outside' });
  return { ...camera, at };
}

function checkedSurface(
  surface: Surface | undefined,
  camera: Camera | undefined,
  doubts: Doubt[],
): Surface | undefined {
  const at = surface && kept(surface.at, 'The surface', doubts);
  if (!surface || !at) return undefined;
  if (!(surface.width > 0 && surface.height > 0)) {
    doubts.push({ kind: 'no surface size' });
    return undefined;
  }
  if (surface.width > BELIEVED.size || surface.height > BELIEVED.size) {
    doubts.push({ kind: 'wide surface', metres: Math.max(surface.width, surface.height) });
    return undefined;
  }
  const lens = camera ? before(mirrorOf(surface), camera.at) : 1;
  if (Math.abs(lens) < NO_LENGTH) doubts.push({ kind: 'lens in the plane' });
  else if (lens < 0) doubts.push({ kind: 'lens behind the polish' });
  return { ...surface, at };
}
