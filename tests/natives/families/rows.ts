import { asks, type Family, older } from '../asked';
import { COMPARISONS, digits, anyNumber, numberCell, PLAIN, quoted, SPELT, textCell } from '../expressions';

const signed = (draw: Parameters<Family>[0]) =>
  draw.pick(['', '', '-']) +
  draw.pick([...PLAIN, '7', '8.9', '100', '3.14159', '1250', '2.5', '0.145', '7.5', '1.50', '99.995']);

export const rounding: Family = (draw) => {
  const value = draw.isSo(0.75) ? signed(draw) : draw.pick(['C1', 'C3', 'C4', 'C5', 'C7', 'C8', 'A12', 'E2']);
  const places = draw.whole(-2, 3);
  return asks(
    draw.pick([
      `TRUNC(-${draw.whole(1, 30)})`,
      `TRUNC(${value},${places})`,
      `TRUNC(${value})`,
      `ROUND(${value},${places})`,
      `ROUNDUP(${value},${places})`,
      `ROUNDDOWN(${value},${places})`,
      `INT(${value})`,
      `MROUND(${value.replace('-', '')},${draw.pick(['5', '0.5', '0.25', '3'])})`,
      `CEILING(${value},${draw.pick(['5', '0.5', '3'])})`,
      `FLOOR(${value},${draw.pick(['5', '0.5', '3'])})`,
      `CEILING.MATH(${value},${draw.pick(['5', '0.5'])})`,
      `FLOOR.MATH(${value},${draw.pick(['5', '0.5'])})`,
      `EVEN(${value})`,
      `ODD(${value})`,
      `MOD(${value},${draw.pick(['3', '-3', '0.5', '2.5', '1'])})`,
      `QUOTIENT(${value},${draw.pick(['3', '-2', '7'])})`,
      `ROUND(${anyNumber(draw, 1)},2)`,
      `ROUND(C1*${draw.whole(1, 40)}*1.19,2)`,
    ]),
  );
};

const years = ['2011', '2012', '2016', '2019', '2021', '2022', '2023', '2024', '2028', '2100'];
const day = (draw: Parameters<Family>[0]) =>
  draw.pick([
    `DATE(${draw.pick(years)},${draw.whole(1, 12)},${draw.whole(1, 28)})`,
    `DATE(${draw.pick(years)},${draw.pick(['1,31', '3,31', '2,28', '12,31', '1,1', '8,31', '2,29', '5,31', '1,10', '3,1'])})`,
    `F${draw.whole(1, 6)}`,
    `DATE(${draw.pick(years)},${draw.whole(-3, 15)},${draw.whole(-5, 40)})`,
  ]);

export const dates: Family = (draw) => {
  const one = day(draw);
  const other = day(draw);
  return asks(
    draw.pick([
      one,
      `EDATE(${one},${draw.whole(-14, 14)})`,
      `EDATE(DATE(${draw.pick(years)},${draw.pick(['1', '3', '5', '8', '10', '12'])},31),${draw.whole(-13, 13)})`,
      `EOMONTH(${one},${draw.whole(-14, 14)})`,
      `WEEKDAY(${one}${draw.pick(['', ',1', ',2', ',3', ',11', ',14'])})`,
      `WEEKNUM(${one}${draw.pick(['', ',1', ',2', ',21', ',11'])})`,
      `ISOWEEKNUM(${one})`,
      `ISOWEEKNUM(DATE(${draw.pick(['2011', '2022', '2005', '2028', '2024'])},${draw.whole(1, 12)},${draw.whole(1, 28)}))`,
      `WEEKNUM(DATE(${draw.pick(['2011', '2022', '2005', '2024'])},${draw.whole(1, 12)},${draw.whole(1, 28)}),21)`,
      `YEARFRAC(${one},${other}${draw.pick(['', ',0', ',1', ',2', ',3', ',4'])})`,
      `DATEDIF(MIN(${one},${other}),MAX(${one},${other}),${quoted(draw.pick(['d', 'm', 'y', 'ym', 'yd', 'md'].slice(0, 4)))})`,
      `NETWORKDAYS(${one},${other})`,
      `NETWORKDAYS(${one},${other},F1:F3)`,
      `NETWORKDAYS.INTL(${one},${other},${draw.pick(['1', '2', '7', '11', '"0000011"'])})`,
      `WORKDAY(${one},${draw.whole(-40, 60)})`,
      `WORKDAY(${one},${draw.whole(1, 40)},F1:F3)`,
      `DAYS(${one},${other})`,
      `DAYS360(${one},${other}${draw.pick(['', ',TRUE', ',FALSE'])})`,
      `${draw.pick(['YEAR', 'MONTH', 'DAY'])}(${one})`,
      `${one}-${other}`,
      `TIME(${draw.whole(0, 30)},${draw.whole(0, 90)},${draw.whole(0, 90)})`,
      `${draw.pick(['HOUR', 'MINUTE', 'SECOND'])}(${draw.pick(['0.5', '0.75', '45000.3', 'TIME(13,45,30)', '1.999'])})`,
      `DATEVALUE("${draw.pick(years)}-0${draw.whole(1, 9)}-1${draw.whole(0, 9)}")`,
      `TIMEVALUE("${draw.whole(0, 23)}:${draw.whole(10, 59)}")`,
      `TEXT(${one},${quoted(draw.pick(['yyyy-mm-dd', 'dd/mm/yyyy', 'd mmm yy', 'dddd', 'mmmm', 'ddd', 'm/d/yy']))})`,
    ]),
  );
};

