/** The head and the frame of a PNG (ISO/IEC 15948): its sides, and whether all its chunks came through. */
import type { PictureForm } from '../../facts/pictures.ts';

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
/** Bits a sample may have, by kind of colour. */
const DEPTHS: Readonly<Record<number, readonly number[]>> = {
  0: [1, 2, 4, 8, 16],
  2: [8, 16],
  3: [1, 2, 4, 8],
  4: [8, 16],
  6: [8, 16],
};
const BY_PALETTE = 3;

/** By its first four bytes: a signature that was mangled on the way is a broken PNG. */
export const isPng = (bytes: Uint8Array): boolean => SIGNATURE.slice(0, 4).every((byte, i) => bytes[i] === byte);

export function readPng(bytes: Uint8Array): PictureForm {
  const type = 'image/png';
  const broken = (what: string): PictureForm => ({ is: 'broken', type, what });
  if (!SIGNATURE.every((byte, i) => bytes[i] === byte)) return broken('its first bytes were changed on the way');
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let size: { readonly width: number; readonly height: number } | undefined;
  let palette = true;
  let data = false;
  for (let at = SIGNATURE.length; at + 12 <= bytes.length;) {
    const length = view.getUint32(at);
    const name = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    const end = at + 8 + length;
    if (end + 4 > bytes.length) return broken('it ends before its last byte');
    if (crc32(bytes.subarray(at + 4, end)) !== view.getUint32(end))
      return broken(`its part ${shown(name)} was changed`);
    if (size === undefined) {
      if (name !== 'IHDR' || length !== 13) return broken('it does not begin with its sides');
      const [depth, colour, packed, filtered, laced] = bytes.subarray(at + 16, at + 21);
      if (!DEPTHS[colour!]?.includes(depth!) || packed !== 0 || filtered !== 0 || laced! > 1)
        return broken('its head says what no PNG has');
      size = { width: view.getUint32(at + 8), height: view.getUint32(at + 12) };
      if (size.width === 0 || size.height === 0) return broken('it has no size');
      palette = colour !== BY_PALETTE;
    }
    palette ||= name === 'PLTE';
    data ||= name === 'IDAT' && length > 0;
    if (name === 'IEND') {
      if (!data) return broken('it holds no picture');
      return palette ? { is: 'picture', type, ...size } : broken('its colours are missing');
    }
    at = end + 4;
  }
  return broken('it ends before its last byte');
}

const shown = (name: string): string => (/^[A-Za-z]{4}$/.test(name) ? name : 'without a name');

const TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c;
});

/** The check sum of a chunk: ISO/IEC 15948, annex D. */
export function crc32(bytes: Uint8Array): number {
  let c = 0xffffffff;
  for (const byte of bytes) c = TABLE[(c ^ byte) & 0xff]! ^ (c >>> 8);
  return (c ^ 0xffffffff) >>> 0;
}
