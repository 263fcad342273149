import { ABOVE_ZERO, POPS } from '../../exposure/core/range';
import { Q } from '../quantities';
import { type Arg, maybe, withDefault } from '../types';

/** Arguments that mean the same wherever they stand. */
const above = { range: ABOVE_ZERO };

export const focal = maybe(
  'focal',
  'Focal length, with the draw, for the bellows loss',
  Q.focalLength,
  above,
);
export const draw = maybe('draw', 'Bellows draw: rear principal point to sensor', Q.lensLength, above);
export const pupil = withDefault(
  'pupil',
  'Pupil magnification, exit over entrance pupil: 1 for a symmetrical lens',
  Q.ratio,
  1,
  above,
);
/** The same behind a loss, a focal length and a draw: what lies outside is another argument in its place. */
export const pupilOfBellows: Arg<number> = {
  ...pupil,
  range: { least: 0.1, most: 10, hint: 'A tolerance in the place of the focal length?' },
};
export const loss = withDefault('loss', 'Stops lost to filters and the like', Q.lightLoss, 0);
export const step = maybe(
  'step',
  'Stops between two settings of the head: 0.1, 1/3 or 1; blank for no rounding',
  Q.stopsStep,
  above,
);
export const least = maybe('least', 'Least energy of the head', Q.energy, above);
export const most = maybe('most', 'Most energy of the head', Q.energy, above);
export const width = maybe('width', 'Width (or diameter) of the front of the light', Q.size, above);
export const height = maybe('height', 'Height of the front, for a rectangle', Q.size, above);
export const smearMagnification = maybe(
  'magnification',
  'Image size over object size; left out, the smear is measured on the subject',
  Q.magnification,
  above,
);
export const pixelPitch = maybe(
  'pixelPitch',
  'Pixel pitch: the smear is then counted in pixels',
  Q.pitch,
  above,
);
/** Pops of a reading or an energy for which one pop is the rule. */
export const pops = (about: string): Arg<number> => withDefault('pops', about, Q.pops, 1, { range: POPS });
