import { crc32, deflateRawSync } from 'node:zlib';
import type { BookCell, BookSheet } from '../../src/book/book';

export interface Part {
  readonly content: string | Uint8Array;
  /** What the file says of its size, where that is a lie. */
  readonly claims?: number;
}
type Parts = Readonly<Record<string, string | Part>>;

/** A zip file made by hand. */
export function zip(parts: Parts): Uint8Array {
  const [files, directory]: [Buffer[], Buffer[]] = [[], []];
  let at = 0;
  for (const [name, given] of Object.entries(parts)) {
    const part = typeof given === 'string' ? { content: given } : given;
    const content = Buffer.from(part.content as string);
    const packed = deflateRawSync(content);
    const common = Buffer.alloc(26);
    common.writeUInt16LE(20, 0);
    common.writeUInt16LE(8, 4);
    common.writeUInt32LE(crc(content), 10);
    common.writeUInt32LE(packed.length, 14);
    common.writeUInt32LE(part.claims ?? content.length, 18);
    common.writeUInt16LE(Buffer.byteLength(name), 22);
    const local = Buffer.concat([Buffer.from('PK\x03\x04', 'latin1'), common, Buffer.from(name), packed]);
    const rest = Buffer.alloc(14);
    rest.writeUInt32LE(at, 10);
    directory.push(
      Buffer.concat([Buffer.from('PK\x01\x02\x14\0', 'latin1'), common, rest, Buffer.from(name)]),
    );
    files.push(local);
    at += local.length;
  }
  const list = Buffer.concat(directory);
  const end = Buffer.alloc(22);
  end.write('PK\x05\x06', 'latin1');
  end.writeUInt16LE(files.length, 8);
  end.writeUInt16LE(files.length, 10);
  end.writeUInt32LE(list.length, 12);
  end.writeUInt32LE(at, 16);
  return new Uint8Array(Buffer.concat([...files, list, end]));
}
const crc = (bytes: Buffer): number => crc32(bytes);

const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const MAIN = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
const relations = (list: Readonly<Record<string, readonly [type: string, target: string]>>): string =>
  `<Relationships>${Object.entries(list)
    .map(([id, [type, target]]) => `<Relationship Id="${id}" Type="${OFFICE}/${type}" Target="${target}"/>`)
    .join('')}</Relationships>`;

/** The parts of a workbook with one sheet. */
export const workbook = (sheet: string, more: Parts = {}, names = ''): Parts => ({
  '_rels/.rels': relations({ a: ['officeDocument', 'xl/workbook.xml'] }),
  'xl/workbook.xml': `<workbook ${MAIN} xmlns:r="${OFFICE}"><sheets><sheet name="Sheet1" sheetId="1" r:id="s"/></sheets>${names}</workbook>`,
  'xl/_rels/workbook.xml.rels': relations({
    s: ['worksheet', 'worksheets/sheet1.xml'],
    t: ['sharedStrings', 'sharedStrings.xml'],
  }),
  'xl/worksheets/sheet1.xml': `<worksheet ${MAIN}>${sheet}</worksheet>`,
  ...more,
});
export const cells = (inside: string): string => `<sheetData>${inside}</sheetData>`;

/** A sheet with nothing but these cells, or what else is said of it. */
export const sheetOf = (held: readonly BookCell[], more: Partial<BookSheet> = {}): BookSheet => ({
  name: 'One & only',
  hidden: false,
  widths: {},
  heights: {},
  cells: held,
  merges: [],
  freeze: { rows: 0, columns: 0 },
  tables: [],
  rules: [],
  conditions: [],
  charts: [],
  page: { landscape: false, header: 'One & only', titleRows: 0, breaks: [] },
  ...more,
});
