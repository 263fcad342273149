import type { Doubt } from './checkSet';
import type { DrawnLight, Figures } from './figures';
import type { Seen } from './mirror';
import { dot, minus } from './space';
import type { Light, SetUp } from './setUp';

const metres = (value: number): string => `${value.toFixed(2)} m`;

/** What is said of a doubt, and what to write instead. */
export function doubtText(doubt: Doubt): string {
  switch (doubt.kind) {
    case 'no place':
      return `${doubt.light} has no place, so that it is not drawn: type its x, y and height.`;
    case 'far':
      return `${doubt.what} would be ${Math.round(doubt.metres)} m away, and is not drawn. Lengths are in metres: write 1.8 or 180 cm, not 180.`;
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
      return `The front of ${doubt.light} would be ${Math.round(doubt.metres)} m wide, and is not drawn. Lengths are in metres: write 0.6 or 60 cm, not 60.`;
    case 'distance':
      return `${doubt.light}: ${metres(doubt.typed)} was typed, and the places are ${metres(doubt.drawn)} apart. One of them is wrong.`;
    case 'many':
      return `${doubt.count} lights are many for one picture: look at each number twice.`;
    case 'no camera':
      return 'The camera has no place, so that neither it nor left and right as it sees them are drawn.';
    case 'no lens axis':
      return 'The camera is aimed at its own place, so that nobody knows which way it looks.';
    case 'no field':
      return 'Without sensor and draw the field of view is not drawn.';
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

const LINES =
  'Thick: fronts, as wide as they are, with an arrow to the lit side. Dashes: aims. Dash and dot: field of view. Dots: mirror images. Hatched: highlights. Ring with arrows: the datum, its x and y, and upwards. Thin and level: the floor. Movements other than rise and shift are not drawn; nor is what stands in between.';

/** What stands below the picture: what the lines are, the field, and all that is missing or in doubt. */
export function notesOf(figures: Figures, doubts: readonly Doubt[]): string[] {
  return [LINES, ...fieldText(figures), ...doubts.map(doubtText)];
}

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

function seenText(seen: Seen | undefined): string[] {
  if (!seen) return [];
  if ('highlight' in seen) return ['makes a highlight in the surface'];
  return NONE[seen.none] === '' ? [] : [NONE[seen.none]];
}

const sideOf = (value: number, less: string, more: string): string =>
  Math.abs(value) < 0.005 ? '' : `${metres(Math.abs(value))} ${value < 0 ? less : more}`;

/** Where a light is, what it is set to and what becomes of it, in a sentence. */
function lightText({ index, light, seen }: DrawnLight, { plan }: Figures, from: SetUp): string {
  const front = plan.find((figure) => figure.kind === 'front' && figure.light === index)?.places ?? [];
  const [u, v] = (['u', 'v'] as const).map(
    (axis) => front.reduce((sum, place) => sum + place[axis], 0) / Math.max(1, front.length),
  ) as [number, number];
  const places = from.camera
    ? [sideOf(u, 'left of the lens', 'right of the lens'), sideOf(v, 'behind it', 'before it')]
    : [`at x ${metres(light.at.x)} and y ${metres(light.at.y)}`];
  const aimed = light.aim ? minus(light.aim, light.at) : undefined;
  const down = aimed && Math.hypot(aimed.x, aimed.y, aimed.z) > 0 ? (Math.asin(-aimed.z / Math.sqrt(dot(aimed, aimed))) * 180) / Math.PI : undefined; // prettier-ignore
  const facing = down === undefined || Math.abs(down) < 0.5 ? '' : `aimed ${Math.round(Math.abs(down))}° ${down > 0 ? 'down' : 'up'}`; // prettier-ignore
  const size = light.width === undefined ? '' : `front ${metres(light.width)} × ${metres(light.height ?? light.width)}`; // prettier-ignore
  const all = [
    ...places,
    `${metres(light.at.z)} high`,
    size,
    facing,
    light.setting === '' ? '' : `set to ${light.setting}`,
    light.reading === '' ? '' : `reads ${light.reading}`,
    ...seenText(seen),
  ].filter((part) => part !== '');
  return `${index + 1} ${light.name === '' ? 'Light' : light.name}: ${all.join(', ')}.`;
}

/** The whole picture in words, for those who do not see it. */
export function pictureInWords(setUp: SetUp, figures: Figures, doubts: readonly Doubt[]): string {
  const { camera } = setUp;
  const count = figures.lights.length;
  return [
    `A plan and an elevation of a set with ${count} ${count === 1 ? 'light' : 'lights'}.`,
    ...(camera
      ? [`The camera's lens is ${metres(camera.at.z)} high; left and right are as seen from it.`]
      : []),
    ...fieldText(figures),
    ...figures.lights.map((light) => lightText(light, figures, setUp)),
    ...doubts.map(doubtText),
  ].join(' ');
}
