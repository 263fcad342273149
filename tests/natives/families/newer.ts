import type { Draws } from '../../hostile/draws';
import { element, type Family, older, substituted } from '../asked';
import { COMPARISONS, digits, quoted } from '../expressions';

/** Where the first value that is alike in kind and content stands, by functions that know no patterns. */
const place = (value: string, cells: string): string =>
  `MATCH(1,(${cells}=${value})*(ISTEXT(${cells})=ISTEXT(${value}))*(1-ISBLANK(${cells})),0)`;

const COLUMNS = [
  ['H1:H6', ['1', '5.0', '"5"', '6', '11', '.5', '9']],
  ['D1:D6', ['"Grid"', '"softbox"', '"S*"', '"none"', '"?rid"', 'D2']],
  ['J1:J6', ['"a*"', '"a?c"', '"abc"', '"~x"', '"~~x"', '"*"', '"ABC"']],
  ['E1:E6', ['8', '5.60', '16.0', '"8"', '1.1E1', '99']],
  ['L4:L5', ['0', '1', '"0"', '"1"', '1.0']],
] as const;

/** XLOOKUP and XMATCH, exactly. */
export const exact: Family = (draw) => {
  const [cells, values] = draw.pick(COLUMNS);
  const value = draw.pick(values);
  const from = cells.startsWith('L') ? 'M4:M5' : draw.pick(['M1:M6', 'I1:I6', 'N1:N6']);
  const there = place(value, cells);
  return draw.pick([
    older(`XLOOKUP(${value},${cells},${from})`, `INDEX(${from},${there})`),
    older(`XLOOKUP(${value},${cells},${from},"not here")`, `IFERROR(INDEX(${from},${there}),"not here")`),
    older(`XMATCH(${value},${cells})`, there),
    older(`IFERROR(XMATCH(${value},${cells},0),0)`, `IFERROR(${there},0)`),
    older(`XLOOKUP(${value},${cells},${from},0)*2`, `IFERROR(INDEX(${from},${there}),0)*2`),
  ]);
};

/** XLOOKUP and XMATCH with the next smaller, the next larger, patterns, from the end. */
export const nearest: Family = (draw) => {
  const value = draw.pick(['1', '4', '6.50', '8', '11', '.5', '12', '7.0']);
  const cells = draw.pick(['E1:E6', 'H1:H6', 'I1:I6']);
  const below = `MATCH(MAX(IF(${cells}<=${value},${cells})),${cells},0)`;
  const above = `MATCH(MIN(IF(${cells}>=${value},${cells},1E9)),${cells},0)`;
  const pattern = draw.pick(['"S*"', '"*x"', '"?rid"', '"z*"', '"Beauty*"', '"*o*"']);
  const word = draw.pick(['"softbox"', '"Grid"']);
  return draw.pick([
    older(`XMATCH(${value},${cells},-1)`, below),
    older(`XMATCH(${value},${cells},1)`, above),
    older(`XLOOKUP(${value},${cells},M1:M6,"no",-1)`, `IFERROR(INDEX(M1:M6,${below}),"no")`),
    older(`XLOOKUP(${value},${cells},M1:M6,"no",1)`, `IFERROR(INDEX(M1:M6,${above}),"no")`),
    older(`XLOOKUP(${pattern},D1:D6,E1:E6,"no",2)`, `IFERROR(INDEX(E1:E6,MATCH(${pattern},D1:D6,0)),"no")`),
    older(`XMATCH(${pattern},D1:D6,2)`, `MATCH(${pattern},D1:D6,0)`),
    older(`XLOOKUP(${word},D1:D6,M1:M6,,0,-1)`, `LOOKUP(2,1/(D1:D6=${word}),M1:M6)`),
  ]);
};

/** FILTER by a condition, and what is left where nothing passes. */
export const filtered: Family = (draw) => {
  const cells = draw.pick(['E1:E6', 'H1:H6', 'M1:M6']);
  const condition = draw.pick([
    `${cells}${draw.pick(COMPARISONS)}${digits(draw)}`,
    `${cells}>${draw.pick(['4.0', '5.60', '.5', '1E1'])}`,
    'D1:D6="softbox"',
    'D1:D6<>"Grid"',
    'LEFT(D1:D6,1)="S"',
    `(${cells}>4.0)*(D1:D6="softbox")`,
    'J1:J6="a*"',
    'J1:J6="abc"',
  ]);
  const none = (answer: string, otherwise: string) =>
    `IF(SUMPRODUCT(--(${condition}))=0,${otherwise},${answer})`;
  const chosen = `IF(${condition},${cells})`;
  const k = draw.whole(1, 3);
  return draw.pick([
    older(`SUM(FILTER(${cells},${condition},0))`, `SUM(IF(${condition},${cells},0))`),
    older(`MAX(FILTER(${cells},${condition},-1))`, none(`MAX(${chosen})`, '-1')),
    older(`ROWS(FILTER(${cells},${condition},0))`, none(`SUMPRODUCT(--(${condition}))`, '1')),
    older(
      `TEXTJOIN(",",TRUE,FILTER(D1:D6,${condition},"none"))`,
      none(`TEXTJOIN(",",TRUE,IF(${condition},D1:D6,""))`, '"none"'),
    ),
    older(
      `IFERROR(INDEX(FILTER(${cells},${condition},"x"),${k}),"less")`,
      none(
        `IFERROR(INDEX(${cells},SMALL(IF(${condition},ROW(${cells})),${k})),"less")`,
        k === 1 ? '"x"' : '"less"',
      ),
    ),
    older(`AVERAGE(FILTER(${cells},${condition},0))`, none(`AVERAGE(${chosen})`, '0')),
    older(`COUNT(FILTER(${cells},${condition},"none"))`, `SUMPRODUCT(--(${condition}))`),
  ]);
};

