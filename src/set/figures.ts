import { cameraAxes, fieldSlopes } from './field';
import { frontAxes, frontCorners, type PlacedLight } from './front';
import { before, middleOf, type Mirror, mirrored, mirrorOf, outline, type Seen, seenIn } from './mirror';
import { along, type Axes, direction, dot, minus, type Place3 } from './space';
import type { Camera, SetUp } from './setUp';

/** A place in a view, in metres: to the right and upwards on paper. */
export interface Place2 {
  readonly u: number;
  readonly v: number;
}

export type FigureKind =
  | 'front'
  | 'aim'
  | 'facing'
  | 'field'
  | 'fieldWidth'
  | 'axis'
  | 'sensor'
  | 'lens'
  | 'subject'
  | 'surface'
  | 'polish'
  | 'image'
  | 'highlight'
  | 'ray';

/** A line or an outline of the set in one view. */
export interface Figure {
  readonly kind: FigureKind;
  readonly places: readonly Place2[];
  readonly isClosed: boolean;
  /** Which of the lights it belongs to. */
  readonly light?: number;
}

/** A light that is drawn: its place among all lights, and what the surface shows of it. */
export interface DrawnLight {
  readonly index: number;
  readonly light: PlacedLight;
  readonly seen: Seen | undefined;
}

/** The set from above and from the side, both with the camera looking away from where the drawing begins. */
export interface Figures {
  readonly plan: readonly Figure[];
  readonly side: readonly Figure[];
  readonly lights: readonly DrawnLight[];
  /** The datum in the plan, and the directions of its x and y there. */
  readonly datum: { readonly at: Place2; readonly x: Place2; readonly y: Place2 };
  /** The datum in the elevation. */
  readonly datumBeside: Place2;
  /** Width and height of the field at the subject, and how far that is before the lens; undefined where they are not known. */
  readonly field: { readonly width: number; readonly height: number; readonly distance: number } | undefined;
  /** Whether the camera looks so steeply that its plan has the datum's y at the top. */
  readonly isSteep: boolean;
}

/** The level directions of both views: to the camera's right, and away from it. */
interface Level {
  readonly from: Place3;
  readonly right: Place3;
  readonly away: Place3;
}

const ORIGIN: Place3 = { x: 0, y: 0, z: 0 };
const DATUM: Level = { from: ORIGIN, right: { x: 1, y: 0, z: 0 }, away: { x: 0, y: 1, z: 0 } };
const STEEP = 1e-3;
/** How far the edges of the field go on beyond the subject. */
const BEYOND = 1.25;
/** Metres that the line on the lit side of a front is long, and the one on the polished side of a surface. */
const FACING = 0.15;

function levelOf(camera: Camera | undefined, axes: Axes | undefined): Level & { readonly isSteep: boolean } {
  if (!camera || !axes) return { ...DATUM, from: camera?.at ?? ORIGIN, isSteep: false };
  const { forward, right } = axes;
  const away = direction({ ...forward, z: 0 });
  if (!away || Math.hypot(forward.x, forward.y) < STEEP) return { ...DATUM, from: camera.at, isSteep: true };
  return { from: camera.at, right, away, isSteep: false };
}

type Side = (place: Place3) => Place2;
interface Drawing {
  add(
    kind: FigureKind,
    places: readonly Place3[],
    more?: { readonly isClosed?: true; readonly light?: number },
  ): void;
}

