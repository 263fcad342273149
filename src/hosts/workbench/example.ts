import {
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  type ICellData,
  type IStyleData,
  type IWorkbookData,
  LocaleType,
  VerticalAlign,
} from '@univerjs/core';
import { PALETTE } from './palette';

const F_NUMBER = '"f/"0.0';
const F_MARK = '"f/"General';
const STOPS = '+0.0" stops";-0.0" stops";0.0" stops"';
const LOSS = '0.0" stops"';
const POWER = '0" Ws"';
const DISTANCE = '0.0" m"';
const LENS = '0" mm"';
const POPS = '0" pops"';
const SHARE = '0%';

const bold: IStyleData = { bl: BooleanNumber.TRUE };
const below = (style: BorderStyleTypes, rgb: string): IStyleData => ({
  bd: { b: { s: style, cl: { rgb } } },
});
const right = { ht: HorizontalAlign.RIGHT, pd: { r: 8 } };
const left = { ht: HorizontalAlign.LEFT, pd: { l: 8 } };
const colour = (rgb: string): IStyleData => ({ cl: { rgb } });

const ink = colour(PALETTE.ink);
const title: IStyleData = { ...bold, ...left, ...ink, fs: 17 };
const section: IStyleData = { ...bold, ...left, ...ink, fs: 12 };
const headFirst: IStyleData = { ...left, ...colour(PALETTE.quiet), bg: { rgb: PALETTE.slate } };
const head: IStyleData = { ...headFirst, ...right };
const label: IStyleData = { ...left, ...ink, ...below(BorderStyleTypes.THIN, PALETTE.line) };
const hint: IStyleData = { ...left, ...colour(PALETTE.quiet) };
const dotted = below(BorderStyleTypes.DOTTED, PALETTE.inputLine);
const typed: IStyleData = { ...right, ...ink, ...dotted, it: BooleanNumber.TRUE, bg: { rgb: PALETTE.input } };
const found: IStyleData = {
  ...right,
  ...bold,
  ...colour(PALETTE.glaze),
  ...below(BorderStyleTypes.THIN, PALETTE.line),
};

/** Without padding: the grid's editor would wrap a long formula too early. */
const tryHere: IStyleData = { ...dotted, bg: { rgb: PALETTE.input } };

const text = (v: string, s: IStyleData): ICellData => ({ v, s });
/** What a person types: filled, in italics, over a dotted line. */
const input = (v: number, pattern: string): ICellData => ({ v, s: { ...typed, n: { pattern } } });
/** What the sheet finds: bold, in teal, without a fill. Without a formula the cell is filled by the one above. */
const result = (pattern: string, f?: string): ICellData => ({
  ...(f ? { f } : {}),
  s: { ...found, n: { pattern } },
});
const heads = (first: string, ...others: string[]): ICellData[] => [
  text(first, headFirst),
  ...others.map((v) => text(v, head)),
];

const NONE: ICellData = {};
const ROWS: readonly (readonly ICellData[])[] = [
  [text('Slate & Glaze: glazed vessels on slate', title)],
  [
    text('A worked example. Change what you like; Ctrl+Z takes it back.', hint),
    NONE,
    NONE,
    NONE,
    text('you type', typed),
    text('it answers', found),
  ],
  [],
  [text('What each light does', section)],
  heads('Head', 'Set to', 'Reads alone', 'Share of light', 'From the key'),
  [
    text('Alder 600', label),
    input(300, POWER),
    input(16, F_MARK),
    result(SHARE, '=SWEEP.LIGHTSHARE(C6:C8)'),
    fromKey(6),
  ],
  [text('Birch 1200', label), input(400, POWER), input(11, F_MARK), result(SHARE), fromKey(7)],
  [text('Hazel 400', label), input(200, POWER), input(8, F_MARK), result(SHARE), fromKey(8)],
  [text('All together', label), NONE, result(F_NUMBER, '=SWEEP.LIGHTSUM(C6:C8)')],
  [],
  [text('How many pops for f/45, through the bellows', section)],
  heads(
    'Frame',
    'One pop reads',
    'Wanted',
    'Focal length',
    'Bellows draw',
    'Light lost',
    'Pops needed',
    'At the film',
  ),
  [
    text('Tall vase', label),
    result(F_NUMBER, '=C9'),
    input(45, F_MARK),
    input(120, LENS),
    input(150, LENS),
    result(LOSS, '=SWEEP.BELLOWSLOSS(D13,E13)'),
    result(POPS, '=SWEEP.POPSFORTARGET(B13,C13,,,D13,E13)'),
    result(F_NUMBER, '=SWEEP.POPSREADING(B13,G13,,D13,E13)'),
  ],
  [],
  [text('Same light from a new distance', section)],
  heads('Head', 'Set to', 'Stands at', 'Moves to', 'Least', 'Most', 'New setting'),
  [text('Birch 1200', label), ...moved(17, [400, 1.5, 2.1, 25, 1200])],
  [
    text('Hazel 400', label),
    ...moved(18, [200, 0.8, 2, 12, 400]),
    text('On purpose: rest the pointer on it to read why.', hint),
  ],
  [],
  [text('Try this', section)],
  [text('Type =SWEEP. here:', label), { s: tryHere }, text('Then pick a function.', hint)],
];

function fromKey(row: number): ICellData {
  return result(STOPS, `=SWEEP.STOPDIFF($C$6,C${row})`);
}

function moved(
  row: number,
  [power, near, far, least, most]: readonly [number, number, number, number, number],
): ICellData[] {
  return [
    input(power, POWER),
    input(near, DISTANCE),
    input(far, DISTANCE),
    input(least, POWER),
    input(most, POWER),
    result(POWER, `=SWEEP.POWERFORDISTANCE(B${row},C${row},D${row},,,E${row},F${row})`),
  ];
}

const byNumber = <T>(list: readonly T[]): Record<number, T> => ({ ...list });

/** The sheet a newcomer meets: an invented job with answers in it, and one refusal that explains itself. */
export const exampleWorkbook = (): IWorkbookData => ({
  id: 'workbook',
  name: 'Sweeptable',
  appVersion: '0.25.1',
  locale: LocaleType.EN_US,
  styles: {},
  defaultStyle: { ff: 'Arial', fs: 11, vt: VerticalAlign.MIDDLE },
  sheetOrder: ['example'],
  sheets: {
    example: {
      id: 'example',
      name: 'Slate & Glaze',
      tabColor: PALETTE.glaze,
      rowCount: 200,
      columnCount: 20,
      defaultColumnWidth: 112,
      defaultRowHeight: 24,
      columnData: { 0: { w: 176 } },
      rowData: { 0: { h: 40 } },
      mergeData: [{ startRow: 0, endRow: 0, startColumn: 0, endColumn: 7 }],
      gridlinesColor: '#efece5',
      cellData: byNumber(ROWS.map(byNumber)),
    },
  },
});
