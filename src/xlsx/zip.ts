import { DAMAGED, NO_WORKBOOK, OLD_OR_LOCKED, UnreadableFile, TOO_LARGE } from './refused';

const MB = 1_000_000;
/** What is refused before anything is unpacked, and again while it is: a file can lie about its sizes. */
const LIMITS = { file: 30 * MB, unpacked: 200 * MB, parts: 5_000 } as const;

const END = 0x06054b50;
const ENTRY = 0x02014b50;
const LOCAL = 0x04034b50;
const END_LENGTH = 22;
const LONGEST_COMMENT = 65_535;
const STORED = 0;
const DEFLATED = 8;

interface Entry {
  readonly method: number;
  readonly packed: number;
  readonly size: number;
  readonly at: number;
}

/** The parts of a file; each is unpacked only when it is read. */
export interface Package {
  readonly names: readonly string[];
  /** Undefined where there is no such part. */
  read(name: string): Promise<Uint8Array | undefined>;
  /** Elements that stand in trees so far. */
  nodes: number;
}

export function openPackage(bytes: Uint8Array): Package {
  if (bytes.length > LIMITS.file) throw new UnreadableFile(TOO_LARGE(`at most ${LIMITS.file / MB} MB`));
  const entries = directory(bytes);
  let left: number = LIMITS.unpacked;
  let reads = 0;
  const total = [...entries.values()].reduce((sum, { size }) => sum + size, 0);
  if (total > left) throw tooMuch();
  return {
    names: [...entries.keys()],
    nodes: 0,
    async read(name) {
      const entry = entries.get(name.toLowerCase());
      if (!entry) return undefined;
      // Others may name a part as often as they like.
      if (++reads > LIMITS.parts) throw tooMany();
      const part = await unpack(bytes, entry, left);
      left -= part.length;
      if (left < 0) throw tooMuch();
      return part;
    },
  };
}

const tooMuch = (): UnreadableFile =>
  new UnreadableFile(TOO_LARGE(`more than ${LIMITS.unpacked / MB} MB when unpacked`));
const tooMany = (): UnreadableFile => new UnreadableFile(TOO_LARGE(`more than ${LIMITS.parts} parts`));

/** What the directory at the end of a zip file lists, by name in small letters: names differ in case between programs. */
function directory(bytes: Uint8Array): Map<string, Entry> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const starts = bytes.length >= 4 ? view.getUint32(0, false) : 0;
  if (starts === 0xd0cf11e0) throw new UnreadableFile(OLD_OR_LOCKED);
  if (starts !== 0x504b0304) throw new UnreadableFile(NO_WORKBOOK);
  const end = endOf(view);
  const count = view.getUint16(end + 10, true);
  if (count > LIMITS.parts) throw tooMany();
  const found = new Map<string, Entry>();
  let at = view.getUint32(end + 16, true);
  for (let i = 0; i < count; i++) {
    if (at + 46 > end || view.getUint32(at, true) !== ENTRY) throw new UnreadableFile(DAMAGED);
    const [flags, method] = [view.getUint16(at + 8, true), view.getUint16(at + 10, true)];
    const length = view.getUint16(at + 28, true);
    const name = new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + length));
    if ((flags & 1) === 1) throw new UnreadableFile(OLD_OR_LOCKED);
    if (found.has(name.toLowerCase())) throw new UnreadableFile(DAMAGED);
    found.set(name.toLowerCase(), {
      method,
      packed: view.getUint32(at + 20, true),
      size: view.getUint32(at + 24, true),
      at: view.getUint32(at + 42, true),
    });
    at += 46 + length + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return found;
}

function endOf(view: DataView): number {
  const lowest = Math.max(0, view.byteLength - END_LENGTH - LONGEST_COMMENT);
  for (let at = view.byteLength - END_LENGTH; at >= lowest; at--)
    if (view.getUint32(at, true) === END) return at;
  throw new UnreadableFile(DAMAGED);
}

async function unpack(
  bytes: Uint8Array,
  { method, packed, size, at }: Entry,
  most: number,
): Promise<Uint8Array> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (at + 30 > bytes.length || view.getUint32(at, true) !== LOCAL) throw new UnreadableFile(DAMAGED);
  const start = at + 30 + view.getUint16(at + 26, true) + view.getUint16(at + 28, true);
  if (start + packed > bytes.length) throw new UnreadableFile(DAMAGED);
  const content = bytes.subarray(start, start + packed);
  if (method === STORED) return content;
  if (method !== DEFLATED) throw new UnreadableFile(DAMAGED);
  return inflate(content, size, most);
}

/** Stops as soon as more comes out than the directory said. */
async function inflate(packed: Uint8Array, size: number, most: number): Promise<Uint8Array> {
  if (size > most) throw tooMuch();
  const out = new Uint8Array(size);
  const stream = new Blob([packed as Uint8Array<ArrayBuffer>])
    .stream()
    .pipeThrough(new DecompressionStream('deflate-raw'));
  const reader = stream.getReader();
  let filled = 0;
  for (;;) {
    const { done, value } = await reader.read().catch(() => {
      throw new UnreadableFile(DAMAGED);
    });
    if (done) break;
    if (filled + value.length > size) {
      await reader.cancel();
      throw new UnreadableFile(DAMAGED);
    }
    out.set(value, filled);
    filled += value.length;
  }
  if (filled !== size) throw new UnreadableFile(DAMAGED);
  return out;
}
