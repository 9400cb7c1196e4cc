/** Pictures made byte by byte, as small as a sound one can be: what is wrong with others is put into these. */
import { deflateSync } from 'node:zlib';
import { crc32 } from '../../src/read/picture/png.ts';

const bytesOf = (...parts: readonly (string | readonly number[] | Uint8Array)[]): Uint8Array =>
  Uint8Array.from(parts.flatMap((part) => (typeof part === 'string' ? [...Buffer.from(part, 'latin1')] : [...part])));

const four = (n: number): readonly number[] => [n >>> 24, (n >>> 16) & 255, (n >>> 8) & 255, n & 255];
const two = (n: number): readonly number[] => [(n >>> 8) & 255, n & 255];

export function chunk(name: string, data: readonly number[] | Uint8Array = []): Uint8Array {
  const body = bytesOf(name, data);
  return bytesOf(four(data.length), body, four(crc32(body)));
}

export const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** White, one bit a pixel. `shade`: all its first byte of each row, for another picture of the same size. */
export function png(width: number, height: number, shade = 255): Uint8Array {
  const row = [0, ...Array.from({ length: Math.ceil(width / 8) }, (_, i) => (i === 0 ? shade : 255))];
  const rows = deflateSync(Uint8Array.from(Array.from({ length: height }, () => row).flat()), { level: 9 });
  return bytesOf(SIGNATURE, head(width, height), chunk('IDAT', rows), chunk('IEND'));
}

export const head = (width: number, height: number, tail: readonly number[] = [1, 0, 0, 0, 0]): Uint8Array =>
  chunk('IHDR', [...four(width), ...four(height), ...tail]);

export const joined = bytesOf;

export const segment = (marker: number, data: readonly number[] | Uint8Array): Uint8Array =>
  bytesOf([0xff, marker], two(data.length + 2), data);

const frame = (width: number, height: number, marker = 0xc0, bits = 8): Uint8Array =>
  segment(marker, [bits, ...two(height), ...two(width), 1, 1, 0x11, 0]);

/** The segments of a JPEG with no more in its scan than a few bytes: enough for what reads its frame. */
export function jpeg(width: number, height: number, more: { marker?: number; bits?: number; exif?: Uint8Array } = {}) {
  const { marker, bits, exif } = more;
  return bytesOf(
    [0xff, 0xd8],
    exif ? segment(0xe1, exif) : [],
    frame(width, height, marker, bits),
    segment(0xda, [1, 1, 0, 0, 63, 0]),
    [0x12, 0xff, 0x00, 0x34, 0xff, 0xd0, 0x56],
    [0xff, 0xd9],
  );
}

/** What a camera writes of which way up it was held. */
export const orientation = (value: number, little = false): Uint8Array => {
  const [short, long] = [two(value), four(8)].map((bytes) => (little ? bytes.toReversed() : bytes));
  const word = (n: number) => (little ? two(n).toReversed() : two(n));
  const dword = (n: number) => (little ? four(n).toReversed() : four(n));
  return bytesOf(
    'Exif\0\0',
    little ? 'II' : 'MM',
    word(42),
    long!,
    word(1),
    [...word(0x0112), ...word(3), ...dword(1), ...short!, 0, 0],
    dword(0),
  );
};

/** Files beside the sample's own that no line of it names: examples and cases do. */
export const morePictures = (): Record<string, Uint8Array> => ({
  'models/pictures/wide.png': png(4800, 20),
  'models/pictures/small.png': png(200, 150),
  'models/pictures/good.png': png(720, 560),
  'models/pictures/photo.jpg': jpeg(1060, 820),
  'models/pictures/photo.png': jpeg(1060, 820),
});
