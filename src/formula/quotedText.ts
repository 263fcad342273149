/** A text as a formula writes it, with the quotation marks in it doubled. */
export const quotedText = (text: string): string => `"${text.replaceAll('"', '""')}"`;