/** UNIQUE, SORT and SORTBY, whatever the case of the letters. */
export const sorted: Family = (draw) => {
  const k = draw.whole(1, 6);
  const numbers = draw.pick(['E1:E6', 'M1:M6', 'H1:H6', 'C1:C6']);
  const texts = draw.pick(['D1:D6', 'D1:D5', 'D2:D6']);
  const only = (cells: string) => `MATCH(${cells},${cells},0)=ROW(${cells})-MIN(ROW(${cells}))+1`;
  const ranks = `(COUNTIF(${texts},"<"&${texts})*100+ROW(${texts}))`;
  const by = draw.pick(['E1:E6', 'M1:M6']);
  const up = `(${by}*1000+ROW(${by}))`;
  const down = `(${by}*1000-ROW(${by}))`;
  const count = Math.min(k, 5);
  return draw.pick([
    older(`ROWS(UNIQUE(${texts}))`, `SUM(--(${only(texts)}))`),
    older(`ROWS(UNIQUE(${numbers}))`, `SUM(--(${only(numbers)}))`),
    older(`SUM(UNIQUE(${numbers}))`, `SUM(IF(${only(numbers)},${numbers},0))`),
    older(`TEXTJOIN(",",TRUE,UNIQUE(${texts}))`, `TEXTJOIN(",",TRUE,IF(${only(texts)},${texts},""))`),
    older(
      `IFERROR(INDEX(UNIQUE(D1:D6),${k}),"less")`,
      `IFERROR(INDEX(D1:D6,SMALL(IF(${only('D1:D6')},ROW(D1:D6)),${k})),"less")`,
    ),
    older(`COUNTA(UNIQUE(D1:D6,FALSE,TRUE))`, `SUMPRODUCT(--(COUNTIF(D1:D6,D1:D6)=1))`),
    older(`INDEX(SORT(${numbers}),${k})`, `SMALL(${numbers},${k})`),
    older(`INDEX(SORT(${numbers},1,-1),${k})`, `LARGE(${numbers},${k})`),
    older(`INDEX(SORT(${texts}),${count})`, `INDEX(${texts},MATCH(SMALL(${ranks},${count}),${ranks},0))`),
    older(
      `INDEX(SORT(D1:E6),${k},2)`,
      `INDEX(E1:E6,MATCH(SMALL((COUNTIF(D1:D6,"<"&D1:D6)*100+ROW(D1:D6)),${k}),(COUNTIF(D1:D6,"<"&D1:D6)*100+ROW(D1:D6)),0))`,
    ),
    older(`INDEX(SORTBY(D1:D6,${by}),${k})`, `INDEX(D1:D6,MATCH(SMALL(${up},${k}),${up},0))`),
    older(`INDEX(SORTBY(I1:I6,${by},-1),${k})`, `INDEX(I1:I6,MATCH(LARGE(${down},${k}),${down},0))`),
    older(
      `TEXTJOIN(",",TRUE,SORT(UNIQUE(${numbers})))`,
      `TEXTJOIN(",",TRUE,IFERROR(SMALL(IF(${only(numbers)},${numbers}),{1,2,3,4,5,6}),""))`,
    ),
  ]);
};

