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
    place: 'tables for each kind of original: illuminance non-uniformity below 8, 5, 3 and 1 %',
  },
  'evenness-formula': {
    kind: 'derived',
    title: 'Defined here as what the lowest light of the field lacks, as a share of the highest',
  },
  'free-fall': {
    kind: 'published',
    title: 'Standard gravity, 3rd General Conference on Weights and Measures, 1901; free fall of a body',
  },
  kinematics: { kind: 'derived', title: 'Derived: smear is speed times time times magnification' },
  'exponential-decay': { kind: 'derived', title: 'Derived from an exponential decay of the light' },
  'pulse-shapes': {
    kind: 'derived',
    title:
      'Derived from the closed forms of standard pulse shapes: exponential, Gaussian, half sine, trapezoid',
  },
  'trace-doubts': {
    kind: 'derived',
    title: 'Derived: each doubt is found in a recording made to have it, and in no clean one',
  },
  'least-squares': {
    kind: 'memory',
    title: 'Lawson and Hanson, Solving Least Squares Problems, 1974: non-negative least squares',
    place: 'chapter 23',
  },
  'rounded-readings': {
    kind: 'derived',
    title: 'Derived: readings rounded to a tenth of a stop, simulated thousands of times',
  },
  'every-pattern': {
    kind: 'derived',
    title: 'Derived: every pattern for up to five heads was tried, and none is surer',
  },
  'every-plan': {
    kind: 'derived',
    title:
      'Derived: every plan of small jobs was tried, and larger ones given to an integer-programming library',
  },
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
  'airy-zero': {
    kind: 'derived',
    title: 'Derived from the first zero of the Bessel function J1 (2.4393, commonly 2.44)',
  },
  'flash-duration-article': {
    kind: 'published',
    title: 'Article on flash duration that quotes the definitions of ISO 2827',
    place: 't0.5 and t0.1 as the time at or above half and a tenth of the peak',
  },
  'flash-manual': {
    kind: 'published',
    title: 'Studio flash user manual (maker not named), chapter on flash duration',
    place: 'the 1/10 duration is up to three times the 1/2 duration',
  },
  'reciprocity-exponents': {
    kind: 'published',
    title: "Reciprocity data sheet of a film (maker not named), as quoted on a dealer's page",
    place: 'Tc = Tm^P above 1 s; 10 s at P = 1.31; list of exponents',
  },
  'army-copying': {
    kind: 'published',
    title: 'US Army subcourse SS0512',
    place: 'page 44: an original of 12 inches copied at 8 inches has the factor 2.8',
  },
  'army-hyperfocal': {
    kind: 'published',
    title: 'US Army subcourse SS0507',
    place: 'learning event 10: lens of 50 mm (2 in) at f/8, blur circle 0.002 in',
  },
  'navy-depth': {
    kind: 'published',
    title: 'NAVEDTRA 14209, Photography (Basic), US Navy training course',
    place: 'depth of field: 155 mm lens at f/2.8, focused at 10 ft',
  },
  'hyperfocal-posting': {
    kind: 'published',
    title: 'Mailing-list posting that derives the exact hyperfocal distance',
    place: 'H = f²/(N·c) + f',
  },
  'hyperfocal-textbook': {
    kind: 'published',
    title: 'Mailing-list posting that quotes a photography textbook of 1979',
    place: '70 mm lens, blur circle 0.021 mm: hyperfocal distance at f/8 and f/22',
  },
  'exif-depth': {
    kind: 'published',
    title: 'Test files of an open metadata library at a named commit',
    place:
      'circle of confusion and hyperfocal distance of recorded exposures; formulas of the depth of field',
  },
  'blur-circle-paper': {
    kind: 'published',
    title: 'Paper "Depth of Field Outside the Box", draft of 2006-04-04',
    place: 'abstract: 1/1500 of the image diagonal',
  },
  'blur-circle-table': {
    kind: 'published',
    title: 'Web page on depth of field in medium format',
    place: 'table of circles of confusion by format',
  },
  'effective-aperture-post': {
    kind: 'published',
    title: 'Forum post on the effective f-number with pupil magnification',
    place: 'N·(1 + m/p), lens the right way round',
  },
  'airy-table': {
    kind: 'published',
    title: 'Application note "Limitations on resolution and contrast: the Airy disk"',
    place: 'table of Airy disc diameters at 520 nm',
  },
  'airy-formula': {
    kind: 'published',
    title: 'Formula repository: spot image size from the f-number',
    place: 'd = 2·j(1,1)·N·λ/π',
  },
  'telescope-posting': {
    kind: 'published',
    title: 'Mailing-list posting on diffraction in a telescope of 5 m',
    place: 'radius 0.0022 mm at f/3.3 and 550 nm',
  },
  'focus-spread-table': {
    kind: 'published',
    title: 'How to select the f-stop, page on large-format photography',
    place: 'table of focus spread in mm against f-stop with tenths',
  },
  'focus-spread-rules': {
    kind: 'memory',
    title: 'View-camera focusing in practice, magazine article of 1996, and a later form of its rule',
    place: 'N = √(375·D); N = 20·√D/(1 + m); from memory, not opened',
  },
  'focus-stacking': {
    kind: 'published',
    title: 'Macro forum thread "Focus stacking steps", 2011',
    place: 'step = 2·c·N·(m + 1)/m² with c = 0.015 mm',
  },
  'frame-count': {
    kind: 'derived',
    title: 'Derived by counting: with both ends exposed, one frame more than there are steps',
  },
  'hinge-rule': {
    kind: 'published',
    title: 'Technical article on the focusing rules of tilting cameras',
    place: 'α = arcsin(f/J); shortcut: degrees = mm of focal length / (5 × ft of J)',
  },
  'hinge-animation': {
    kind: 'published',
    title: 'Lens tilt animation, web page',
    place: 'hinge line at focal length / sin θ',
  },
  mired: {
    kind: 'published',
    title: 'Mired, encyclopaedia article',
    place: 'sections Examples, and Photographic filter and gel',
  },
  'mired-german': {
    kind: 'published',
    title: 'Mired, German encyclopaedia article',
    place: 'full orange from 6500 to 3200 K is 159',
  },
  'mired-manual': {
    kind: 'published',
    title: 'Camera reference manual (maker not named), tip on the mired',
    place: 'page 282: 4000 and 3000 K differ by 83, 7000 and 6000 K by 24',
  },
  'mired-glossary': {
    kind: 'published',
    title: 'Photographic glossary, entry "mired"',
    place: '5500 K film in 3400 K light needs −112',
  },
  'filter-series': {
    kind: 'memory',
    title: 'Handbook of filters for photography (maker not named)',
    place: 'tables of conversion and light-balancing filters; from memory, not opened',
  },
  'breaker-forum': {
    kind: 'published',
    title: 'Forum thread on the continuous-load rule of the US National Electrical Code',
    place: 'items 5 to 9: breakers of 15 and 20 A at 120 V',
  },
  'flash-capacitor': {
    kind: 'published',
    title: 'Physics worked problem: camera flash capacitor',
    place: '1000 µF at 300 V: 45 J in 1 ms is 45 kW',
  },
  'certified-statistics': {
    kind: 'memory',
    title: 'NIST Statistical Reference Datasets, univariate summary statistics',
    place: 'NumAcc1, NumAcc2 and NumAcc3: certified mean and standard deviation; from memory, not opened',
  },
  'charging-assumptions': {
    kind: 'memory',
    title: 'Efficiency and power factor of a simple charger: assumptions',
  },
  'common-practice': { kind: 'common practice', title: 'Common practice, no source' },
});
export type SourceKey = keyof typeof SOURCES;
