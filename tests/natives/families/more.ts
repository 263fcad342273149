import { asks, type Family } from '../asked';
import { anyTruth, digits, numberCell, quoted } from '../expressions';

const small = ['1', '0.5', '2.50', '10', '.25', 'E2', 'A4', '-1', '0', '3'];

/** Logarithms, powers, angles, and numbers in other bases. */
export const sciences: Family = (draw) => {
  const one = draw.pick(small);
  const whole = draw.whole(1, 300);
  return asks(
    draw.pick([
      `${draw.pick(['LN', 'LOG10', 'EXP', 'SQRT', 'SIN', 'COS', 'TAN', 'ATAN', 'ASIN', 'RADIANS', 'DEGREES', 'SINH', 'TANH'])}(${one})`,
      `LOG(${draw.pick(['8', '100', 'E1', '.5', '1E3', '0'])}${draw.pick(['', ',2', ',10', ',1.50'])})`,
      `2*LOG(${draw.pick(['E1', 'E2', '5.60', '11'])}/8,2)`,
      `POWER(${one},${draw.pick(['2', '0.5', '3', '-1'])})`,
      `ATAN2(${draw.pick(['1', '2', '-1'])},${draw.pick(['1', '0', '3'])})`,
      `ROUND(PI()*${one}^2,3)`,
      `${draw.pick(['DEC2BIN', 'DEC2HEX', 'DEC2OCT'])}(${whole})`,
      `HEX2DEC(${quoted(draw.pick(['FF', '1a', '7']))})`,
      `${draw.pick(['BITAND', 'BITOR', 'BITXOR'])}(${whole},${draw.whole(1, 300)})`,
      `${draw.pick(['SUMX2MY2', 'SUMX2PY2', 'SUMXMY2'])}(H1:H6,I1:I6)`,
      `INDEX(MMULT(H1:I2,H3:I4),${draw.whole(1, 2)},${draw.whole(1, 2)})`,
      `INDEX(TRANSPOSE(H1:I6),${draw.whole(1, 2)},${draw.whole(1, 6)})`,
      `${draw.pick(['SIGN', 'FACT', 'FACTDOUBLE'])}(${draw.whole(0, 9)})`,
      `COMBIN(${draw.whole(4, 20)},${draw.whole(0, 4)})+PERMUT(${draw.whole(4, 9)},2)`,
      `CONVERT(${draw.pick(['1', '2.50', '100'])},${draw.pick(['"m","ft"', '"in","cm"', '"kg","lbm"', '"C","F"', '"km","mi"', '"hr","sec"'])})`,
      `ARABIC(ROMAN(${draw.whole(1, 3000)}))`,
      `MDETERM(H1:I2)+SUM(MUNIT(${draw.whole(1, 3)}))`,
      `SERIESSUM(0.5,0,1,{1,2,3})`,
      `MULTINOMIAL(${draw.whole(1, 4)},${draw.whole(1, 4)})`,
      `DELTA(${draw.pick(['1', 'A1', '5'])},${draw.pick(['5', '5.0'])})+GESTEP(${one},1)`,
    ]),
  );
};

/** Further statistics: distributions, trends, shares. */
export const trends: Family = (draw) => {
  const [ys, xs] = [draw.pick(['E1:E6', 'M1:M6', 'I1:I6']), draw.pick(['H1:H6', 'N1:N6'])];
  const z = draw.pick(['0', '1', '-1.50', '0.5', '1.96']);
  const share = draw.pick(['0.5', '0.975', '.1', '0.25']);
  return asks(
    draw.pick([
      `NORM.DIST(${z},0,1,${draw.pick(['TRUE', 'FALSE'])})`,
      `NORM.S.DIST(${z},TRUE)`,
      `NORM.INV(${share},10,2)`,
      `NORM.S.INV(${share})`,
      `INDEX(LINEST(${ys},${xs}),1,${draw.whole(1, 2)})`,
      `INDEX(TREND(${ys},${xs},{1;2;3}),${draw.whole(1, 3)})`,
      `FORECAST.LINEAR(${digits(draw)},${ys},${xs})`,
      `INDEX(GROWTH(M1:M6,H1:H6,{1;2}),${draw.whole(1, 2)})`,
      `STEYX(${ys},${xs})`,
      `PEARSON(${ys},${xs})^2`,
      `COVARIANCE.P(${ys},${xs})`,
      `INDEX(FREQUENCY(${ys},{5;10;100}),${draw.whole(1, 4)})`,
      `SUM(FREQUENCY(${ys},{5,10}))`,
      `${draw.pick(['RANK.EQ', 'RANK.AVG'])}(${draw.pick(['8', 'E1'])},E1:E6${draw.pick(['', ',1'])})`,
      `${draw.pick(['PERCENTRANK.INC', 'PERCENTRANK.EXC'])}(H1:H6,${draw.pick(['5', '6', '3.5'])})`,
      `MODE.SNGL(${draw.pick(['E1:E6', 'M1:M6'])})`,
      `STANDARDIZE(${digits(draw)},10,2.50)`,
      `CONFIDENCE.NORM(0.05,2.5,${draw.whole(5, 60)})`,
      `POISSON.DIST(${draw.whole(0, 5)},2.50,${draw.pick(['TRUE', 'FALSE'])})`,
      `BINOM.DIST(${draw.whole(0, 5)},5,.5,${draw.pick(['TRUE', 'FALSE'])})`,
      `LARGE(IF(D1:D6="softbox",${ys}),${draw.whole(1, 2)})`,
      `SUMPRODUCT(LARGE(${ys},{1,2,3}))`,
      `AVERAGE(SMALL(${ys},{1,2}))`,
      `SUMPRODUCT(--(MOD(ROW(${ys}),2)=0),${ys})`,
      `SUMPRODUCT((D1:D6<>"")/COUNTIF(D1:D6,D1:D6&""))`,
      `COUNT(1/(E1:E6>${digits(draw)}))`,
      `AGGREGATE(${draw.pick(['14', '15'])},6,${ys},${draw.whole(1, 3)})`,
    ]),
  );
};