/** One element, or a sum, of a list that SEQUENCE makes. */
export const sequences: Family = (draw) => {
  const [rows, columns] = [draw.whole(1, 5), draw.whole(1, 4)];
  const [from, by] = [
    draw.pick(['1', '0', '1.50', '-3', '10', 'A1']),
    draw.pick(['1', '2', '.5', '-1', '1E1']),
  ];
  const [r, c] = [draw.whole(1, rows), draw.whole(1, columns)];
  const at = (r - 1) * columns + c - 1;
  const all = rows * columns;
  return draw.pick([
    element(`INDEX(SEQUENCE(${rows},${columns},${from},${by}),${r},${c})`, `${from}+${at}*${by}`),
    element(
      `SUM(SEQUENCE(${rows},${columns},${from},${by}))`,
      `${all}*${from}+${by}*${(all * (all - 1)) / 2}`,
    ),
    element(`INDEX(SEQUENCE(${rows}),${r})`, `${r}`),
    element(`COUNT(SEQUENCE(${rows},${columns}))`, `${all}`),
    element(`INDEX(DATE(2024,SEQUENCE(12),1),${r})`, `DATE(2024,${r},1)`),
    element(`INDEX(SEQUENCE(${rows},${columns},${from})*${by},${r},${c})`, `(${from}+${at})*${by}`),
    element(`INDEX(SUM(E1:E6)/SEQUENCE(${rows}),${r})`, `SUM(E1:E6)/${r}`),
    element(`INDEX(MAKEARRAY(${rows},${columns},LAMBDA(r,c,r*${by}+c)),${r},${c})`, `${r}*${by}+${c}`),
    element(`INDEX(2^SEQUENCE(1,${columns},0),1,${c})`, `2^${c - 1}`),
  ]);
};

/** Parts of ranges, and ranges one beside or below the other. */
export const parts: Family = (draw) => {
  const [k, n] = [draw.whole(1, 5), draw.whole(1, 6)];
  const letter = draw.pick(['E', 'H', 'M', 'I']);
  const cells = `${letter}1:${letter}6`;
  const other = draw.pick(['H1:H3', 'N1:N4']);
  const more = other === 'H1:H3' ? 3 : 4;
  const stacked = draw.whole(1, 6 + more);
  return draw.pick([
    older(`SUM(TAKE(${cells},${k}))`, `SUM(${letter}1:${letter}${k})`),
    older(`SUM(TAKE(${cells},-${k}))`, `SUM(${letter}${7 - k}:${letter}6)`),
    older(`SUM(DROP(${cells},${k}))`, `SUM(${letter}${k + 1}:${letter}6)`),
    older(`SUM(DROP(${cells},-${k}))`, `SUM(${letter}1:${letter}${6 - k})`),
    older(
      `INDEX(VSTACK(${cells},${other}),${stacked})`,
      stacked <= 6 ? `${letter}${stacked}` : `INDEX(${other},${stacked - 6})`,
    ),
    older(`SUM(VSTACK(${cells},${other}))`, `SUM(${cells},${other})`),
    older(`INDEX(HSTACK(${cells},N1:N6),${n},1)`, `${letter}${n}`),
    older(`INDEX(HSTACK(${cells},N1:N6),${n},2)`, `N${n}`),
    older(`INDEX(TOCOL(H1:I6),${n})`, `INDEX(H1:I6,INT((${n}-1)/2)+1,MOD(${n}-1,2)+1)`),
    older(`INDEX(TOROW(H1:I6),1,${n})`, `INDEX(H1:I6,INT((${n}-1)/2)+1,MOD(${n}-1,2)+1)`),
    older(`SUM(CHOOSECOLS(H1:I6,2))`, 'SUM(I1:I6)'),
    older(`SUM(CHOOSECOLS(H1:I6,-1))`, 'SUM(I1:I6)'),
    older(`SUM(CHOOSEROWS(H1:I6,${n},1))`, `SUM(H${n}:I${n},H1:I1)`),
    older(`INDEX(WRAPROWS(${cells},2),1,2)`, `${letter}2`),
    older(`INDEX(WRAPROWS(${cells},2),3,1)`, `${letter}5`),
    older(`SUM(IFERROR(EXPAND(${cells},${6 + k}),${k}))`, `SUM(${cells})+${k * k}`),
    older(`INDEX(WRAPCOLS(${cells},3),2,2)`, `${letter}5`),
  ]);
};

const BODIES: readonly ((x: string, y: string) => string)[] = [
  (x, y) => `${x}+${y}*2`,
  (x, y) => `IF(${x}>${y},${x}-${y},${y}-${x})`,
  (x, y) => `ROUND(${x}/${y},2)`,
  (x, y) => `${x}&"/"&${y}`,
  (x) => `-${x}^2`,
  (x, y) => `IF(${x}=${y},"same",-${x})`,
  (x, y) => `MAX(${x},${y})*1.50`,
  (x, y) => `${x}*${x}-${y}%`,
  (x, y) => `(${x}>4.0)*${y}`,
];

