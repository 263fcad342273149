import { Q } from '../catalogue/quantities';
import { readCell, readLength, readPlace } from './readLength';
import type { Camera, Optics, SetUp, Surface } from './setUp';
import type { Place3 } from './space';
import { placeOf, type Tell, told } from './told';

const MM = 1e-3;

/** Cells beside their labels. */
export type Cells = ReadonlyMap<string, unknown>;
const firstOf = (cells: Cells, labels: readonly string[]): unknown =>
  cells.get(labels.find((label) => cells.has(label)) ?? '');
/** Three cells under labels that begin alike; other beginnings count where there are none of the first. */
const threeOf = (cells: Cells, ...beginnings: readonly string[]): readonly [unknown, unknown, unknown] => {
  const [x, y, z] = (['x', 'y', 'height'] as const).map((axis) => firstOf(cells, beginnings.map((one) => `${one} ${axis}`))); // prettier-ignore
  return [x, y, z];
};

function opticsIn(cells: Cells, tell: Tell): Optics | undefined {
  const length = (...labels: readonly string[]): number | undefined => {
    const label = labels.find((one) => cells.has(one));
    return label === undefined ? undefined : told(readLength(cells.get(label), Q.lensLength, label), tell);
  };
  const moved = (label: string): number =>
    (told(readPlace(cells.get(label), label, Q.lensLength), tell) ?? 0) * MM;
  const [sensorWidth, sensorHeight, draw] = [
    length('sensor width'),
    length('sensor height'),
    length('bellows draw', 'draw'),
  ];
  if (!sensorWidth || !sensorHeight || !draw) return undefined;
  return {
    sensorWidth: sensorWidth * MM,
    sensorHeight: sensorHeight * MM,
    draw: draw * MM,
    rise: moved('rise'),
    shift: moved('shift'),
  };
}
const isFilled = (value: unknown): boolean => value !== undefined && value !== null && value !== '';

/** A place of three cells that are all there or none: what is typed of one that is not whole would be lost without a word. */
function wholePlace(
  three: readonly [unknown, unknown, unknown],
  name: string,
  tell: Tell,
): Place3 | undefined {
  const place = placeOf(three, name, tell);
  const count = three.filter(isFilled).length;
  if (count > 0 && count < 3) tell(`Of ${name} x, y or height is missing: type all three.`);
  return place;
}

function cameraIn(cells: Cells, tell: Tell): Camera | undefined {
  const at = wholePlace(threeOf(cells, 'camera'), 'the camera', tell);
  const aim =
    wholePlace(threeOf(cells, 'camera aim', 'it aims at', 'at'), 'the camera’s aim', tell) ??
    subjectIn(cells, () => {});
  return at && { at, aim: aim ?? at, optics: opticsIn(cells, tell) };
}

const subjectIn = (cells: Cells, tell: Tell): Place3 | undefined =>
  wholePlace(threeOf(cells, 'subject'), 'the subject', tell);

/** What a surface has besides its place: its size and how it is tilted, each with the labels that it may have. */
const OF_SURFACE = ['surface width', 'surface depth', 'surface tilt x', 'surface tilt y', 'surface tilt height', 'surface turned'] as const; // prettier-ignore

function surfaceIn(cells: Cells, tell: Tell): Surface | undefined {
  const three = threeOf(cells, 'surface');
  const at = wholePlace(three, 'the surface', tell);
  if (!at) {
    if (!three.some(isFilled) && OF_SURFACE.some((label) => isFilled(cells.get(label))))
      tell('The surface has no place, so that it is not drawn: type its x, y and height.');
    return undefined;
  }
  const size = (label: string): number => told(readLength(cells.get(label), Q.distance, label), tell) ?? 0;
  const tilt = (axis: string, ...labels: readonly (typeof OF_SURFACE)[number][]): number => {
    const value = firstOf(cells, labels);
    if (!isFilled(value)) return 0;
    const degrees = Number(String(value).replace(/°|deg(rees)?/i, '').replace('−', '-').replace(',', '.')); // prettier-ignore
    if (Number.isFinite(degrees)) return degrees;
    tell(`The tilt about ${axis} of the surface cannot be read: write degrees, such as 15.`);
    return 0;
  };
  return {
    at,
    width: size('surface width'),
    height: size('surface depth'),
    tilt: {
      x: tilt('x', 'surface tilt x'),
      y: tilt('y', 'surface tilt y'),
      z: tilt('the height', 'surface tilt height', 'surface turned'),
    },
  };
}

const datumIn = (cells: Cells): Pick<SetUp, 'datum'> => {
  if (!cells.has('datum')) return {};
  const value = cells.get('datum');
  return {
    datum: { name: typeof value === 'string' || typeof value === 'number' ? String(value).trim() : '' },
  };
};

function meterIn(cells: Cells, tell: Tell): Pick<SetUp, 'meter'> {
  if (!cells.has('iso')) return {};
  const iso = readCell(cells.get('iso'), Q.iso, 'The ISO');
  if (typeof iso !== 'string') return { meter: { iso } };
  tell(iso);
  return {};
}

/** All of a set but its lights. */
export const aroundLights = (cells: Cells, tell: Tell): Omit<SetUp, 'lights'> => ({
  datumHeight: told(readPlace(firstOf(cells, ['datum height', 'its height']), 'The height of the datum'), tell) ?? 0, // prettier-ignore
  camera: cameraIn(cells, tell),
  subject: subjectIn(cells, tell),
  surface: surfaceIn(cells, tell),
  ...datumIn(cells),
  ...meterIn(cells, tell),
});