/** Interest by days, and payments that are not alike. */
export const interest: Family = (draw) => {
  const flows = draw.pick(['{-500,200,200,200}', '{-1000,300,500,600}']);
  return asks(
    draw.pick([
      `XNPV(${draw.pick(['0.09', '5%', '.1'])},{-1000,400,700},{45292,45400,45657})`,
      `ROUND(XIRR({-1000,400,700},{45292,45400,45657}),6)`,
      `MIRR(${flows},${draw.pick(['0.1', '5%'])},${draw.pick(['.12', '8.0%'])})`,
      `IRR(${flows}${draw.pick(['', ',0.1'])})`,
      `RRI(${draw.whole(2, 9)},1000,${draw.whole(1100, 3000)})`,
      `PDURATION(${draw.pick(['5%', '0.025'])},1000,${draw.whole(1100, 3000)})`,
      `ISPMT(0.01,${draw.whole(1, 5)},24,8000)`,
      `VDB(${draw.whole(2000, 5000)},300,10,0,${draw.whole(1, 5)})`,
      `FVSCHEDULE(1000,{0.05,.1,${draw.pick(['8.0%', '0.02']).replace('8.0%', '0.08')}})`,
      `DOLLARDE(1.${draw.whole(10, 15)},16)`,
      `NPV(${draw.pick(['10%', '0.05'])},${draw.pick(['N1:N6', 'M1:M3'])})-${digits(draw)}`,
      `ROUND(PMT(${draw.pick(['4.0%/12', '0.5%'])},${draw.pick(['24', '36'])},-${draw.whole(500, 9000)}),2)`,
    ]),
  );
};

/** Kinds of values, errors and places. */
export const information: Family = (draw) => {
  const cell = draw.pick(['A1', 'A3', 'A6', 'A7', 'A8', 'A9', 'A11', 'K2', 'L1', 'F1']);
  return asks(
    draw.pick([
      `${draw.pick(['ISNUMBER', 'ISTEXT', 'ISNONTEXT', 'ISLOGICAL', 'ISERROR', 'ISERR', 'ISNA', 'ISBLANK', 'ISFORMULA', 'ISREF'])}(${cell})`,
      `TYPE(${cell})`,
      `ERROR.TYPE(${draw.pick(['K2', 'K4', 'A9', 'VALUE("a")', 'SQRT(-1)'])})`,
      `IFERROR(N(${cell}),"error")`,
      `${draw.pick(['ISODD', 'ISEVEN'])}(${draw.pick(['A1', 'A10', '7.9', 'A12', 'A2'])})`,
      `IFNA(VLOOKUP(${draw.pick(['"Grid"', '"none"'])},D1:E6,2,FALSE),${digits(draw)})`,
      `IFS(${anyTruth(draw, 0)},"a",${anyTruth(draw, 0)},"b",TRUE,"c")`,
      `IFS(${draw.pick(['TRUE', 'A1>4.0', 'E1=8'])},1,${draw.pick(['A9', 'K2', 'A9>1'])},2)`,
      `SWITCH(${draw.pick(['E1', 'E2', 'D1', 'H1'])},8,"eight",5.60,"five",${quoted('Softbox')},"box","other")`,
      `CHOOSE(MATCH(${draw.pick(['1', '5', '.5'])},{0,2,4}),"low","middle","high")`,
      `IF(COUNTIF(D1:D6,${draw.pick(['"grid"', '"s*"', '"none"'])})>0,"there","not")`,
      `AND(ISNUMBER(${numberCell(draw)}),${anyTruth(draw, 0)})`,
      `ROWS(${draw.pick(['A1:B7', 'H1:H6'])})*COLUMNS(A1:C3)+ROW(B4)`,
      `SUM(OFFSET(E1,${draw.whole(0, 2)},0,${draw.whole(1, 3)},1))`,
      `INDIRECT(ADDRESS(${draw.whole(1, 6)},5))`,
      `INDIRECT("E"&${draw.whole(1, 6)})*2`,
      `WORKDAY.INTL(DATE(2024,${draw.whole(1, 12)},5),${draw.whole(-9, 20)},${draw.pick(['1', '2', '11', '"0000011"'])})`,
      `EOMONTH(DATE(2024,1,31),${draw.whole(-5, 5)})-DATE(2024,1,${draw.whole(1, 28)})`,
      `DATEDIF(DATE(2023,1,31),DATE(2024,${draw.whole(1, 12)},${draw.whole(1, 28)}),${quoted(draw.pick(['m', 'd', 'y', 'ym']))})`,
      `HOUR(${draw.pick(['0.1', '0.999999', '45000.25'])})&":"&MINUTE(${draw.pick(['0.1', '0.52', '45000.26'])})`,
      `TEXT(NOW()-NOW(),"0")&TEXT(TODAY()-TODAY(),"0.0")`,
    ]),
  );
};