export const years366: Family = (draw) => {
  const from = draw.pick([
    'DATE(2023,8,15)',
    'DATE(2024,2,29)',
    'DATE(2012,2,28)',
    'DATE(2013,2,28)',
    'DATE(2022,12,31)',
    'DATE(2023,1,31)',
    'DATE(2024,1,30)',
    'DATE(2020,1,1)',
  ]);
  return asks(
    `YEARFRAC(${from},EDATE(${from},${draw.whole(1, 30)})+${draw.whole(0, 12)}${draw.pick(['', ',0', ',1', ',4', ',3'])})`,
  );
};

/** Columns chosen by a list of numbers. */
export const choosing: Family = (draw) => {
  const rows = draw.whole(2, 6);
  const [one, other] = draw.pick([
    ['H', 'I'],
    ['E', 'M'],
    ['D', 'E'],
    ['J', 'H'],
    ['I', 'N'],
  ] as const);
  const cells = (letter: string) => `${letter}1:${letter}${rows}`;
  const both = `CHOOSE({1,2},${cells(one)},${cells(other)})`;
  return asks(
    draw.pick([
      `SUM(${both})`,
      `COUNT(${both})`,
      `VLOOKUP(${one}${draw.whole(1, rows)},${both},2,FALSE)`,
      `SUM(CHOOSE(${draw.pick(['1', '2', '3'])},${cells(one)},${cells(other)},N1:N4))`,
      `INDEX(${both},${draw.whole(1, rows)},${draw.pick(['1', '2'])})`,
      `VLOOKUP(${one}${draw.whole(1, rows)},IF({1,0},${cells(one)},${cells(other)}),2,FALSE)`,
      `SUMPRODUCT(CHOOSE({1,2},H1:H3,I1:I3)*2)`,
    ]),
  );
};

/** A list beside a shorter one: what the shorter lacks is #N/A, 100 in its place. */
export const ragged: Family = (draw) => {
  const list = (count: number) => draw.times(count, () => draw.pick(['1', '2', '3', '1.50', '10', '4']));
  const few = draw.whole(2, 3);
  const [long, short] = [list(draw.whole(few + 1, few + 2)), list(few)];
  const sign = draw.pick(['+', '-', '*', '/']);
  const beyond = long.length - few;
  const [one, other] = draw.isSo(0.5) ? [long, short] : [short, long];
  const [above, below] = [draw.whole(2, 3), draw.whole(4, 5)];
  const common = `SUM(${one
    .slice(0, few)
    .map((each, i) => `${each}${sign}${other[i]}`)
    .join(',')})`;
  return draw.pick([
    older(`SUM(IFERROR({${one.join(',')}}${sign}{${other.join(',')}},100))`, `${common}+${beyond * 100}`),
    older(`SUM(IFERROR({${one.join(';')}}${sign}{${other.join(';')}},100))`, `${common}+${beyond * 100}`),
    older(
      `SUM(IFERROR(H1:H${above}${sign}I1:I${below},100))`,
      `SUM(H1:H${above}${sign}I1:I${above})+${(below - above) * 100}`,
    ),
    older(`IFERROR(INDEX({${one.join(',')}}${sign}{${other.join(',')}},1,${long.length}),"none")`, '"none"'),
    older(`COUNT({${one.join(',')}}${sign}{${other.join(',')}})`, `${few}`),
  ]);
};

