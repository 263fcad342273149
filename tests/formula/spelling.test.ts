import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/catalogue';
import { exampleFormula } from '../../src/catalogue/words';
import { asStored, asTyped, isTooLong, withNamesMended } from '../../src/formula/spelling';
import { ALL_TYPED, STORED } from './corpus';

describe('formulas of files', () => {
  test.each(STORED)('%s is typed %s', (file, person) => {
    expect(asTyped(file)).toBe(person);
    expect(asTyped(asStored(person))).toBe(person);
  });

  test.each([
    ['=SWEEP.STOPDIFF(A1,8)', '_xldudf_SWEEP_STOPDIFF(A1,8)'],
    ['=sweep.stopdiff(A1,8)', '_xldudf_SWEEP_STOPDIFF(A1,8)'],
    ['=OTHER.THING(1)', 'OTHER.THING(1)'],
    ['=sort(A1:A3)', '_xlfn._xlws.sort(A1:A3)'],
    ['=ifs(A1,2)', '_xlfn.ifs(A1,2)'],
    ['=SUM(A1#)', 'SUM(_xlfn.ANCHORARRAY(A1))'],
    ["='a (b)'!$A$1#*2", "_xlfn.ANCHORARRAY('a (b)'!$A$1)*2"],
    ['=Plan!A1#', '_xlfn.ANCHORARRAY(Plan!A1)'],
    ['=Rate#+1', '_xlfn.ANCHORARRAY(Rate)+1'],
    ['=INDIRECT(CHAR(65)&1)#', '_xlfn.ANCHORARRAY(INDIRECT(CHAR(65)&1))'],
    ['=(A1)#', '_xlfn.ANCHORARRAY((A1))'],
    ['=@A1:A5', '_xlfn.SINGLE(A1:A5)'],
    ['=@A1:INDEX(B:B,3)*2', '_xlfn.SINGLE(A1:INDEX(B:B,3))*2'],
    ['=1+@T[A]', '1+_xlfn.SINGLE(T[A])'],
    ['=@SORT(A1:A3)', '_xlfn.SINGLE(_xlfn._xlws.SORT(A1:A3))'],
    ['=@(A1+B1)', '_xlfn.SINGLE((A1+B1))'],
    ['=@Rate#', '_xlfn.SINGLE(_xlfn.ANCHORARRAY(Rate))'],
    ['=SUM(@F(@A1),@B1)', 'SUM(_xlfn.SINGLE(F(_xlfn.SINGLE(A1))),_xlfn.SINGLE(B1))'],
    ['=[@Reading]', '[@Reading]'],
    ['=LET(f,LAMBDA(x,x+1),f(2))', '_xlfn.LET(_xlpm.f,_xlfn.LAMBDA(_xlpm.x,_xlpm.x+1),_xlpm.f(2))'],
    ['=LET(Größe,1,Größe*2)', '_xlfn.LET(_xlpm.Größe,1,_xlpm.Größe*2)'],
    ['=LET(x,Plan!x,T[x]+X)', '_xlfn.LET(_xlpm.x,Plan!x,T[x]+_xlpm.X)'],
    ['=LET( x , 1 ,x)+MAX(x,y)', '_xlfn.LET( _xlpm.x , 1 ,_xlpm.x)+MAX(_xlpm.x,y)'],
    ['=LET(x,y,y)', '_xlfn.LET(_xlpm.x,y,y)'],
    ['=LAMBDA(x,y,x+y)(1,2)', '_xlfn.LAMBDA(_xlpm.x,_xlpm.y,_xlpm.x+_xlpm.y)(1,2)'],
    ['=MAP(A1:A3,SWEEP.FNUMBER)', '_xlfn.MAP(A1:A3,_xldudf_SWEEP_FNUMBER)'],
    ['="A1#"&"@A1"&"SORT("', '"A1#"&"@A1"&"SORT("'],
    ["='SORT('!A1&T[SORT(]", "'SORT('!A1&T[SORT(]"],
    ['=Plan!SORT(1)', 'Plan!SORT(1)'],
    ['=A1##', '_xlfn.ANCHORARRAY(_xlfn.ANCHORARRAY(A1))'],
    ['=#', '#'],
    ['=@', '@'],
    ['=1)#', '1)#'],
  ])('%s is stored %s', (person, file) => expect(asStored(person)).toBe(file));

  test.each(ALL_TYPED)('%s comes back from a file as it was typed', (formula) =>
    expect(asTyped(asStored(formula))).toBe(formula.replace(/sweep\.\w+/gi, (name) => name.toUpperCase())),
  );

  test('a value that is no single operand keeps its brackets', () =>
    expect(asTyped('_xlfn.SINGLE(A1+B1)')).toBe('=@(A1+B1)'));

  test('as long as a cell takes, and longer', () => {
    expect(isTooLong('1'.repeat(8192))).toBe(false);
    expect(isTooLong('1'.repeat(8193))).toBe(true);
  });
});

