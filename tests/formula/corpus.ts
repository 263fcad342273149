import { CATALOGUE } from '../../src/catalogue';
import { exampleFormula } from '../../src/catalogue/words';

/**
 * Formulas that every reader of formulas is given, by what is special about them. Each is as a person types it, with its =.
 */
export const TYPED = {
  plain: [
    '=8', '= 1.5e-3 ', '=.5', '=5.', '=1E5', '=TRUE', '=false', '=A1+B2*C3', '=(1+2)*3', '=5-2-1', '=-1/3', '=+A1', '=--A1', '=30%', '=2^-1', '=A1&" stops"', '=A1<>""',
    '=A1<=B1', '=A1>=B1', '=A1=B1', '=SUM(A1,B1)', '=sum(a1,b1)', '=IF(A1="","",A1*2)', '=PI()', '=F(,1)', '=IF(A1,,2)', '=LOG10(8)', '=TRUE()', '=ROUND( A1 , 2 )', '=SUM(1,SUM(2,SUM(3)))',
    '="f/8 ""2/3"""', '=""', '="a,b;c)d(e"', '="[1]Sheet1!A1"', '="it\'s"&"A1"', '="|"', '="[x"', '="SUM("', '="_xldudf_SWEEP_POPS("', '="Lights[Reading]"', '=CHAR(10)&"line\nbreak"', '=SUM(A1,\n  B1)',
    '=Größe', '=Größe_1*2', '=MÜLLER(1)', '=_x+1', '=NOSUCHFUNCTION(1)', '=SUM (1,2)',
  ],
  references: [
    '=B2', '=$B$2', '=B$2', '=$B2', '=b2', '=B2:C9', '=$B$2:$C$9', '=C9:B2', '=A:A', '=A:C', '=$A:$C', '=A:$C', '=2:4', '=$3:$7', '=2:$4', '=A1:A1', '=XFD1048576', '=SUM(A:A)', '=SUM(1:2)',
    '=SUM(A1:A3,C1:C3)', '=(A1,B2)', '=A1:A3 B2:B3', '=A1:INDEX(B:B,3)', '=INDEX(B:B,2):INDEX(B:B,5)', '=XFE1', '=A1048577', '=ABC1.x', '=A1B', '=Rate', '=R1C1', '=OFFSET(A1,1,1)', '=Q1', '=@A1', '=@A1:A5', '=@Rate', '=@INDEX(A1:A9,2)', '=1+@A1:A5', '=A1%',
  ],
  sheets: [
    '=Plan!A1', '=Plan!$A$1:$B$2', '=Plan!A:A', '=Plan!2:4', '=Plan!Rate', "='Lights on set (2)'!B2:B9", "='It''s'!A1", "='Ann''s set, Bo''s lights'!B2", "='A1 B2'!A1", '=Q1!A1', '=2024!A1', '=Größe!A1', '=Jan:Dec!A1', "='Jan 1:Dec 31'!A1", '=SUM(Jan:Dec!A1:B2)',
    '=Plan!A1:Plan!B3', '=A1:Plan!B3', "='8\" set'!A1", "='Set [x'!A1", '=Plan!#REF!', '=#REF!', "='Jo''s'!#REF!+1", '=Plan!A1#', "='My sheet'!A1#", "='a (b)'!A1#", '=Plan!MYOWN(1)', "='Set (2)'!A1+NOPE(1)", "='_xldudf_SWEEP_STOPDIFF(8)'!A1", '=SUM(Plan!A1,Plan!B1)',
  ],
  'other files': [
    '=[1]Sheet1!A1', '=[1]!Rate', '=[Book.xlsx]Sheet1!A1:B2', "='[2]My sheet'!A1+1", "='C:\\x\\[b.xlsx]S'!A1", "='C:\\Ann''s\\[b.xlsx]S'!A1", '=[1]Jan:Dec!A1', '=[1]Sheet1!#REF!', '=[1]!Lights[Reading]', '=Book.xlsx!Lights[Reading]', "='C:\\x\\[b.xlsx]S'!OTHER.STOPDIFF(8)", "=Excel|'Sheet1'!A1", '=prog|doc!item', '=[1]Sheet1!~',
  ],
  tables: [
    '=Lights[Reading]', '=Lights_2[Reading]', '=Lights.old[Reading]', '=[@Reading]', '=[@[Power now]]', '=Lights[@Reading]', '=Lights[@[Power now]]', '=Lights[[#This Row],[Reading]]', '=Lights[[#This Row],[A]:[B]]', '=Lights[[A]:[B]]', '=Lights[#Headers]', '=Lights[[#Headers],[A]]', '=Lights[#All]', '=Lights[[#Data],[A]]', '=Lights[]',
    "=T[it''s]", "=T[a'[b']]", "=T['[A1]", "=T[Own '[x']]", '=SUM(Lights[8" head])', '=T[Power (W)]', '=T[A1]', '=T[a|b]', '=SUM(Lights[Reading])/COUNT(Lights[Reading])', '=SUM(Lights)', '=T[x!y]+A1', '=[Reading]', '=T[B:B]',
  ],
  arrays: [
    '={8;11;16}', '={1,"a";TRUE,#N/A}', '={-1, +2}', '={TRUE,FALSE;"a""b",1}', '={"a;b","}"}', '={"f/5,6";8}', '={"1/4";"a,b";"c;d"}', '={ 1 , 2 }', '=SUM({1;2}*A1:A2)', '={}', '={1,A1}', '={{1}}', '={.5,5.,1e3}',
  ],
  'names of their own': [
    '=LET(x,1,x+1)', '=LET(a,1,a*2)&"LET(b,"', '=LET(x,A1,y,B1,x*y+Rate)', '=LET(f,LAMBDA(x,x+1),f(2))', '=LAMBDA(x,y,x+y)(1,2)', '=LET(x,1,LET(y,2,x+y))', '=MAP(A1:A3,LAMBDA(c,c*2))', '=LET(x,Plan!x,x)', '=LET(x,T[x],x+[@x])', '=let(X,1,x)', '=REDUCE(0,A1:A3,LAMBDA(a,b,a+b))', '=LET(Größe,1,Größe*2)', '=LET( x , 1 , x )',
  ],
  spills: ['=A1#', '=$A$1#', '=SUM(A1#)', '=A1#*2', '=INDEX(A1#,2)', '=SUM(SWEEP.STOPDIFF(1,2^A1#))', '=Rate#', '=INDIRECT("A1")#', '=@Rate#', '=(A1)#', '=SORT(A1:A3)', '=FILTER(A1:A9,B1:B9>1)', '=XLOOKUP(1,Heads[Reading],Heads[Power])', '=SEQUENCE(3)', '=NORM.DIST(1,2,3,TRUE)', '=@SORT(A1:A3)', '=@(A1+B1)'],
  errors: ['=#N/A', '=#NAME?', '=#VALUE!', '=#DIV/0!', '=#NUM!', '=#NULL!', '=IF(A1,#REF!,1)', '=IFERROR(A1,"#N/A")', '=SUM(#REF!,A1)'],
  ours: [
    '=SWEEP.STOPDIFF(8, 11)', '=sweep.stopdiff(8,,"time")', '=Sweep.StopDiff(8,11)', '=IF(A1="","",SWEEP.LIGHTSUM(A1,Lights[Reading],-B2))', '=SWEEP.POPSREADING(SWEEP.FNUMBER(A1),4)', '=@SWEEP.STOPDIFF(A1,B1)', '=SWEEP.HELICOPTER(1)', '=SWEEP.STOPDIFF', '=MYSWEEP.STOPDIFF(1)', '=SWEEP.STOPDIFF(8,11)+OTHER.STOPDIFF(8)', '=MAP(A1:A3,SWEEP.FNUMBER)', '="SWEEP.POPS("&SWEEP.POPS(A1,2)',
  ],
  examples: CATALOGUE.flatMap((row) => row.examples.map((shown) => exampleFormula(row, shown))),
} satisfies Readonly<Record<string, readonly string[]>>; // prettier-ignore