/** Lists and ranges, element with element. */
export const lengths: Family = (draw) => {
  const list = (count: number) =>
    draw.times(count, () => draw.pick(['1', '2', '3', '1.50', '10', '4'])).join(',');
  const long = draw.whole(2, 4);
  const few = draw.pick([1, long]);
  const sign = draw.pick(['+', '-', '*', '/', '^']);
  const rows = `{${list(long)}}${sign}{${list(few)}}`;
  const last = draw.whole(1, 4);
  const down = `H1:H${last}${sign}I1:I${last}`;
  return asks(
    draw.pick([
      `INDEX(${rows},1,${draw.whole(1, long)})`,
      `SUM(IFERROR(${rows},100))`,
      `COUNT(${rows})`,
      `SUM(IFERROR(${down},100))`,
      `COUNT(${down})`,
      `SUM({1;2;3}${sign}{${list(few)}})`,
      `SUM(H1:H3${sign}{${list(few)}})`,
      `SUMPRODUCT(H1:H3*${digits(draw)},I1:I3)`,
      `SUM((E1:E6${draw.pick(COMPARISONS)}${digits(draw)})*M1:M6)`,
      `SUM(IF(E1:E6${draw.pick(COMPARISONS)}${digits(draw)},M1:M6,0))`,
      `MAX(IF(D1:D6="Softbox",E1:E6))`,
      `SUM(LEN(D1:D6))`,
      `MAX(ABS(C1:C8-${digits(draw)}))`,
      `TEXTJOIN(",",TRUE,IF(E1:E6>${digits(draw)},D1:D6,""))`,
      `SUM(--(LEFT(D1:D6,1)="S"))`,
    ]),
  );
};

const CRITERIA = [
  '">5.60"',
  '"<=8.0"',
  '8',
  '"8.0"',
  '"<>8"',
  '">"&A1',
  '"="&E1',
  'E2',
  '">1E1"',
  '"<>"',
  '">.5"',
  '""',
  '"="',
];
const WORDS = [
  '"softbox"',
  '"S*"',
  '"*x"',
  '"?rid"',
  '"<>Softbox"',
  '"Beauty dish"',
  '"=Grid"',
  '"z"',
  'D1',
  '"<>"',
  '">G"',
  '"*o*"',
  '"<>S*"',
];
const PATTERNS = [
  '"a?c"',
  '"a~?c"',
  '"a*"',
  '"a~*"',
  '"~~x"',
  '"*"',
  '"?"',
  '"abc"',
  '"<>a*"',
  '"???"',
  '"=a*"',
  '"f/*"',
];

export const conditions: Family = (draw) => {
  const [of, which] = draw.pick([
    ['E1:E6', CRITERIA],
    ['D1:D6', WORDS],
    ['J1:J6', PATTERNS],
    ['G1:G6', ['1', '"2"', '2', 'TRUE', '"x"', '">0"', '"*"', '"<>"', '"<>2"']],
    ['L1:L5', ['0', '"0"', '""', '"="', '"<>"', '"<>0"']],
    ['H1:H6', CRITERIA],
  ] as const);
  const [also, whose] = draw.pick([
    ['E1:E6', CRITERIA],
    ['D1:D6', WORDS],
    ['I1:I6', CRITERIA],
  ] as const);
  const [what, other] = [draw.pick(which), draw.pick(whose)];
  const values = of.endsWith('5') ? 'M1:M5' : 'M1:M6';
  const both = of.endsWith('5') ? `${of},${what}` : `${of},${what},${also},${other}`;
  return asks(
    draw.pick([
      `COUNTIF(${of},${what})`,
      `SUMIF(${of},${what},${values})`,
      `SUMIF(${of},${what})`,
      `IFERROR(AVERAGEIF(${of},${what},${values}),"none")`,
      `COUNTIFS(${both})`,
      `SUMIFS(${values},${both})`,
      `IFERROR(AVERAGEIFS(${values},${both}),"none")`,
      `MAXIFS(${values},${both})`,
      `MINIFS(${values},${both})`,
      `MAXIFS(M1:M6,D1:D6,${draw.pick(['"z"', '"Softbox"', '"S*"'])})`,
      `SUMPRODUCT(COUNTIF(${of},${of}))`,
    ]),
  );
};

