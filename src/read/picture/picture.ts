/** What a file is by its bytes: PNG, JPEG or SVG, whole or broken, or none of them. Never throws, whatever the bytes. */
import type { PictureForm } from '../../facts/pictures.ts';
import { isJpeg, readJpeg } from './jpeg.ts';
import { isPng, readPng } from './png.ts';
import { readSvg } from './svg.ts';

export function readPicture(bytes: Uint8Array): PictureForm {
  if (isPng(bytes)) return readPng(bytes);
  if (isJpeg(bytes)) return readJpeg(bytes);
  return readSvg(bytes) ?? { is: 'other' };
}
