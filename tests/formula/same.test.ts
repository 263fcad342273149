import { describe, expect, test } from 'vitest';
import { saysTheSame } from '../../src/formula/same';

describe('two formulas', () => {
  test.each([
    ['=SUM(Lights[[#This Row],[Reading]],1)', '=SUM([@Reading],1)'],
    ['=SUM(Lights[[#This Row],[Lens setting]])', '=SUM(Lights[@[Lens setting]])'],
    ['=SUM(lights[reading])', '=SUM(Lights[Reading])'],
    ['=sweep.stopdiff(a1,$b$2)', '=SWEEP.STOPDIFF(A1,$B$2)'],
    ["='Plan'!A1", '=plan!A1'],
    ['=IF(A1<1E-9,TRUE,"x")', '=IF(A1<0.000000001,true,"x")'],
    ['=SWEEP.LIGHTSUM(A1, A2)', '=@SWEEP.LIGHTSUM(A1,A2)'],
    ['=Target*2', '=target * 2'],
    ['={1,2;3,4}', '={1, 2; 3, 4}'],
  ])('%s and %s say the same in Lights', (a, b) => {
    expect(saysTheSame(a, b, 'Lights')).toBe(true);
    expect(saysTheSame(b, a, 'Lights')).toBe(true);
  });
  test.each([
    ['=SUM(Lights[[#This Row],[Reading]])', '=SUM(Lights[Reading])'],
    ['=SUM(Lights[[#This Row],[Reading]])', '=SUM([@Power])'],
    ['=Heads[@Reading]', '=[@Reading]'],
    ['=A1', '=$A$1'],
    ['=A1', '=A2'],
    ['=Plan!A1', '=A1'],
    ['=[Book.xlsx]Plan!A1', '=Plan!A1'],
    ['="Key"', '="key"'],
    ['=A1:B2 B1:B9', '=A1:B2,B1:B9'],
    ['=SUM(A1:B2 B1:B9)', '=SUM(A1:B2B1:B9)'],
    ['=@A1:A5', '=A1:A5'],
    // Of a list an @ leaves the first value.
    ['=@SWEEP.LIGHTSHARE(A1:A3)', '=SWEEP.LIGHTSHARE(A1:A3)'],
    ['=INDEX(@SWEEP.LIGHTSHARE(A1:A3),2)', '=INDEX(SWEEP.LIGHTSHARE(A1:A3),2)'],
    ['=1+2', '=12'],
    ['=-1', '=1'],
    ['="1"', '=1'],
    ['=SWEEP.STOPDIFF(8,11)', '=_xldudf_SWEEP_STOPDIFF(8,11)'],
    ['=1', '1'],
  ])('%s and %s do not', (a, b) => {
    expect(saysTheSame(a, b, 'Lights')).toBe(false);
    expect(saysTheSame(b, a, 'Lights')).toBe(false);
  });
});