/** Texts with * ? and ~ where they are patterns, and where they are not. */
export const patterns: Family = (draw) => {
  const cell = `J${draw.whole(1, 6)}`;
  const pattern = draw.pick(PATTERNS.filter((each) => !/[=<>]/.test(each)));
  return asks(
    draw.pick([
      `${draw.pick([cell, '"abc"', 'B1'])}${draw.pick(['=', '<>'])}${pattern}`,
      `SUMPRODUCT(--(J1:J6${draw.pick(['=', '<>'])}${pattern}))`,
      `SUM(IF(D1:D6=${draw.pick(['"*box"', '"S*"', '"Grid"'])},E1:E6,0))`,
      `COUNTIF(J1:J6,${pattern})`,
      `MATCH(${pattern},J1:J6,0)`,
      `VLOOKUP(${draw.pick(['"S*"', '"*d*"', '"?rid"', '"Umb*"'])},D1:E6,2,FALSE)`,
      `VLOOKUP(${pattern},J1:M6,4,FALSE)`,
      `SUMIF(J1:J6,${pattern},M1:M6)`,
      `SEARCH(${draw.pick(['"s*x"', '"o?t"', '"~?"', '"x"', '"B"', '"~~"', '"*"'])},${draw.pick(['"Softbox"', 'D1', 'J2', 'J5', '"what?"'])})`,
      `ISNUMBER(SEARCH(${draw.pick(['"s*x"', '"a?c"', '"~*"'])},${draw.pick([cell, 'D1', 'D2'])}))`,
      `FIND(${draw.pick(['"o"', '"*"', '"?"', '"B"'])},${draw.pick(['"Softbox"', 'D1', 'J2', 'J4'])})`,
      `SUBSTITUTE(${cell},${draw.pick(['"a"', '"*"', '"?"', '"b"'])},"-"${draw.pick(['', ',1', ',2'])})`,
    ]),
  );
};

const AREAS = ['E1:E6', 'H1:H6', 'M1:M6', 'C1:C8', 'I1:I6', 'N1:N6'];
export const statistics: Family = (draw) => {
  const [one, mixed] = [
    draw.pick(AREAS),
    draw.pick(['G1:G6', 'L1:L5', 'A1:A5', 'A10:A12', 'E1:E9', 'D1:E6', 'A6:A8']),
  ];
  const six = draw.pick(['E1:E6', 'H1:H6', 'M1:M6', 'I1:I6']);
  return asks(
    draw.pick([
      `${draw.pick(['SUM', 'AVERAGE', 'MEDIAN', 'STDEV', 'STDEVP', 'VAR', 'VARP', 'STDEV.S', 'STDEV.P', 'VAR.S', 'VAR.P', 'MAX', 'MIN', 'AVEDEV', 'DEVSQ', 'COUNT', 'SUMSQ', 'PRODUCT', 'SKEW', 'KURT'])}(${one})`,
      `${draw.pick(['AVERAGEA', 'MAXA', 'MINA', 'COUNTA', 'COUNT', 'SUM', 'STDEVA', 'VARA', 'VARPA', 'STDEVPA', 'AVERAGE', 'MAX', 'MIN', 'MEDIAN', 'COUNTBLANK'])}(${mixed})`,
      `AVERAGEA(${draw.pick(['G1:G3', 'A8:A8', 'G1:G2', 'L4:L5', 'G5:G6'])})`,
      `${draw.pick(['LARGE', 'SMALL'])}(${one},${draw.whole(1, 4)})`,
      `RANK(${one.slice(0, 1)}${draw.whole(1, 6)},${one}${draw.pick(['', ',0', ',1'])})`,
      `${draw.pick(['PERCENTILE', 'PERCENTILE.INC', 'PERCENTILE.EXC'])}(${one},${draw.pick(['0.25', '.5', '0.90', '0.3'])})`,
      `${draw.pick(['QUARTILE', 'QUARTILE.INC', 'QUARTILE.EXC'])}(${one},${draw.whole(1, 3)})`,
      `MODE(${draw.pick(['E1:E6', 'M1:M6'])})`,
      `${draw.pick(['GEOMEAN', 'HARMEAN'])}(${draw.pick(['E1:E6', 'H1:H6', 'M1:M6'])})`,
      `SUBTOTAL(${draw.pick(['9', '1', '2', '3', '4', '5', '109', '6', '7'])},${one})`,
      `SUMPRODUCT(${six},${draw.pick(['M1:M6', 'H1:H6', 'I1:I6'])})`,
      `SUMPRODUCT((D1:D6="softbox")*(${six}))`,
      `${draw.pick(['CORREL', 'SLOPE', 'INTERCEPT', 'RSQ', 'COVAR', 'COVARIANCE.S'])}(${six},${draw.pick(['N1:N6', 'M1:M6'])})`,
      `FORECAST(${digits(draw)},${six},N1:N6)`,
      `TRIMMEAN(${one},${draw.pick(['0.2', '.4'])})`,
      `SUM(${numberCell(draw)},${digits(draw)},${one})`,
      `${draw.pick(['FACT', 'COMBIN'])}(${draw.whole(3, 9)},2)`.replace(/FACT\((\d),2\)/, 'FACT($1)'),
      `${draw.pick(['GCD', 'LCM'])}(${draw.whole(2, 60)},${draw.whole(2, 60)})`,
      `PERCENTRANK(${draw.pick(['H1:H6', 'I1:I6'])},${draw.pick(['5', '3', '7'])})`,
      `AGGREGATE(${draw.pick(['9,6', '1,6', '4,6', '2,6'])},K1:K4)`,
    ]),
  );
};