/** What no person types and a file or a broken workbook may hold all the same. */
export const HOSTILE: readonly string[] = [
  '', '=', ' = ', '8', "'=8", '=~', '=%', '=!', '=!A1', '=A1!', '=$', '=$$A', '=A1$', '=#', '=A#', '=\\', '=?', '={', '=}', '=[', '=]', '=(', '=)', '=,', '="', "='", '="abc', "='abc", "='abc'", '=F("abc', '=F(8,G(11', '=F(1))+2', '= F(1))+2 ', '=F(1) ~ 2', '=SUM(1))',
  '=SUM({1;2)', '={1;2', '={pops-build:pops}*2', '=T[', '=T[a', "=T[a'", '=T[[a]', '=T[[[a]]]', '=[[[', '=[1]', "=''!A1", "='''", "='a''!A1", '=Plan!', '=Plan!!A1', '=Plan!(A1)', '=a!b!c', '=:', '=A1:', '=:A1', '=A:', '=A1:B2:C3', '=1:2:3', '=A1..B2', '=1.2.3', '=1e', '=8x', '=x8y', '=📷', '=📷!A1', '="📷"&A1', '=A1📷', "='📷 set'!A1", '=\u0000', '=a\u00a0b', '=﻿A1', '=_xlfn.', '=_xldudf_', '=_xlfn.SINGLE', '=@', '=@@A1', '=##', '=A1##', '=SINGLE(A1)', '=;', '=A1;B1',
  `=${'('.repeat(8191)}`, `=${')'.repeat(8191)}`, `=${'F('.repeat(4095)}`, `=${"'[".repeat(4000)}`, `=${'['.repeat(8191)}`, `=${'[a'.repeat(4000)}`, `=${'{'.repeat(8191)}`, `={${'1'.repeat(8190)}`, `={${'1,'.repeat(4000)}`, `=${'"'.repeat(8191)}`, `=${"'".repeat(8191)}`, `=${'a'.repeat(8191)}`, `=${'a.'.repeat(4000)} !`, `=${'.'.repeat(8000)} !`, `=${'1:'.repeat(4000)}!`, `=${'a:'.repeat(4000)}!`, `=$${'1'.repeat(8000)}`, `=${'-'.repeat(8191)}`, `=${'@'.repeat(8191)}`, `=${'A1#'.repeat(2700)}`, `=${'A1:'.repeat(2700)}`, `=${'@('.repeat(4000)}`, `=${'LET(x,'.repeat(1365)}`, `=${'LET(x,1,'.repeat(600)}x${')'.repeat(600)}`, `=${'F('.repeat(64)}1${')'.repeat(64)}`, `=${'1+'.repeat(4095)}1`, `=${' '.repeat(8191)}`, `=A1${'!A1'.repeat(2700)}`, `=${"'a'!".repeat(1600)}A1`,
]; // prettier-ignore