const OF_ONE =
  'ABS INT TRUNC SQRT EXP LN SIGN EVEN ODD ISEVEN ISODD FACT RADIANS DEGREES SIN COS YEAR MONTH DAY HOUR WEEKDAY ROMAN LOG10 DEC2HEX FIXED DOLLAR ISOWEEKNUM'.split(
    ' ',
  );
const OF_TWO =
  'ROUND ROUNDUP ROUNDDOWN MOD POWER CEILING FLOOR MROUND QUOTIENT LOG EDATE EOMONTH ATAN2 COMBIN GCD BITAND'.split(
    ' ',
  );
const OF_MANY =
  'SUM COUNT COUNTA AVERAGE MIN MAX MEDIAN PRODUCT SUMSQ SKEW KURT STDEV.S VAR.P STDEV VAR STDEVP VARP DEVSQ AVEDEV GEOMEAN HARMEAN MAXA MINA AVERAGEA STDEVA VARA GCD LCM AND OR'.split(
    ' ',
  );
/** Those that ask for pairs of numbers. */
const OF_PAIRS = 'CORREL PEARSON SLOPE INTERCEPT RSQ STEYX COVAR COVARIANCE.S COVARIANCE.P'.split(' ');
const OF_RANK = 'LARGE SMALL PERCENTILE QUARTILE PERCENTILE.INC'.split(' ');

/** What is no number, one argument of a function that asks for one. */
export const unfit: Family = (draw) => {
  const given = draw.pick([
    'A3',
    'A6',
    'A8',
    'A9',
    'A11',
    'B7',
    'B8',
    'L4',
    'K2',
    '""',
    '"12"',
    '"abc"',
    '"1.50"',
  ]);
  const number = draw.pick(['2', 'A1', '1.50', '.5', 'E1']);
  return asks(
    draw.pick([
      `${draw.pick(OF_ONE)}(${given})`,
      `${draw.pick(OF_TWO)}(${given},${number})`,
      `${draw.pick(OF_TWO)}(${number},${given})`,
      `${draw.pick(OF_MANY)}(${number},${given})`,
      `${draw.pick(['LEFT', 'RIGHT', 'REPT'])}("abcde",${given})`,
      `MID("abcde",${given},2)`,
      `SUM(INDEX(E1:E6,${given}))`,
      `DATE(2024,${given},1)`,
      `PMT(1%,12,${given})`,
      `IF(${given},1,2)`,
      `-${given}`,
      `${given}%`,
      `${given}^2`,
    ]),
  );
};

/** Numbers among texts, texts of digits and empty cells. */
export const mixed: Family = (draw) => {
  const cells = draw.pick([
    'L1:L5',
    'G1:G2',
    'A10:A12',
    'G5:G6',
    'E1:E9',
    'A1:A5',
    'B6:B8',
    'D5:D12',
    'L4:L5',
    'A11:A12',
    'D7:D9',
  ]);
  return asks(
    draw.pick([
      `${draw.pick(OF_MANY)}(${cells})`,
      `${draw.pick(OF_MANY)}(${cells},${draw.pick(['1.50', 'A1', 'E1:E3'])})`,
      `${draw.pick(OF_RANK)}(${cells},1)`,
      `MODE(${cells},E1:E6)`,
      `COUNTBLANK(${cells})`,
      `SUMPRODUCT(${cells})`,
      `SUMPRODUCT(${draw.pick(['L1:L5,E1:E5', 'A1:A5,H1:H5', 'G1:G2,E1:E2'])})`,
      `RANK(1,${draw.pick(['L1:L5', 'G1:G2', 'L4:L5'])})`,
      `SUBTOTAL(${draw.pick(['1', '2', '3', '4', '9'])},${cells})`,
      `${draw.pick(OF_PAIRS)}(${draw.pick(['L1:L5', 'A1:A5'])},H1:H5)`,
      `SUM(${cells}*1)`,
      `IFERROR(AVERAGE(IF(ISNUMBER(${cells}),${cells})),"none")`,
    ]),
  );
};