export const lookups: Family = (draw) => {
  const number = draw.pick(['1', '5.0', '6', '7', '11', '12', '.5', '8']);
  const word = draw.pick(['"Grid"', '"softbox"', '"Umbrella"', '"none"', 'D2', '"GRID"']);
  return asks(
    draw.pick([
      `VLOOKUP(${number},H1:I6,2${draw.pick(['', ',TRUE', ',FALSE', ',0'])})`,
      `VLOOKUP(${word},D1:I6,${draw.pick(['2', '5', '6'])},FALSE)`,
      `IFERROR(VLOOKUP(${word},D1:E6,2,FALSE),"not here")`,
      `HLOOKUP(${draw.pick(['1', '11', '5'])},H1:I6,${draw.whole(1, 6)},FALSE)`,
      `MATCH(${number},H1:H6${draw.pick(['', ',1', ',0'])})`,
      `MATCH(${number},I1:I6,-1)`,
      `MATCH(${word},D1:D6,0)`,
      `INDEX(E1:E6,MATCH(${word},D1:D6,0))`,
      `INDEX(H1:I6,${draw.whole(1, 6)},${draw.pick(['1', '2'])})`,
      `SUM(INDEX(H1:I6,0,${draw.pick(['1', '2'])}))`,
      `SUM(INDEX(H1:I6,${draw.whole(1, 6)},0))`,
      `LOOKUP(${number},H1:H6,I1:I6)`,
      `LOOKUP(${number},H1:H6)`,
      `LOOKUP(2,1/(D1:D6=${word}),E1:E6)`,
      `SUM(OFFSET(H1,${draw.pick(['0', '1', '2'])},${draw.pick(['0', '1'])},${draw.whole(1, 4)},1))`,
      `SUM(INDIRECT("H1:H"&${draw.whole(1, 6)}))`,
      `${draw.pick(['ROWS', 'COLUMNS'])}(${draw.pick(['H1:I6', 'A1:C8', 'E2'])})`,
      `ROW(${draw.pick(['C7', 'A1'])})+COLUMN(${draw.pick(['D3', 'H1'])})`,
      `ADDRESS(${draw.whole(1, 9)},${draw.whole(1, 30)}${draw.pick(['', ',4', ',2'])})`,
      `SUMPRODUCT((H1:H6>=${number})*(I1:I6))`,
      `VLOOKUP(${draw.pick(['C5', 'E1', 'A1', 'A2', 'A4'])},H1:I6,2)`,
      `COUNTIF(INDEX(D1:E6,0,1),${word})`,
    ]),
  );
};