/** Formulas as files and workbooks without the add-in hold them, each with what a person types. */
export const STORED: readonly (readonly [file: string, person: string])[] = [
  ['_xldudf_SWEEP_STOPDIFF(A1,8)', '=SWEEP.STOPDIFF(A1,8)'],
  ['[1]!_xldudf_sweep_stopdiff(A1,8)', '=SWEEP.STOPDIFF(A1,8)'],
  ["'add-in.xlam'!_xldudf_SWEEP_POPS(A1)", '=SWEEP.POPS(A1)'],
  ["'C:\\Ann''s\\old.xlam'!_xldudf_SWEEP_POPS(A1)", '=SWEEP.POPS(A1)'],
  ['_xldudf_SWEEP_TOMORROW(1)', '=SWEEP.TOMORROW(1)'],
  ['_xldudf_OTHER_THING(1)', '=_xldudf_OTHER_THING(1)'],
  ['"_xldudf_SWEEP_POPS(_xlfn.X"', '="_xldudf_SWEEP_POPS(_xlfn.X"'],
  ["'_xldudf_SWEEP_POPS'!A1", "='_xldudf_SWEEP_POPS'!A1"],
  ['T[_xlfn.x]', '=T[_xlfn.x]'],
  ['MY_xldudf_SWEEP_POPS(1)', '=MY_xldudf_SWEEP_POPS(1)'],
  ['_xlfn.LET(_xlpm.x,1,_xlpm.x+_xlfn._xlws.SORT(A1))', '=LET(x,1,x+SORT(A1))'],
  ['_xlfn.LET(_xlpm.f,_xlfn.LAMBDA(_xlpm.x,_xlpm.x+1),_xlpm.f(2))', '=LET(f,LAMBDA(x,x+1),f(2))'],
  ['SUM(_xlfn.ANCHORARRAY(F1))+_xlfn.SINGLE(A1:A5)', '=SUM(F1#)+@A1:A5'],
  ["_xlfn.ANCHORARRAY('a (b)'!A1)", "='a (b)'!A1#"],
  ['_xlfn.ANCHORARRAY(Plan!A1)', '=Plan!A1#'],
  ['_xlfn.ANCHORARRAY(INDIRECT("A1"))', '=INDIRECT("A1")#'],
  ['_xlfn.SINGLE(INDEX(A1:A9,2))', '=@INDEX(A1:A9,2)'],
  ['_xlfn.SINGLE(_xlfn.ANCHORARRAY(Rate))', '=@Rate#'],
  ['NOSUCHFUNCTION(1)', '=NOSUCHFUNCTION(1)'],
];

export const ALL_TYPED: readonly string[] = Object.values(TYPED).flat();
