/** Widths in parts of the type size, those of a wide sans serif and a little over: nobody knows which one a page has. From experience. */
const NARROW = /[ijlfrt.,:;'’|!()[\]·′ \u00a0]/;
const WIDE = /[mwMW@%…—]/;
const CAPITAL = /[A-ZÄÖÜ0-9+=<>×]/;
/** Letters of scripts whose signs are as wide as high. */
const SQUARE = 0x2e80;

function part(letter: string): number {
  if ((letter.codePointAt(0) ?? 0) >= SQUARE) return 1.05;
  if (NARROW.test(letter)) return 0.42;
  if (WIDE.test(letter)) return 1;
  return CAPITAL.test(letter) ? 0.72 : 0.63;
}

const BOLD = 1.12;

/** How wide a line of words is at most. */
export const textWidth = (text: string, size: number, isBold = false): number =>
  [...text].reduce((sum, letter) => sum + part(letter), 0) * size * (isBold ? BOLD : 1);

/** Words in lines of a width; a word that is wider than that is parted. */
export function wrapped(text: string, width: number, size: number): string[] {
  const lines: string[] = [];
  let line = '';
  const put = (word: string): void => {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer, size) <= width) {
      line = longer;
      return;
    }
    if (line !== '') {
      lines.push(line);
      line = '';
      put(word);
      return;
    }
    const letters = [...word];
    let fits = 1;
    while (fits < letters.length && textWidth(letters.slice(0, fits + 1).join(''), size) <= width) fits++;
    lines.push(letters.slice(0, fits).join(''));
    if (fits < letters.length) put(letters.slice(fits).join(''));
  };
  for (const word of text.split(/ +/)) if (word !== '') put(word);
  if (line !== '') lines.push(line);
  return lines;
}
