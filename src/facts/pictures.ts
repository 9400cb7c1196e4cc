/** Pictures that an engineer put beside the specs: which a model shows, and what their files are. */
import { namesOf } from './row.ts';
import type { ModelSpec, PlantSpec } from './spec.generated.ts';
import type { Subject } from './subject.ts';

export type PictureType = 'image/png' | 'image/jpeg' | 'image/svg+xml';

/** What the bytes of a file are, whatever its name ends in. */
export type PictureForm =
  /** Sides in pixels, as it is shown; of a drawing in units of its own. */
  | { readonly is: 'picture'; readonly type: PictureType; readonly width: number; readonly height: number }
  /** A drawing that holds more than a drawing: each thing in words. */
  | { readonly is: 'acting'; readonly type: PictureType; readonly acts: readonly string[] }
  /** It begins as a picture, and cannot be shown: why, in words. */
  | { readonly is: 'broken'; readonly type: PictureType; readonly what: string }
  | { readonly is: 'other' };

export interface PictureFile {
  readonly bytes: Uint8Array;
  /** SHA-256 in hexadecimal digits. */
  readonly sha256: string;
  readonly form: PictureForm;
}

export interface Pictures {
  /** By path as a spec writes it; 'outside' of one that leaves models/. What is not there is not in it. */
  readonly files: ReadonlyMap<string, PictureFile | 'outside'>;
  /** Files below models/ that are called as a picture is, as a spec would write them. */
  readonly there: readonly string[];
}

export type PictureRow = NonNullable<ModelSpec['pictures']>[string] | NonNullable<PlantSpec['pictures']>[string];

export interface NamedPicture {
  readonly id: string;
  readonly row: PictureRow;
  readonly of: 'plant' | 'model';
}

/** Those of the plant, then the model's own; one of the same id takes the place of the plant's. */
export function picturesOf({ spec, plant }: Pick<Subject, 'spec' | 'plant'>): readonly NamedPicture[] {
  const own = namesOf(spec.pictures);
  return [
    ...namesOf(plant.pictures)
      .filter((id) => !own.includes(id))
      .map((id) => ({ id, row: plant.pictures![id]!, of: 'plant' }) as const),
    ...own.map((id) => ({ id, row: spec.pictures![id]!, of: 'model' }) as const),
  ];
}
