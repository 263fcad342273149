import type { Doubt } from './checkSet';
import { cameraAxes } from './field';
import type { DrawnLight, Figure, Figures, Place2 } from './figures';
import { BELIEVED } from './limits';
import { middleOf, type Seen } from './mirror';
import { minus, NO_LENGTH, type Place3 } from './space';
import type { Camera, Light, SetUp, Surface } from './setUp';

const metres = (value: number): string => `${value.toFixed(2)} m`;

/** What is said of a doubt, and what to write instead. */
export function doubtText(doubt: Doubt): string {
  switch (doubt.kind) {
    case 'no place':
      return `${doubt.light} has no place, so that it is not drawn: type its x, y and height.`;
    case 'far':
      return `${doubt.what} would be ${Math.round(doubt.metres)} m away, and is not drawn. Lengths are in metres, up to ${BELIEVED.place} to each side and ${BELIEVED.height} high: write 1.8, not 180.`;
    case 'same name':
      return `${doubt.count} lights are called ${doubt.light}: give each its own name.`;
    case 'below':
      return `${doubt.what} lies ${metres(doubt.metres)} below the floor: look at the sign of its height.`;
    case 'aimed at itself':
      return `${doubt.light} is aimed at its own place, so that nobody knows which way it is turned.`;
    case 'no aim':
      return `${doubt.light} has no aim, so that only its place is drawn.`;
    case 'no width':
      return `The front of ${doubt.light} has no width, so that only its place is drawn.`;
    case 'wide front':
      return `The front of ${doubt.light} would be ${Math.round(doubt.metres)} m wide, and is not drawn. Lengths are in metres, up to ${BELIEVED.size}: write 0.6, not 60.`;
    case 'wide surface':
      return `The surface would be ${Math.round(doubt.metres)} m wide or high, and is not drawn. Lengths are in metres, up to ${BELIEVED.size}: write 0.6, not 60.`;
    case 'distance':
      return `${doubt.light}: ${metres(doubt.typed)} was typed, and the places are ${metres(doubt.drawn)} apart. One of them is wrong.`;
    case 'many':
      return `${doubt.count} lights are many for one picture: look at each number twice.`;
    case 'too many':
      return `${doubt.count} lights are too many for one picture: only the first ${doubt.drawn} are drawn.`;
    case 'no datum':
      return 'The datum has no name: nobody will find again where the places count from.';
    case 'no ISO':
      return 'The readings have no ISO: type that of the meter.';
    case 'no camera':
      return 'The camera has no place, so that neither it nor left and right as it sees them are drawn.';
    case 'no lens axis':
      return 'The camera is aimed at its own place, so that nobody knows which way it looks.';
    case 'no field':
      return 'Without sensor and draw the field of view is not drawn.';
    case 'odd field':
      return 'Sensor, draw, rise and shift do not go together, so that the field of view is not drawn. They are in millimetres: write 150, not 15 or 0.15.';
    case 'subject behind':
      return 'The subject lies behind the lens, so that the field of view is not drawn.';
    case 'subject outside':
      return 'The middle of the subject lies outside the picture: look at its place, and where the camera aims.';
    case 'steep':
      return 'The camera looks straight up or down: y of the datum is up the page from above.';
    case 'no surface size':
      return 'The surface has no width or no height, and is not drawn.';
    case 'lens in the plane':
      return 'The lens lies in the plane of the surface, where a mirror shows nothing.';
    case 'lens behind the polish':
      return 'The lens is behind the polished side of the surface, and sees no light in it.';
  }
}

/** Beside a light: its name, its height, what it is set to and what it reads. */
export function besideLight({ name, at, setting, reading }: Light, index: number): readonly string[] {
  const figures = [setting, reading].filter((part) => part !== '').join(' · ');
  return [name === '' ? `Light ${index + 1}` : name, ...(at ? [`${metres(at.z)} high`] : []), ...(figures === '' ? [] : [figures])]; // prettier-ignore
}

/** What the lines are, where there are such. */
const KEY: readonly (readonly [kind: Figure['kind'], words: string])[] = [
  ['front', 'Thick: fronts, as wide as they are, with an arrow to the lit side.'],
  ['aim', 'Dashes: aims.'],
  ['field', 'Dash and dot: field of view.'],
  ['image', 'Dots: mirror images.'],
  ['highlight', 'Hatched: highlights.'],
];
const ALWAYS =
  'Ring with arrows: the datum, its x and y, and upwards. Thin and level: the floor. Movements other than rise and shift are not drawn; nor is what stands in between.';

function keyOf({ plan, side }: Figures): string {
  const lines = [...plan, ...side].filter(({ places }) => places.length > 1);
  const drawn = new Set(lines.map(({ kind }) => kind));
  const there = KEY.flatMap(([kind, words]) => (drawn.has(kind) ? [words] : []));
  return [...there, ALWAYS].join(' ');
}

/** What stands below the picture: what the lines are, the field, and all that is missing or in doubt. */
export function notesOf(setUp: SetUp, figures: Figures, doubts: readonly Doubt[]): string[] {
  return [keyOf(figures), ...fieldText(figures), ...isoText(setUp), ...doubts.map(doubtText)];
}

const isoText = ({ meter, lights }: SetUp): string[] =>
  meter?.iso === undefined || lights.every(({ reading }) => reading === '')
    ? []
    : [`Readings are at ISO ${Math.round(meter.iso)}.`];

