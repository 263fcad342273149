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
  'pupil-magnification': {
    kind: 'derived',
    title: 'Derived from the thin lens with pupil magnification: the cone to the image spreads by 1 + m/p',
  },
  'configuration-factors': {
    kind: 'published',
    title:
      'Thermal Radiation Heat Transfer (textbook) and A Catalog of Radiation Heat Transfer Configuration Factors, B-3',
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
  'rounded-powers': {
    kind: 'published',
    title: 'Mailing-list posting, 2001-07-16: powers of the square root of 2 rounded to two or three digits',
    place: 'whole posting',
  },
  'iso-standard-speeds': {
    kind: 'memory',
    title: 'ISO 5800, ISO 6 and ISO 2240: table of standard speeds',
    place: 'from memory, not opened',
  },
  'iso-arithmetic': {
    kind: 'published',
    title: 'Film speed: arithmetic and logarithmic, forum article',
    place: 'first post: standard speeds, irregular steps',
  },
  'exif-vocabulary': {
    kind: 'published',
    title: 'Exif vocabulary in RDF',
    place: 'property shutterSpeedValue: the APEX value 4 is 1/16 s',
  },
  'foot-candle-meters': {
    kind: 'published',
    title: 'Forum digest of the paper "Defining K" and of the ASA meter standards, in foot-candle units',
    place: '7680 footcandles at f/16 and 1/ISO s, C = 30',
  },
  'guide-number-article': {
    kind: 'published',
    title: 'Guide number, encyclopaedia article (text of 2007)',
    place: 'section Formula: 80 ft example; speed multipliers 1.4 and 0.7',
  },
  'photo-dictionary': {
    kind: 'published',
    title: 'Photographic dictionary, entry "guide number"',
    place: 'worked example: 45 / 5 m = f/9',
  },
  'digital-camera-manual': {
    kind: 'published',
    title: 'Digital camera user manual, flash chapter (maker not named)',
    place: 'page 190: 51 m or 167 ft at ISO 200; table of ISO multipliers',
  },
  'film-camera-manual': {
    kind: 'published',
    title: 'Film camera user manual, built-in flash chapter (maker not named)',
    place: 'page 68: guide number for ISO 25 to 400; range example',
  },
  'iso-factor-answer': {
    kind: 'published',
    title: 'Photography question-and-answer copy: relation between guide number and ISO',
    place: 'factors 1, 1.4, 2, 2.8, 4 for ISO 100 to 1600',
  },
  'guide-power-answer': {
    kind: 'published',
    title: 'Photography question-and-answer archive, question 82465: guide number and power',
    place: 'guide number 64 at 1/64 power is 8; two such flashes make 11.314',
  },
  'guide-need-answer': {
    kind: 'published',
    title: 'Photography question-and-answer archive, question 29930: guide number needed',
    place: 'guide number 36 m at 4.5 m is f/8; at f/2.8 it takes about 13',
  },
  'guide-course': {
    kind: 'published',
    title: 'College course notes: electronic flash guide number, 2012',
    place: 'table of film speeds 25 to 400',
  },
  'film-data-sheets': {
    kind: 'memory',
    title: 'Film data sheets: table of flash guide numbers against output in beam candlepower seconds',
    place: 'ISO 100 column, from memory, not opened',
  },
  'inverse-square-article': {
    kind: 'published',
    title: 'Some observations of the inverse square law of illumination, trade journal, 2013',
    place: '600 fc at 5 ft gives 150 fc at 10 ft',
  },
  'view-factor-examples': {
    kind: 'published',
    title:
      'Heat-transfer library reference, view factors (cites Siegel and Howell, 4th edition, pages 842 and 843)',
    place: 'worked examples: parallel rectangles; plane element to a parallel rectangle',
  },
  'copying-chapter': {
    kind: 'published',
    title: 'Practical Photography, volume 2, chapter on anastigmat lenses',
    place: 'articles 794 to 797: table of exposures for enlarging and reducing',
  },
  'close-up-appendix': {
    kind: 'published',
    title: 'Advanced Photography (textbook), appendix on close-up exposure increase',
    place: '80 mm lens, magnification 0.5, exposure x 2 1/4',
  },
  'view-camera-arithmetic': {
    kind: 'published',
    title: 'View-camera bellows arithmetic, web page',
    place: 'worked examples',
  },
  'life-size-answer': {
    kind: 'published',
    title: 'Photography question-and-answer archive, question 132240: exposure at life size',
    place: 'magnification 1: factor 4, 1/100 s becomes 1/25 s',
  },
  'lighting-textbook': {
    kind: 'published',
    title: 'Photographic Lighting: Essential Skills',
    place: 'filter factor table: factor, stops, density',
  },
  'filter-factor-article': {
    kind: 'published',
    title: 'Filter factor, encyclopaedia article',
    place: 'table of factor, transmission and stops',
  },
  'nd-article': {
    kind: 'published',
    title: 'Neutral-density filter, encyclopaedia article',
    place: 'table of ND number, density, stops and transmittance',
  },
  'filter-factor-reference': {
    kind: 'published',
    title: 'Photography reference article "The filter factor"',
    place: 'factor 75 taken apart three ways',
  },
  'free-fall-page': {
    kind: 'published',
    title: 'Question-and-answer page on free fall from 16 ft',
    place: 'v² = 95.6, v = 9.78 m/s',
  },
  'portrait-tutorial': {
    kind: 'published',
    title: 'Portrait lighting tutorial',
    place: 'f/11 against f/5.6 is 4:1',
  },
  'ratio-tutorial': {
    kind: 'published',
    title: 'Studio lighting series, light ratios, tutorial',
    place: 'key to fill: 2:1 one stop, 4:1 two stops',
  },
  'two-flashes-blog': {
    kind: 'published',
    title: 'Family photography blog: guide number of two equal flashes',
    place: '41 m x 1.4 = 57 m',
  },
  'worked-apart': {
    kind: 'derived',
    title: 'Worked out apart from this code, to twelve digits, from the formula that the function states',
  },
  'thin-lens': { kind: 'derived', title: 'Derived from the thin-lens equation' },
  'close-up-forum': {
    kind: 'published',
    title: 'Large-format photography page on bellows and close-up',
    place: 'worked examples',
  },
  'depth-of-field': {
    kind: 'published',
    title: 'Depth of field and circle of confusion, encyclopaedia articles',
    place: 'formulas and tables',
  },
  'army-lenses': {
    kind: 'published',
    title: 'US Army and US Navy photography courses',
    place: 'hyperfocal distance, worked examples',
  },
  'airy-table': { kind: 'published', title: 'Table of Airy disc diameters of an optics supplier (520 nm)' },
  'airy-zero': {
    kind: 'derived',
    title: 'Derived from the first zero of the Bessel function J1 (2.4393, commonly 2.44)',
  },
  'best-aperture': {
    kind: 'published',
    title: 'View-camera focusing in practice: focus spread and optimum f-number',
    place: 'table and formula √(375 D)',
  },
  'focus-stacking': { kind: 'published', title: 'Table of step sizes for focus stacking' },
  'hinge-rule': {
    kind: 'published',
    title: 'The hinge rule of view-camera movements',
    place: 'J = f / sin α',
  },
  mired: { kind: 'published', title: 'Mired, encyclopaedia article', place: 'definition and examples' },
  'filter-series': { kind: 'memory', title: 'Shifts of the common conversion and light-balancing filters' },
  electrical: {
    kind: 'published',
    title: 'Mains power, encyclopaedia and code summaries',
    place: 'I = P / V; energy of a capacitor',
  },
  'charging-assumptions': {
    kind: 'memory',
    title: 'Efficiency and power factor of a simple charger: assumptions',
  },
  'reciprocity-exponents': {
    kind: 'published',
    title: 'Reciprocity exponents as quoted from film data sheets (makers not named)',
    place: 'power law above one second',
  },
  'common-practice': { kind: 'common practice', title: 'Common practice, no source' },
});
export type SourceKey = keyof typeof SOURCES;
