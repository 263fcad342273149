/** A place on paper: pixels to the right and downwards from the top left corner. */
export type Spot = readonly [x: number, y: number];

/** What a line stands for; each is told from the others without colour. */
export type LineStyle =
  | 'frame'
  | 'front'
  | 'arrow'
  | 'aim'
  | 'field'
  | 'fieldWidth'
  | 'axis'
  | 'sensor'
  | 'surface'
  | 'image'
  | 'highlight'
  | 'hatch'
  | 'ray'
  | 'leader'
  | 'level'
  | 'mark'
  | 'scale';

export interface Line {
  readonly kind: 'line';
  readonly style: LineStyle;
  readonly spots: readonly Spot[];
  readonly isClosed: boolean;
}

export interface Dot {
  readonly kind: 'dot';
  readonly at: Spot;
  readonly radius: number;
  readonly isFilled: boolean;
}

/** A line of words; its place is where the foot of the letters begins. */
export interface Words {
  readonly kind: 'words';
  readonly at: Spot;
  readonly text: string;
  readonly size: number;
  readonly isBold: boolean;
}

/** A piece of blank paper, on which a label is read where lines go through it. */
export interface Blank {
  readonly kind: 'blank';
  readonly box: Box;
}

export type Shape = Line | Dot | Words | Blank;

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A label that has its place: of a light, or of something else. */
export interface PlacedLabel {
  readonly box: Box;
  readonly lines: readonly string[];
  /** Which of the lights it names. */
  readonly light: number | undefined;
  /** What it names. */
  readonly anchor: Spot;
  /** Whether a line leads to it. */
  readonly isApart: boolean;
}

/** One view, in its frame. */
export interface DrawnView {
  readonly frame: Box;
  readonly labels: readonly PlacedLabel[];
}

/** The picture of a set, ready for paper. */
export interface SetPicture {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
  readonly plan: DrawnView;
  readonly side: DrawnView;
  /** Pixels that a metre is long, in both views. */
  readonly scale: number;
  /** Whether lights stand with numbers, and their words in a key below. */
  readonly isNumbered: boolean;
}