const fieldText = ({ field }: Figures): string[] =>
  field
    ? [`The picture takes in ${metres(field.width)} × ${metres(field.height)}, ${metres(field.distance)} before the lens.`]
    : []; // prettier-ignore

const NONE: Readonly<Record<Extract<Seen, { none: string }>['none'], string>> = {
  'light behind': 'stands behind the polished side of the surface',
  'lens behind': '',
  'lens in the plane': '',
  'shows its back': 'shows the surface its back as the lens sees it',
  misses: 'makes no highlight in the surface',
};

/** What of the plan is of a kind, and of a light. */
const drawnOf = ({ plan }: Figures, kind: Figure['kind'], index?: number): readonly Place2[] =>
  plan.find((figure) => figure.kind === kind && figure.light === index)?.places ?? [];

const sideOf = (value: number, less: string, more: string): string =>
  Math.abs(value) < 0.005 ? '' : `${metres(Math.abs(value))} ${value < 0 ? less : more}`;

/** Where something lies: as the plan has it where a camera looks, else as it was typed. */
function placeText(place: Place3, drawn: readonly Place2[], { plan, isSteep }: Figures): string {
  const [u, v] = (['u', 'v'] as const).map(
    (axis) => drawn.reduce((sum, each) => sum + each[axis], 0) / Math.max(1, drawn.length),
  ) as [number, number];
  const across = sideOf(u, 'left of the lens', 'right of the lens');
  const from = across === '' ? 'the lens' : 'it';
  const [less, more] = isSteep ? ['down the page from', 'up the page from'] : ['behind', 'before'];
  const places = plan.some(({ kind }) => kind === 'lens')
    ? [across, sideOf(v, `${less} ${from}`, `${more} ${from}`)]
    : [`at x ${metres(place.x)} and y ${metres(place.y)}`];
  return [...places, `${metres(place.z)} high`].filter((part) => part !== '').join(', ');
}

/** How much a direction points down or up; empty for none. */
function tiltText(way: Place3): string {
  const long = Math.hypot(way.x, way.y, way.z);
  if (long < NO_LENGTH) return '';
  const down = (Math.asin(-way.z / long) * 180) / Math.PI;
  return Math.abs(down) < 0.5 ? 'aimed level' : `aimed ${Math.round(Math.abs(down))}° ${down > 0 ? 'down' : 'up'}`;
} // prettier-ignore

function seenText({ index, seen }: DrawnLight, figures: Figures): string {
  if (!seen) return '';
  if (!('highlight' in seen)) return NONE[seen.none];
  const drawn = drawnOf(figures, 'highlight', index);
  return `makes a highlight in the surface, ${placeText(middleOf(seen.highlight), drawn, figures)}`;
}

function aimText({ index, light: { at, aim } }: DrawnLight, figures: Figures): string {
  const tilt = aim ? tiltText(minus(aim, at)) : '';
  return aim && tilt !== '' ? `${tilt} at a place ${placeText(aim, drawnOf(figures, 'aim', index).slice(1), figures)}` : '';
} // prettier-ignore

/** Where a light is, what it is set to and what becomes of it, in a sentence. */
function lightText(drawn: DrawnLight, figures: Figures): string {
  const { index, light } = drawn;
  const all = [
    placeText(light.at, drawnOf(figures, 'front', index), figures),
    light.width === undefined || light.width <= 0
      ? ''
      : `front ${metres(light.width)} × ${metres(light.height ?? light.width)}`,
    aimText(drawn, figures),
    light.setting === '' ? '' : `set to ${light.setting}`,
    light.reading === '' ? '' : `reads ${light.reading}`,
    seenText(drawn, figures),
  ].filter((part) => part !== '');
  return `${index + 1} ${light.name === '' ? 'Light' : light.name}: ${all.join(', ')}.`;
}

function cameraText(camera: Camera): string {
  const { at } = camera;
  const axes = cameraAxes(camera);
  const seen = axes ? `, ${tiltText(axes.forward)}; left and right are as seen from it` : '';
  return `The camera’s lens is at x ${metres(at.x)}, y ${metres(at.y)}, ${metres(at.z)} high${seen}.`;
}

const TILTS = [
  ['x', 'x'],
  ['y', 'y'],
  ['z', 'the height'],
] as const;

function surfaceText({ at, width, height, tilt }: Surface, figures: Figures): string {
  const tilts = TILTS.flatMap(([axis, name]) => (tilt[axis] === 0 ? [] : [`${tilt[axis]}° about ${name}`]));
  const lies = tilts.length === 0 ? 'level' : `tilted by ${tilts.join(', ')}`;
  return `A glossy surface of ${metres(width)} × ${metres(height)}, ${lies}, is ${placeText(at, drawnOf(figures, 'surface'), figures)}.`;
}

/** The whole picture in words, for those who do not see it. */
export function pictureInWords(setUp: SetUp, figures: Figures, doubts: readonly Doubt[]): string {
  const { camera, subject, surface } = setUp;
  const count = figures.lights.length;
  return [
    `A plan and an elevation of a set with ${count} ${count === 1 ? 'light' : 'lights'}.`,
    ...(camera ? [cameraText(camera)] : []),
    ...fieldText(figures),
    ...isoText(setUp),
    ...(subject ? [`The subject is ${placeText(subject, drawnOf(figures, 'subject'), figures)}.`] : []),
    ...(surface ? [surfaceText(surface, figures)] : []),
    ...figures.lights.map((light) => lightText(light, figures)),
    ...doubts.map(doubtText),
  ].join(' ');
}
