/** How far a source carries: it is printed somewhere, it follows from something printed, or it is what everybody does. */
export type SourceKind = 'published' | 'derived' | 'common practice' | 'memory';

export interface Source {
  readonly kind: SourceKind;
  readonly title: string;
  /** Where in it. */
  readonly place?: string;
}

const define = <const S extends Record<string, Source>>(sources: S): { readonly [K in keyof S]: Source } =>
  sources;

/** Every source that a row or a published check names, once. */
export const SOURCES = define({
  'f-number-scale': {
    kind: 'published',
    title: 'F-number, encyclopaedia article',
    place: 'tables of the full-stop, half-stop and third-stop scales',
  },
  'third-stops': {
    kind: 'published',
    title: 'Photography question-and-answer archive: precise against nominal f-numbers',
    place: 'answer 1, table',
  },
  apex: {
    kind: 'published',
    title: 'APEX (Additive System of Photographic Exposure), encyclopaedia article',
    place: 'tables of Av against f-number and Tv against time',
  },
  'iso-steps': {
    kind: 'published',
    title: 'Film speed, encyclopaedia article',
    place: 'table of speed scales',
  },
  'tenth-stops': {
    kind: 'derived',
    title: 'Derived from the definition of a stop: a tenth is a factor of 2^(1/20) of the f-number',
  },
  'ev-table': {
    kind: 'published',
    title: 'Exposure value, encyclopaedia article',
    place: 'table of EV, luminance and illuminance',
  },
  'exif-tests': {
    kind: 'published',
    title: 'Test files of an open metadata library at a named commit',
    place: 'light values of recorded exposures',
  },
  'meter-calibration': {
    kind: 'published',
    title: 'Light meter, encyclopaedia article',
    place: 'calibration constants K and C of ISO 2720',
  },
  'inverse-square': {
    kind: 'published',
    title: 'Illuminating Engineering Society, definition 9.1.1',
    place: 'inverse-square law',
  },
  'navy-photography': {
    kind: 'published',
    title: 'NAVEDTRA 14209, Photography (Basic), US Navy training course',
    place: 'flash, filters, action-stopping tables',
  },
  'army-lighting': {
    kind: 'published',
    title: 'US Army subcourse SS0510',
    place: 'lighting ratios by distance and by power',
  },
  'army-closeup': {
    kind: 'published',
    title: 'US Army subcourses SS0507, SS0511 and SS0512',
    place: 'bellows extension, copying and close-up factors',
  },
  'closeup-table': {
    kind: 'published',
    title: 'Table of close-up exposure factors (copying handbook)',
    place: 'magnification against extension and exposure',
  },
  'pupil-magnification': {
    kind: 'derived',
    title: 'Derived from the thin lens with pupil magnification: the cone to the image spreads by 1 + m/p',
  },
  'configuration-factors': {
    kind: 'published',
    title: "Siegel and Howell; Howell's catalogue of configuration factors, B-3",
    place: 'surface element to a rectangle and to a disc',
  },
  'filter-table': {
    kind: 'published',
    title: 'Filter factor and neutral-density filter, encyclopaedia articles',
    place: 'tables of factor, density, stops and transmission',
  },
  'density-definition': {
    kind: 'published',
    title: 'Optical density: decimal logarithm of opacity (ISO 5, by its definition)',
  },
  'guide-numbers': {
    kind: 'published',
    title: 'Guide number, encyclopaedia article, and camera manuals (makers not named)',
    place: 'worked examples',
  },
  'adding-light': {
    kind: 'derived',
    title: 'Derived: light adds, and exposure goes with the square of the f-number',
  },
  'geometric-mean': {
    kind: 'derived',
    title: 'Derived: mean and sample standard deviation of log2 readings',
  },
  evenness: {
    kind: 'published',
    title: 'FADGI Technical Guidelines for Digitizing Cultural Heritage Materials, 2016',
    place: 'illuminance non-uniformity',
  },
  'free-fall': {
    kind: 'published',
    title: 'Standard gravity, 3rd General Conference on Weights and Measures, 1901; free fall of a body',
  },
  kinematics: { kind: 'derived', title: 'Derived: smear is speed times time times magnification' },
  'exponential-decay': { kind: 'derived', title: 'Derived from an exponential decay of the light' },
  'duration-table': { kind: 'derived', title: "Derived: logarithmic interpolation in the head's own table" },
  'common-practice': { kind: 'common practice', title: 'Common practice, no source' },
});
export type SourceKey = keyof typeof SOURCES;
