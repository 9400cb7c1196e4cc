/** Just enough of a WOFF2 file (W3C WOFF 2.0) to know its characters and its capitals' height: tables kept as they are in OpenType. */
import { brotliDecompressSync } from 'node:zlib';

// Known tags in the order of the W3C's table (section 5.1 of WOFF 2.0), as far as they are met before the needed ones.
const KNOWN = (
  'cmap head hhea hmtx maxp name OS/2 post cvt_ fpgm glyf loca prep CFF_ VORG EBDT EBLC gasp hdmx kern LTSH PCLT VDMX vhea ' +
  'vmtx BASE GDEF GPOS GSUB EBSC JSTF MATH CBDT CBLC COLR CPAL SVG_ sbix acnt avar bdat bloc bsln cvar fdsc feat fmtx fvar gvar ' +
  'hsty just lcar mort morx opbd prop trak Zapf Silf Glat Gloc Feat Sill'
).split(' ');

export interface FontFacts {
  readonly characters: ReadonlySet<number>;
  /** Height of the capitals per em. */
  readonly capitals: number;
}

export function readFont(bytes: Uint8Array): FontFacts {
  const tables = tablesOf(Buffer.from(bytes));
  const unitsPerEm = table(tables, 'head').readUInt16BE(18);
  // sCapHeight: OS/2 version 2 and later.
  return {
    characters: charactersOf(table(tables, 'cmap')),
    capitals: table(tables, 'OS/2').readInt16BE(88) / unitsPerEm,
  };
}

function table(tables: ReadonlyMap<string, Buffer>, tag: string): Buffer {
  const found = tables.get(tag);
  if (!found) throw new Error(`no table ${tag}`);
  return found;
}

function tablesOf(file: Buffer): Map<string, Buffer> {
  if (file.toString('latin1', 0, 4) !== 'wOF2') throw new Error('not a WOFF2 file');
  const count = file.readUInt16BE(12);
  const reader = { at: 48 };
  const entries = Array.from({ length: count }, () => entryAt(file, reader));
  const data = brotliDecompressSync(file.subarray(reader.at, reader.at + file.readUInt32BE(20)));
  const tables = new Map<string, Buffer>();
  let offset = 0;
  for (const { tag, length } of entries) {
    tables.set(tag, data.subarray(offset, offset + length));
    offset += length;
  }
  return tables;
}

function entryAt(file: Buffer, reader: { at: number }): { tag: string; length: number } {
  const flags = file.readUInt8(reader.at++);
  const index = flags & 63;
  const tag = index === 63 ? file.toString('latin1', reader.at, (reader.at += 4)) : (KNOWN[index] ?? '');
  const original = base128(file, reader);
  const version = flags >> 6;
  // glyf and loca are transformed by version 0, every other table by any but 0.
  const transformed = tag === 'glyf' || tag === 'loca' ? version === 0 : version !== 0;
  return { tag, length: transformed ? base128(file, reader) : original };
}

function base128(file: Buffer, reader: { at: number }): number {
  let value = 0;
  for (;;) {
    const byte = file.readUInt8(reader.at++);
    value = value * 128 + (byte & 127);
    if (byte < 128) return value;
  }
}

/** Characters with a glyph, from the format 4 or 12 table. */
function charactersOf(cmap: Buffer): Set<number> {
  const found = new Set<number>();
  for (let i = 0; i < cmap.readUInt16BE(2); i++) {
    const sub = cmap.subarray(cmap.readUInt32BE(4 + i * 8 + 4));
    if (sub.readUInt16BE(0) === 4) readFormat4(sub, found);
    if (sub.readUInt16BE(0) === 12) readFormat12(sub, found);
  }
  return found;
}

function readFormat4(sub: Buffer, found: Set<number>): void {
  const doubled = sub.readUInt16BE(6);
  for (let i = 0; i < doubled; i += 2) {
    const end = sub.readUInt16BE(14 + i);
    const start = sub.readUInt16BE(16 + doubled + i);
    for (let code = start; code <= end && code < 0xffff; code++) found.add(code);
  }
}

function readFormat12(sub: Buffer, found: Set<number>): void {
  for (let i = 0; i < sub.readUInt32BE(12); i++) {
    for (let code = sub.readUInt32BE(16 + i * 12); code <= sub.readUInt32BE(20 + i * 12); code++) found.add(code);
  }
}