/** What is drawn of a set, in metres. */
export function figuresOf(setUp: SetUp): Figures {
  const { camera, subject } = setUp;
  const axes = camera && cameraAxes(camera);
  const level = levelOf(camera, axes);
  const from: Place3 = { ...level.from, z: 0 };
  const above: Side = (place) => ({
    u: dot(minus(place, from), level.right),
    v: dot(minus(place, from), level.away),
  });
  const beside: Side = (place) => ({ u: dot(minus(place, from), level.away), v: place.z });
  const [plan, side]: [Figure[], Figure[]] = [[], []];
  const into = (figures: Figure[], view: Side): Drawing => ({
    add: (kind, places, { isClosed = false, light } = {}) =>
      void figures.push({
        kind,
        places: places.map(view),
        isClosed,
        ...(light === undefined ? {} : { light }),
      }),
  });
  const views = [into(plan, above), into(side, beside)];
  const both: Drawing = { add: (...figure) => views.forEach((view) => view.add(...figure)) };
  const mirror = setUp.surface && mirrorOf(setUp.surface);
  if (mirror) addSurface(mirror, both);
  const field = camera && axes ? addCamera(camera, axes, subject, views) : undefined;
  if (subject) both.add('subject', [subject]);
  const lights = setUp.lights.flatMap((light, index): DrawnLight[] => {
    if (!light.at) return [];
    const placed: PlacedLight = { ...light, at: light.at };
    addLight(placed, index, level.right, both);
    const looking = camera &&
      axes && { at: camera.at, axes, slopes: camera.optics && fieldSlopes(camera.optics) };
    const seen = mirror && looking && seenIn(mirror, placed, looking, level.right);
    if (mirror) addImage(mirror, placed, index, level.right, both);
    if (seen && 'highlight' in seen && looking)
      addHighlight(seen.highlight, looking.at, placed.at, index, both);
    return [{ index, light: placed, seen }];
  });
  return {
    plan,
    side,
    lights,
    datum: {
      at: above(ORIGIN),
      x: pointing(above, { x: 1, y: 0, z: 0 }),
      y: pointing(above, { x: 0, y: 1, z: 0 }),
    },
    datumBeside: { u: beside(ORIGIN).u, v: setUp.datumHeight ?? 0 },
    field,
    isSteep: level.isSteep,
  };
}

function pointing(view: Side, way: Place3): Place2 {
  const [from, to] = [view(ORIGIN), view(way)];
  return { u: to.u - from.u, v: to.v - from.v };
}

function addSurface(mirror: Mirror, both: Drawing): void {
  both.add('surface', outline(mirror), { isClosed: true });
  both.add('polish', [mirror.at, along(mirror.at, mirror.normal, FACING)]);
}

function addCamera(
  { at, aim, optics }: Camera,
  { right, up, forward }: Axes,
  subject: Place3 | undefined,
  [plan, side]: readonly Drawing[],
): Figures['field'] {
  const distance = dot(minus(subject ?? aim, at), forward);
  const far = along(at, forward, Math.max(distance, FACING) * BEYOND);
  for (const view of [plan, side]) {
    view?.add('lens', [at]);
    view?.add('axis', [at, far]);
  }
  if (!optics) return undefined;
  const slopes = fieldSlopes(optics);
  const middle = along(along(along(at, forward, -optics.draw), right, -optics.shift), up, -optics.rise);
  const sensor = (way: Place3, half: number): Place3[] => [
    along(middle, way, -half),
    along(middle, way, half),
  ];
  plan?.add('sensor', sensor(right, optics.sensorWidth / 2));
  side?.add('sensor', sensor(up, optics.sensorHeight / 2));
  if (distance <= 0) return undefined;
  const edge = (way: Place3, slope: number, by: number): Place3 =>
    along(along(at, forward, by), way, slope * by);
  const wedge = (view: Drawing | undefined, way: Place3, low: number, high: number): void => {
    view?.add('field', [edge(way, low, distance * BEYOND), at, edge(way, high, distance * BEYOND)]);
    view?.add('fieldWidth', [edge(way, low, distance), edge(way, high, distance)]);
  };
  wedge(plan, right, slopes.left, slopes.right);
  wedge(side, up, slopes.down, slopes.up);
  return {
    width: (slopes.right - slopes.left) * distance,
    height: (slopes.up - slopes.down) * distance,
    distance,
  };
}

function addLight(light: PlacedLight, index: number, right: Place3, both: Drawing): void {
  const corners = frontCorners(light, right);
  both.add('front', corners, corners.length > 1 ? { isClosed: true, light: index } : { light: index });
  const facing = frontAxes(light, right);
  if (!light.aim || !facing) return;
  both.add('aim', [light.at, light.aim], { light: index });
  both.add('facing', [light.at, along(light.at, facing.forward, FACING)], { light: index });
}

function addImage(mirror: Mirror, light: PlacedLight, index: number, right: Place3, both: Drawing): void {
  if (before(mirror, light.at) <= 0) return;
  const corners = frontCorners(light, right).map((corner) => mirrored(mirror, corner));
  both.add('image', corners, corners.length > 1 ? { isClosed: true, light: index } : { light: index });
}

/** The highlight, and the way of the light to it and on to the lens. */
function addHighlight(
  highlight: readonly Place3[],
  lens: Place3,
  light: Place3,
  index: number,
  both: Drawing,
): void {
  both.add(
    'highlight',
    highlight,
    highlight.length > 1 ? { isClosed: true, light: index } : { light: index },
  );
  both.add('ray', [light, middleOf(highlight), lens], { light: index });
}
