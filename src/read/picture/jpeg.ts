/**
 * The segments of a JPEG (ITU-T T.81, annex B): its sides, whether it comes to its end, and which way up it is shown, which
 * cameras write beside the picture (Exif).
 */
import type { PictureForm } from '../../facts/pictures.ts';

const START = 0xd8;
const END = 0xd9;
const SCAN = 0xda;
const EXIF = 0xe1;
/** Baseline, extended and progressive: what browsers show. */
const FRAMES = [0xc0, 0xc1, 0xc2];
/** Lossless, differential or arithmetic: what they do not. */
const OTHER_FRAMES = [0xc3, 0xc5, 0xc6, 0xc7, 0xc9, 0xca, 0xcb, 0xcd, 0xce, 0xcf];

export const isJpeg = (bytes: Uint8Array): boolean => bytes[0] === 0xff && bytes[1] === START && bytes[2] === 0xff;

export function readJpeg(bytes: Uint8Array): PictureForm {
  const type = 'image/jpeg';
  const broken = (what: string): PictureForm => ({ is: 'broken', type, what });
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let size: { readonly width: number; readonly height: number } | undefined;
  let turned = false;
  let scanned = false;
  for (let at = 2; ;) {
    if (bytes[at] !== 0xff) return broken(at < bytes.length ? 'its parts do not join' : 'it ends before its last byte');
    while (bytes[at] === 0xff) at++;
    const marker = bytes[at++];
    if (marker === undefined) return broken('it ends before its last byte');
    if (marker === END) {
      if (!size || !scanned) return broken('it holds no picture');
      return turned
        ? { is: 'picture', type, width: size.height, height: size.width }
        : { is: 'picture', type, ...size };
    }
    if (at + 2 > bytes.length) return broken('it ends before its last byte');
    const length = view.getUint16(at);
    const next = at + length;
    if (length < 2) return broken('its parts do not join');
    if (next > bytes.length) return broken('it ends before its last byte');
    if (OTHER_FRAMES.includes(marker)) return broken('it is packed in a way that browsers do not show');
    if (FRAMES.includes(marker)) {
      if (length < 8 || size) return broken('its head says what no JPEG has');
      if (bytes[at + 2] !== 8) return broken('it is packed in a way that browsers do not show');
      size = { width: view.getUint16(at + 5), height: view.getUint16(at + 3) };
      if (size.width === 0 || size.height === 0) return broken('it has no size');
    }
    if (marker === EXIF) turned ||= liesOnItsSide(bytes.subarray(at + 2, next));
    at = next;
    if (marker !== SCAN) continue;
    if (!size) return broken('it does not say its sides');
    scanned = true;
    at = afterScan(bytes, at);
  }
}

/** Where the next segment begins: after the picture's own bytes, in which a marker is stuffed or one of restart. */
function afterScan(bytes: Uint8Array, from: number): number {
  for (let at = bytes.indexOf(0xff, from); at >= 0; at = bytes.indexOf(0xff, at + 1)) {
    const next = bytes[at + 1];
    if (next !== undefined && next !== 0 && next !== 0xff && (next < 0xd0 || next > 0xd7)) return at;
  }
  return bytes.length;
}

const ORIENTATION = 0x0112;

/** Whether Exif says that it is shown turned by a quarter (orientation 5 to 8): then its sides change places. */
function liesOnItsSide(exif: Uint8Array): boolean {
  if (String.fromCharCode(...exif.subarray(0, 6)) !== 'Exif\0\0') return false;
  const tiff = exif.subarray(6);
  if (tiff.length < 8) return false;
  const view = new DataView(tiff.buffer, tiff.byteOffset, tiff.byteLength);
  const little = tiff[0] === 0x49;
  const from = view.getUint32(4, little);
  if (from + 2 > tiff.length) return false;
  const count = view.getUint16(from, little);
  for (let i = 0; i < count; i++) {
    const entry = from + 2 + i * 12;
    if (entry + 12 > tiff.length) return false;
    if (view.getUint16(entry, little) === ORIENTATION) return view.getUint16(entry + 8, little) >= 5;
  }
  return false;
}
