import { BaseFunction, type BaseValueObject, type ErrorType } from '@univerjs/engine-formula';
import { Refusal, type FailureReport } from '../failures';
import { ENGINE_FUNCTIONS } from '../natives';
import { REFUSES } from './reading/build';

type Report = (report: FailureReport) => void;

/**
 * Functions of today's spreadsheets, in the spelling of Microsoft's list "Excel functions (alphabetical)". Those that the grid
 * lacks say so in their cell; the library has one word, #NAME?, for them and for a slip of the hand.
 */
const OF_SPREADSHEETS =
  `ACCRINT ACCRINTM AMORDEGRC AMORLINC ASC BAHTTEXT CALL CELL COPILOT CUBEKPIMEMBER CUBEMEMBER
CUBEMEMBERPROPERTY CUBERANKEDMEMBER CUBESET CUBESETCOUNT CUBEVALUE DBCS DETECTLANGUAGE DSTDEV DSTDEVP DVAR DVARP EUROCONVERT
FIELDVALUE FILTERXML FORECAST.ETS FORECAST.ETS.CONFINT FORECAST.ETS.SEASONALITY FORECAST.ETS.STAT FORMULATEXT GETPIVOTDATA
GROUPBY HYPERLINK IMAGE IMPORTCSV IMPORTTEXT INFO ISFORMULA ISO.CEILING ISOMITTED JIS LAMBDA LET LINEST LOGEST PERCENTOF
PHONETIC PIVOTBY REGEXEXTRACT REGEXREPLACE REGEXTEST REGISTER.ID RTD SHEET SHEETS STOCKHISTORY SQL.REQUEST TRANSLATE TRIMRANGE
VALUETOTEXT ARRAYTOTEXT WEBSERVICE`.split(/\s+/);
/** These the library knows by other ways than a function. */
const READ_OTHERWISE = ['LAMBDA', 'LET'];

/** This one it has for a page alone: on the command line it ends the process, and no page of ours loads pictures. */
const FOR_OTHER_PAGES = ['IMAGE'];

export const LACKING: readonly string[] = OF_SPREADSHEETS.filter(
  (name) =>
    FOR_OTHER_PAGES.includes(name) || !(ENGINE_FUNCTIONS.includes(name) || READ_OTHERWISE.includes(name)),
);

/** A function that refuses, by what it is given. */
const refusing = (
  name: string,
  report: Report,
  say: (given: readonly string[]) => readonly [string, string],
) =>
  class extends BaseFunction {
    override minParams = -1;
    override maxParams = -1;

    override calculate(...values: BaseValueObject[]) {
      const [code, message] = say(values.map((value) => String(value.getValue())));
      return new Refusal(code as ErrorType, message, name, report);
    }
  };

/** The functions that refuse: what no one can read, and what the grid lacks. */
export const refusals = (report: Report): Array<[new (name: string) => BaseFunction, string]> => [
  [refusing('Formula', report, ([code = '', message = '']) => [code, message]), REFUSES],
  ...LACKING.map((name): [new (name: string) => BaseFunction, string] => [
    refusing(name, report, () => [
      '#NAME?',
      `This grid has no function ${name}. A spreadsheet that has it calculates the cell.`,
    ]),
    name,
  ]),
];
