/**
 * Draws the add-in's icons: the curved paper of a still-life set seen from the side, and on it bars that double in height,
 * as light does with every stop. `node src/build/icons.cjs` writes them anew.
 */
const fs = require('node:fs');
const path = require('node:path');
const zlib = require('node:zlib');

const FOLDER = path.resolve(__dirname, '../hosts/excel/icons');
const SIZES = [16, 32, 64, 80];
const TILE = [0x17, 0x5f, 0x68];
const PAPER = [0xfb, 0xf8, 0xf1];
const LIGHT = [0xff, 0xcf, 0x70];

const box =
  (left, top, right, bottom, radius = 0) =>
  (x, y) => {
    const dx = Math.max(left + radius - x, x - right + radius, 0);
    const dy = Math.max(top + radius - y, y - bottom + radius, 0);
    return x >= left && x < right && y >= top && y < bottom && Math.hypot(dx, dy) <= radius;
  };
const CORNER = { x: 7, y: 9, outer: 5, inner: 3 };
const curve = (x, y) => {
  const away = Math.hypot(x - CORNER.x, y - CORNER.y);
  return x < CORNER.x && y >= CORNER.y && away <= CORNER.outer && away > CORNER.inner;
};
/** On a grid of sixteen, the later on top; every size is a whole multiple, so straight edges stay sharp. */
const SHAPES = [
  [TILE, box(0, 0, 16, 16, 3)],
  [PAPER, box(2, 2, 4, CORNER.y)],
  [PAPER, curve],
  [PAPER, box(CORNER.x, 12, 14, 14)],
];
for (const [left, height] of [[6, 2], [9, 4], [12, 8]]) SHAPES.push([LIGHT, box(left, 11 - height, left + 2, 11)]); // prettier-ignore

const SUB = 8;
/** Red, green, blue and opacity of one pixel: the mean of its sub-pixels, edges blended without a dark fringe. */
function pixel(px, py, unit) {
  const sum = [0, 0, 0];
  let covered = 0;
  for (let i = 0; i < SUB * SUB; i++) {
    const x = (px + ((i % SUB) + 0.5) / SUB) / unit;
    const y = (py + (Math.floor(i / SUB) + 0.5) / SUB) / unit;
    const colour = SHAPES.findLast(([, holds]) => holds(x, y))?.[0];
    if (!colour) continue;
    covered++;
    colour.forEach((value, channel) => (sum[channel] += value));
  }
  return [...sum.map((value) => Math.round(value / (covered || 1))), Math.round((255 * covered) / SUB ** 2)];
}

function chunk(type, data) {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const out = Buffer.alloc(body.length + 8);
  out.writeUInt32BE(data.length, 0);
  body.copy(out, 4);
  out.writeUInt32BE(crc32(body), body.length + 4);
  return out;
}
function crc32(bytes) {
  let crc = ~0;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return ~crc >>> 0;
}

function icon(size) {
  const head = Buffer.alloc(13);
  head.writeUInt32BE(size, 0);
  head.writeUInt32BE(size, 4);
  head.set([8, 6], 8); // eight bits a channel, with opacity
  const rows = [];
  for (let y = 0; y < size; y++) {
    rows.push(0);
    for (let x = 0; x < size; x++) rows.push(...pixel(x, y, size / 16));
  }
  const picture = zlib.deflateSync(Buffer.from(rows), { level: 9 });
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk('IHDR', head),
    chunk('IDAT', picture),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

fs.mkdirSync(FOLDER, { recursive: true });
for (const size of SIZES) fs.writeFileSync(path.join(FOLDER, `icon-${size}.png`), icon(size));