/** LET, LAMBDA and their kin, with the values in the place of the names. */
export const named: Family = (draw) => {
  const [x, y] = draw.times(2, () =>
    draw.pick(['5', '2.5', 'A1', 'E1', '1.50', 'SUM(E1:E6)', '(A1+1)', '.5', '19.99', 'MAX(H1:H6)']),
  );
  const [one = '1', other = '1'] = [x, y];
  const body = draw.pick(BODIES);
  const cells = draw.pick(['E1:E6', 'H1:H6', 'M1:M4']);
  const factor = digits(draw);
  const each = draw.pick<readonly [string, string]>([
    [`x*${factor}`, `${cells}*${factor}`],
    [`IF(x>5,x,0)`, `IF(${cells}>5,${cells},0)`],
    ['x^2', `${cells}^2`],
    ['-x', `-${cells}`],
    [`ROUND(x/3,1)`, `ROUND(${cells}/3,1)`],
  ]);
  return draw.pick([
    substituted(`LET(x,${one},y,${other},${body('x', 'y')})`, body(`(${one})`, `(${other})`)),
    substituted(
      `LET(net,${one},rate,${other},gross,net*(1+rate),gross-net)`,
      `(${one})*(1+(${other}))-(${one})`,
    ),
    substituted(`LET(x,${one},LET(y,x+1,${body('x', 'y')}))`, body(`(${one})`, `((${one})+1)`)),
    substituted(`LAMBDA(x,y,${body('x', 'y')})(${one},${other})`, body(`(${one})`, `(${other})`)),
    substituted(`SUM(MAP(${cells},LAMBDA(x,${each[0]})))`, `SUM(${each[1]})`),
    substituted(
      `REDUCE(${one},${cells},LAMBDA(a,x,a+${each[0]}))`.replace('+-x', '+(-x)'),
      `(${one})+SUM(${each[1]})`,
    ),
    substituted(`INDEX(BYROW(H1:I6,LAMBDA(r,SUM(r)*${factor})),2)`, `SUM(H2:I2)*${factor}`),
    substituted(`INDEX(BYCOL(H1:I6,LAMBDA(c,MAX(c)*${factor})),1,2)`, `MAX(I1:I6)*${factor}`),
    substituted(`INDEX(SCAN(0,${cells},LAMBDA(a,x,a+x)),3)`, `SUM(${cells.slice(0, 4)}3)`),
    substituted(`LET(t,E1:E6,SUM((t>${factor})*t))`, `SUM((E1:E6>${factor})*E1:E6)`),
  ]);
};

const splitAt = (text: string, by: string, k: number): string =>
  `TRIM(MID(SUBSTITUTE(${text},${by},REPT(" ",99)),${(k - 1) * 99 + 1},99))`;

/** Pieces of texts between signs. */
export const pieces: Family = (draw) => {
  const [text, by] = draw.pick([
    ['B4', '"-"'],
    ['"f/8 f/11 f/16"', '" "'],
    ['"1/60"', '"/"'],
    ['"ISO=100=200"', '"="'],
    ['B10', '" "'],
  ] as const);
  const k = draw.whole(1, 2);
  return draw.pick([
    older(`TEXTBEFORE(${text},${by})`, `LEFT(${text},FIND(${by},${text})-1)`),
    older(`TEXTAFTER(${text},${by})`, `MID(${text},FIND(${by},${text})+1,99)`),
    older(`INDEX(TEXTSPLIT(${text},${by}),1,${k})`, splitAt(text, by, k)),
    older(`TEXTBEFORE(${text},"#",,,,"none")`, '"none"'),
    older(`IFERROR(TEXTAFTER(${text},"#"),"none")`, `IFERROR(MID(${text},FIND("#",${text})+1,99),"none")`),
    older(`COLUMNS(TEXTSPLIT(${text},${by}))`, `LEN(${text})-LEN(SUBSTITUTE(${text},${by},""))+1`),
    older(`SUM(--TEXTSPLIT(${quoted('1.50,.5,1E1')},","))`, '1.50+.5+1E1'),
  ]);
};

/** Truth values stay truth values in texts, where LibreOffice has numbers. */
const shownTruth = (draw: Draws): readonly [string, string] =>
  draw.pick([
    ['TRUE', '"TRUE"'],
    ['FALSE', '"FALSE"'],
    ['A7', '"TRUE"'],
    ['(A1>4.0)', '"TRUE"'],
    ['(1=2)', '"FALSE"'],
    ['ISTEXT(A6)', '"TRUE"'],
  ] as const);
export const truthTexts: Family = (draw) => {
  const [given, shown] = shownTruth(draw);
  return draw.pick([
    older(`CONCAT("a",${given})`, `CONCAT("a",${shown})`),
    older(`${given}&"x"`, `${shown}&"x"`),
    older(`TEXTJOIN("-",TRUE,"a",${given})`, `TEXTJOIN("-",TRUE,"a",${shown})`),
    older(`LEN(${given})`, `LEN(${shown})`),
    older(`LEFT(${given},2)`, `LEFT(${shown},2)`),
    older(`UPPER(${given})`, `UPPER(${shown})`),
    older(`REPT(${given},2)`, `REPT(${shown},2)`),
  ]);
};
