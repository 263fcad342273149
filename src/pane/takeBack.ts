import { referencesIn } from '../formula/tree';

/** The sheets that stand before a reference: one, or with Sheet1:Sheet3! the first and the last. */
function sheetsIn(reference: string): readonly string[] {
  const end = reference.lastIndexOf('!');
  if (end < 0) return [];
  const text = reference.slice(0, end);
  const isQuoted = text.startsWith("'");
  return (isQuoted ? text.slice(1, -1).replaceAll("''", "'") : text).split(':');
}

const isSame = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

/** Whether a formula that stands elsewhere speaks of a sheet, or of one of the tables on it. */
export const speaksOf = (formula: string, sheet: string, tables: readonly string[]): boolean =>
  referencesIn(formula).some(
    (reference) =>
      sheetsIn(reference).some((name) => isSame(name, sheet)) ||
      tables.some((table) => isSame(reference.split('[', 1)[0] ?? '', table)),
  );

const LEFT = 'so the sheet was left as it is. If you do not need it, delete it by its tab.';

/** Why a sheet that came in is not taken back, in every host alike. */
export const NOT_BACK = {
  gone: (name: string) => ({ refused: `“${name}” is not in the workbook any more. Nothing was changed.` }),
  changed: (name: string) => ({ refused: `“${name}” has changed since it came in, ${LEFT}` }),
  /** @param where - such as: B7 on “Plan” */
  usedIn: (where: string) => ({ refused: `The formula in ${where} uses it, ${LEFT}` }),
  named: (name: string) => ({ refused: `The name “${name}” speaks of it, ${LEFT}` }),
} as const;
