/** What stands before the ! of a reference. */
export interface SheetPlace {
  /** Whether it is another workbook, as in [Book.xlsx]Plan! or [1]!. */
  readonly isElsewhere: boolean;
  /** The sheet; with Jan:Dec! the first and the last; none where a workbook stands alone. */
  readonly sheets: readonly string[];
}

/** @param before - with the ! behind it: `Plan!`, `'Ann''s set'!` */
export function placeOf(before: string): SheetPlace {
  const typed = before.slice(0, -1);
  const name = typed.startsWith("'") ? typed.slice(1, -1).replaceAll("''", "'") : typed;
  const bookEnd = name.lastIndexOf(']');
  const sheets = name.slice(bookEnd + 1).split(':');
  return { isElsewhere: name.includes('['), sheets: sheets.filter((sheet) => sheet !== '') };
}

const isSame = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

/** Whether what stands before a reference names a sheet of this workbook, alone or as the first or last of several. */
export function namesSheet(before: string, sheet: string): boolean {
  const { isElsewhere, sheets } = placeOf(before);
  return !isElsewhere && sheets.some((name) => isSame(name, sheet));
}

/** Whether a reference speaks of a sheet, in a formula that stands on it or elsewhere. */
export const isMeantOf =
  (sheet: string, isHere: boolean) =>
  (before?: string): boolean =>
    before === undefined ? isHere : namesSheet(before, sheet);

/** An address that a program gives, "'My sheet'!B7", in its two parts. */
export function addressParts(address: string): { readonly sheet: string; readonly cell: string } {
  const cut = address.lastIndexOf('!') + 1;
  const [sheet = ''] = cut === 0 ? [] : placeOf(address.slice(0, cut)).sheets;
  return { sheet, cell: address.slice(cut) };
}
