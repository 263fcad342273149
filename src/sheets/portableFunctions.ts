/**
 * Spreadsheet functions that every program since 2007 knows under the same name: templates use no other. TEXT is not among
 * them: what its codes mean, even 0.0, depends on the language of the program.
 */
export const PORTABLE_FUNCTIONS: ReadonlySet<string> = new Set(
  (
    'ABS AND AVERAGE AVERAGEIF AVERAGEIFS CEILING CHOOSE CONCATENATE COUNT COUNTA COUNTBLANK COUNTIF COUNTIFS EXP FIXED FLOOR IF IFERROR INDEX INT ISBLANK ISERROR ISNUMBER ISTEXT ' +
    'LARGE LEFT LEN LN LOG LOG10 MATCH MAX MID MIN MOD N NA NOT OFFSET OR PI POWER PRODUCT RANK RIGHT ROUND ROUNDDOWN ROUNDUP ROW ROWS SIGN SMALL SQRT STDEV SUM SUMIF SUMIFS SUMPRODUCT SUMSQ TRIM VLOOKUP'
  ).split(' '),
);