export const money: Family = (draw) => {
  const rate = draw.pick(['0.06/12', '5%', '.04', '8.0%/12', '0.5%', '0.10', '0']);
  const times = draw.pick(['10', '24', '36', '12', '60', '4.0']);
  const pay = draw.pick(['-200', '-150.50', '-99.99', '300']);
  const now = draw.pick(['800', '-500', '10000', '1E4', '2500', '0']);
  const rated = rate === '0' ? '1%' : rate;
  return asks(
    draw.pick([
      `PMT(${rate},${times},${now}${draw.pick(['', ',0', ',500', ',0,1'])})`,
      `FV(${rate},${times},${pay}${draw.pick(['', ',-500', ',-500,1'])})`,
      `PV(${rate},${times},${pay}${draw.pick(['', ',100', ',0,1'])})`,
      `NPER(${rated},-200,2500${draw.pick(['', ',0', ',100'])})`,
      `RATE(${draw.pick(['24', '36', '12'])},-200,${draw.pick(['3000', '2200', '2000'])})`,
      `IPMT(${rated},${draw.whole(1, 4)},${times},8000)`,
      `PPMT(${rated},${draw.whole(1, 4)},${times},8000)`,
      `NPV(${rated},${draw.pick(['-500,200,300,400', 'M1:M6', '-1000,M1:M6'])})`,
      `IRR({-500,${draw.whole(100, 300)},${draw.whole(100, 300)},${draw.whole(100, 300)}})`,
      `SLN(${draw.whole(1000, 5000)},500,${draw.whole(3, 8)})`,
      `SYD(${draw.whole(1000, 5000)},500,5,${draw.whole(1, 5)})`,
      `DB(${draw.whole(1000, 5000)},500,5,${draw.whole(1, 5)})`,
      `DDB(${draw.whole(1000, 5000)},500,5,${draw.whole(1, 5)})`,
      `EFFECT(${draw.pick(['0.05', '8.0%', '.1'])},${draw.pick(['4', '12'])})`,
      `NOMINAL(${draw.pick(['0.05', '8.0%', '.1'])},${draw.pick(['4', '12'])})`,
      `CUMIPMT(0.01,24,8000,1,${draw.whole(2, 24)},0)`,
      `CUMPRINC(0.01,24,8000,1,${draw.whole(2, 24)},0)`,
      `ROUND(${draw.pick(['C1', 'C2', '19.99', '0.145'])}*${draw.whole(1, 30)}*${draw.pick(['1.19', '1.2', '107.7%', '1.50'])},2)`,
      `ROUND(SUM(C1:C2)*${draw.pick(['7%', '19%', '.5'])},2)`,
      `SUMPRODUCT(E1:E6,M1:M6)*${draw.pick(['1.19', '7.50', '15%'])}`,
    ]),
  );
};

const FORMATS = [
  '0.00',
  '#,##0',
  '0%',
  '0.0%',
  '0.00%',
  '0.00E+00',
  '0;(0)',
  '#,##0.00',
  '000',
  '0.0',
  '#.##',
  '0.000',
  '"£"#,##0.00',
  '0.00;-0.00;"zero"',
  '+0;-0;0',
  '0.0,',
  '00000',
  '#,##0.00_)',
];
export const formats: Family = (draw) => {
  const value = draw.pick([
    '1.005',
    '0.145',
    '-0.145',
    '1234.567',
    '0',
    '-5',
    '2.5',
    '0.5',
    '99.995',
    '1.50',
    '1E3',
    '.075',
    '1.0049',
    '8.345',
    '2.675',
    '1.115',
    'C4',
    'C7',
    'C1',
    'C2',
    'C8',
    'A1',
    'E2',
    '1/3',
    '-1234.5',
  ]);
  return asks(
    draw.pick([
      `TEXT(${value},${quoted(draw.pick(FORMATS))})`,
      `TEXT(${value},${quoted(draw.pick(FORMATS))})`,
      `TEXT(${draw.pick(['1.005', '0.145', '2.675', '1.115', '8.345', '-1.005'])},"0.00")`,
      `FIXED(${value}${draw.pick(['', ',1', ',2', ',0', ',2,TRUE', ',3', ',-1'])})`,
      `TEXT(${draw.pick(['1.5', '0.75', '2.25', '45000.5', '0.0625', '1/3', '45351.999'])},${quoted(draw.pick(['[h]:mm', 'hh:mm', 'h:mm AM/PM', 'hh:mm:ss', '[mm]:ss', 'yyyy-mm-dd hh:mm']))})`,
      `TEXT(${draw.pick(['F1', 'F2', 'F3', '45000', '1'])},${quoted(draw.pick(['yyyy-mm-dd', 'dd.mm.yyyy', 'mmm d', 'ddd', 'dddd d mmmm yyyy', 'yy']))})`,
      `VALUE(TEXT(${value},"0.00"))`,
      `TEXT(${draw.pick(['100', '250.75', 'C2', '5', '0.145', '99'])},"[>99]0;0.0")`,
      `"Total "&TEXT(${value},${quoted(draw.pick(FORMATS.slice(0, 11)))})`,
    ]),
  );
};

