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

/** An address that a program gives, "'My sheet'!B7", in its two parts. */
export function addressParts(address: string): { readonly sheet: string; readonly cell: string } {
  const cut = address.lastIndexOf('!') + 1;
  const [sheet = ''] = cut === 0 ? [] : placeOf(address.slice(0, cut)).sheets;
  return { sheet, cell: address.slice(cut) };
}
