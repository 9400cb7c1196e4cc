/** The files that specs name as pictures: read once each, whoever names them. A path that leaves models/ is not read. */
import { createHash } from 'node:crypto';
import type { PictureFile, PictureRow, Pictures } from '../facts/pictures.ts';
import { Leaf } from '../facts/leaf.ts';
import { present } from '../facts/row.ts';
import { readPicture } from './picture/picture.ts';

const FOLDER = 'models';

/** What reading pictures needs of the outside. */
export interface PictureFiles {
  list(dir: string): readonly string[];
  read(path: string): Uint8Array | undefined;
  isBelow(dir: string, path: string): boolean;
}

/** `tables`: the pictures of the plant and of each model. */
export function readPictures(
  tables: readonly (Readonly<Record<string, PictureRow>> | undefined)[],
  host: PictureFiles,
): Pictures {
  const named = new Set(tables.flatMap((table) => Object.values(present(table) ?? {}).flatMap(fileOf)));
  const files = [...named].flatMap((name) => {
    const file = stays(name) ? fileAt(`${FOLDER}/${name}`, host) : 'outside';
    return file ? [[name, file] as const] : [];
  });
  const there = host.list(FOLDER).filter((path) => /\.(?:png|jpe?g|svg)$/i.test(path));
  return {
    files: new Map(files),
    there: there.map((path) => path.slice(FOLDER.length + 1)).filter((path) => !path.startsWith('released/')),
  };
}

const fileOf = (row: PictureRow): string[] => (row.file instanceof Leaf ? [row.file.text] : []);

/** By its letters alone: neither from a root or a drive, nor upward, nor by another system's separators. */
const stays = (path: string): boolean =>
  !path.startsWith('/') && !/^[A-Za-z]:/.test(path) && !/[\\\p{Cc}]/u.test(path) && !path.split('/').includes('..');

/** Undefined where it is not there; a link may lead elsewhere in models/ and no further. */
function fileAt(path: string, host: PictureFiles): PictureFile | 'outside' | undefined {
  const bytes = host.read(path);
  if (bytes === undefined) return undefined;
  if (!host.isBelow(FOLDER, path)) return 'outside';
  return { bytes, sha256: createHash('sha256').update(bytes).digest('hex'), form: readPicture(bytes) };
}