export const textFunctions: Family = (draw) => {
  const one = draw.isSo(0.5)
    ? textCell(draw)
    : quoted(
        draw.pick(['Softbox', 'a-b-c-d', 'ISO 100', "o'neil big-top 2nd", ' x  y ', 'Äöü', 'say "hi"', '']),
      );
  const line = draw.pick(['"a\nb"', '"line\n\nthree"', '"x\n"']);
  return asks(
    draw.pick([
      `LEN(${one})`,
      `LEN(TRIM(${one}))`,
      `PROPER(${one})`,
      `UPPER(${one})&LOWER(${one})`,
      `LEFT(${one},FIND(" ",${one}&" ")-1)`,
      `MID(${one},${draw.whole(1, 5)},${draw.whole(1, 5)})`,
      `SUBSTITUTE(${one},"-","+"${draw.pick(['', ',1', ',2', ',3'])})`,
      `FIND(${draw.pick(['"o"', '"-"', '" "'])},${one}${draw.pick(['', ',2', ',4'])})`,
      `REPLACE(${one},2,${draw.whole(0, 3)},"_")`,
      `CODE(MID(${line},2,1))`,
      `LEN(SUBSTITUTE(${line},CHAR(10),"--"))`,
      `SUBSTITUTE(${line},CHAR(10),"/")`,
      `${line}="a"&CHAR(10)&"b"`,
      `LEN(TRIM(UNICHAR(160)&"a"&UNICHAR(160)))`,
      `TRIM(${quoted(' a  b ')}&UNICHAR(160))`,
      `CHAR(${draw.whole(33, 126)})&CODE(${quoted(draw.pick(['a', 'Z', '5']))})`,
      `UNICODE(${quoted(draw.pick(['é', 'Ω', 'a']))})&UNICHAR(${draw.pick(['937', '233', '8364'])})`,
      `VALUE(${quoted(draw.pick(['1.50', ' 12 ', '1,234', '15%', '1E3', '.5', '-7', '$5', '1/2', 'abc', '']))})`,
      `NUMBERVALUE(${quoted(draw.pick(['1,50', '1.234,5', '2 500,5']))},",",".")`,
      `TEXTJOIN(${quoted(draw.pick([',', '', ' / ']))},${draw.pick(['TRUE', 'FALSE'])},${draw.pick(['D1:D6', 'J1:J6', 'B1:B4', 'D5:D9', 'L1:L5', 'G1:G2', 'A1:A6'])})`,
      `CONCAT(${draw.pick(['D1:D3', 'H1:H6', 'G5:G6', 'B1:B4'])},${digits(draw)})`,
      `CONCAT("a",${draw.pick(['TRUE', 'A7', '1.50', 'A3', 'FALSE', '2=2'])})`,
      `TEXTJOIN("-",TRUE,"a",${draw.pick(['TRUE', 'A7', '1.50', 'A3', 'A1'])})`,
      `EXACT(${one},${textCell(draw)})`,
      `DOLLAR(${draw.pick(['1234.567', '1.50', '-5'])}${draw.pick(['', ',1', ',0'])})`,
      `T(${numberCell(draw)})&N(${numberCell(draw)})`,
      `${quoted(draw.pick(['1.50', '12', '1E2', ' 3 ', '2,000', '50%', '(5)']))}${draw.pick(['+', '*', '-'])}${draw.pick(SPELT.slice(0, 12))}`,
      `BASE(${draw.whole(1, 300)},${draw.pick(['2', '16', '8'])})&DEC2HEX(${draw.whole(1, 300)})`,
      `ROMAN(${draw.whole(1, 90)})&REPT("ab",${draw.whole(0, 3)})`,
    ]),
  );
};
