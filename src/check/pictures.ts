/** What checks of pictures have in common: each with its path as written, and its file. */
import type { NamedPicture, PictureFile } from '../facts/pictures.ts';
import { picturesOf } from '../facts/pictures.ts';
import type { Bench } from './check.ts';
import { look } from './check.ts';

export interface Shown extends NamedPicture {
  /** Path below models/, as written. */
  readonly path: string;
  readonly file: PictureFile | 'outside' | undefined;
}

/** Those whose lines can be read. */
export const shownBy = ({ subject, facts }: Bench): readonly Shown[] =>
  picturesOf(subject).flatMap((picture) => {
    const path = look(facts, (use) => use(picture.row.file));
    return path === undefined ? [] : [{ ...picture, path, file: subject.pictures.files.get(path) }];
  });

/** The same with files that are there. */
export const filesOf = (bench: Bench): readonly (Shown & { readonly file: PictureFile })[] =>
  shownBy(bench).flatMap(({ file, ...shown }) => (file && file !== 'outside' ? [{ ...shown, file }] : []));

/** What a file of each type is called, and how its name ends; the first is the usual one. */
export const TYPES = {
  'image/png': { name: 'PNG', ends: ['.png'] },
  'image/jpeg': { name: 'JPEG', ends: ['.jpg', '.jpeg'] },
  'image/svg+xml': { name: 'SVG', ends: ['.svg'] },
} as const;