describe('a lost name is found back', () => {
  test.each([
    ['alone', '=_xldudf_SWEEP_STOPDIFF(8,11)', '=SWEEP.STOPDIFF(8,11)'],
    ['in small letters', '=_xldudf_sweep_stopdiff(8,11)', '=SWEEP.STOPDIFF(8,11)'],
    ['with the number of a workbook', '=[2]!_xldudf_SWEEP_STOPDIFF(8,11)', '=SWEEP.STOPDIFF(8,11)'],
    ['with a file', "='C:\\add-ins\\[old.xlam]x'!SWEEP.STOPDIFF(8,11)", '=SWEEP.STOPDIFF(8,11)'],
    ['with a file that has an apostrophe', "='C:\\Ann''s\\old.xlam'!_xldudf_SWEEP_STOPDIFF(8,11)", '=SWEEP.STOPDIFF(8,11)'],
    ['with a file that needs no quotes', '=old.xlam!SWEEP.STOPDIFF(8,11)', '=SWEEP.STOPDIFF(8,11)'],
    ['with a workbook in brackets', '=[old.xlam]!SWEEP.STOPDIFF(8,11)', '=SWEEP.STOPDIFF(8,11)'],
    ['behind the sign for one cell', '=@_xldudf_SWEEP_STOPDIFF(A1,B1)', '=@SWEEP.STOPDIFF(A1,B1)'],
    ['in the middle', '=IF(A1="","",1+_xldudf_SWEEP_STOPDIFF(A1,B1)/2)', '=IF(A1="","",1+SWEEP.STOPDIFF(A1,B1)/2)'],
    ['twice, one in the other', '=_xldudf_SWEEP_STOPTEXT([1]!_xldudf_SWEEP_LIGHTSUM(8,11))', '=SWEEP.STOPTEXT(SWEEP.LIGHTSUM(8,11))'],
    ['beside one that is not lost', '=SWEEP.STOPDIFF(8,11)+_xldudf_SWEEP_STOPDIFF(8,11)', '=SWEEP.STOPDIFF(8,11)+SWEEP.STOPDIFF(8,11)'],
    ['beside a text that looks like it', '="_xldudf_SWEEP_STOPDIFF("&_xldudf_SWEEP_STOPDIFF(8,11)', '="_xldudf_SWEEP_STOPDIFF("&SWEEP.STOPDIFF(8,11)'],
    ['after a sheet with a quotation mark in its name', `='8" set'!A1+_xldudf_SWEEP_STOPDIFF(8,11)`, `='8" set'!A1+SWEEP.STOPDIFF(8,11)`],
    ['after a column with a quotation mark in its name', '=SUM(Lights[8" head])+_xldudf_SWEEP_STOPDIFF(8,11)', '=SUM(Lights[8" head])+SWEEP.STOPDIFF(8,11)'],
    ['with columns of a table in it', '=_xldudf_SWEEP_LIGHTSUM(Lights[[#This Row],[Reading]],Lights[Own \'[x\']])', "=SWEEP.LIGHTSUM(Lights[[#This Row],[Reading]],Lights[Own '[x']])"],
  ])('%s', (_, lost, mended) => {
    expect(withNamesMended(lost)).toBe(mended);
    expect(withNamesMended(mended)).toBeUndefined();
  }); // prettier-ignore

  test.each(CATALOGUE.map((row) => [row.id, row] as const))('%s', (id, row) => {
    for (const shown of row.examples) {
      const formula = exampleFormula(row, shown);
      expect(withNamesMended(formula.replace(`SWEEP.${id}`, `_xldudf_SWEEP_${id}`))).toBe(formula);
    }
  });
});

describe('everything else stays', () => {
  test.each([
    ['a formula in order', '=SWEEP.STOPDIFF(8,11)'],
    ['one typed in small letters', '=sweep.stopdiff(8,11)'],
    ['a plain formula', '=SUM(A1:A3)'],
    ['a text', '_xldudf_SWEEP_STOPDIFF(8,11)'],
    ['a text within a formula', '="_xldudf_SWEEP_STOPDIFF(8,11)"'],
    ['a text with quotation marks in it', '="say ""_xldudf_SWEEP_STOPDIFF(8,11)"""'],
    ['a sheet of that name', "='_xldudf_SWEEP_STOPDIFF(8)'!A1"],
    ['a function that we do not have', '=_xldudf_SWEEP_HELICOPTER(8)'],
    ['a function of somebody else', '=_xldudf_OTHER_STOPDIFF(8,11)'],
    ['a longer name', '=MY_xldudf_SWEEP_STOPDIFF(8,11)'],
    ['a name without a call', '=_xldudf_SWEEP_STOPDIFF'],
    ['a function of another file', "='C:\\[x.xlam]y'!OTHER.STOPDIFF(8)"],
    ['nothing', ''],
    ['columns whose name looks like it', '=T[_xldudf_SWEEP_STOPDIFF(8)]'],
  ])('%s', (_, formula) => expect(withNamesMended(formula)).toBeUndefined());

  test('a formula as long as a cell takes, with an open quotation mark, is read in an instant', () => {
    const long = `=${"'[".repeat(4000)}SWEEP`;
    expect(withNamesMended(long)).toBeUndefined();
  });
});
