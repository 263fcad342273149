const LEFT = 'so the sheet was left as it is. If you do not need it, delete it by its tab.';

/** Why a sheet that came in is not taken back, in every host alike. */
export const NOT_BACK = {
  gone: (name: string) => ({ refused: `“${name}” is not in the workbook any more. Nothing was changed.` }),
  changed: (name: string) => ({ refused: `“${name}” has changed since it came in, ${LEFT}` }),
  /** @param where - such as: B7 on “Plan” */
  usedIn: (where: string) => ({ refused: `The formula in ${where} uses it, ${LEFT}` }),
  named: (name: string) => ({ refused: `The name “${name}” speaks of it, ${LEFT}` }),
} as const;
