/**
 * The first phase: from the files of a workspace to typed trees with a place for every value, and every mistake of every
 * file at once.
 *
 *   models/<model>.yaml        a model each
 *   models/plant/**.yaml       the plant, spread over as many files as you like
 *  models/<folder>/<base>.yaml     what models are based on
 *   models/readings/<station>.csv   what was measured there
 *   models/pictures/**         what a spec names as a picture, here or elsewhere below models/
 *   models/schemas/            the published schemas; models/released/ belongs to releases
 */
import type { Pictures } from '../facts/pictures.ts';
import type { PlantSpec } from '../facts/spec.generated.ts';
import type { Finding } from '../findings/finding.ts';
import { mistake } from './mistakes.ts';
import type { ModelSource } from './model.ts';
import { readModel } from './model.ts';
import { readPictures } from './pictures.ts';
import type { PictureFiles } from './pictures.ts';
import { readPlant } from './plant.ts';
import { loadSchema } from './schema.ts';
import { model as modelValidator, plant as plantValidator } from './validators.generated.ts';
import { readReadings } from './readings.ts';
import type { ReadingFiles } from './readings.ts';
import { readSource } from './source.ts';
import type { Source } from './source.ts';

/** What reading needs of the outside. */
export type Files = PictureFiles;

export interface Workspace {
  readonly plant: PlantSpec;
  readonly models: readonly ModelSource[];
  /** Findings of the plant and of files as such; those of a model are with the model. */
  readonly findings: readonly Finding[];
  readonly readings: ReadingFiles;
  readonly pictures: Pictures;
  /** Text of every file read, for rendering places. */
  readonly texts: ReadonlyMap<string, string>;
}

export function readWorkspace(
  files: Files,
  schemas: { readonly model: Uint8Array; readonly plant: Uint8Array },
): Workspace {
  const paths = files.list('models').filter((path) => path.endsWith('.yaml'));
  const sources = paths
    .filter((path) => !/^models\/(schemas|released)\//.test(path))
    .map((path) => readSource(path, files.read(path) ?? new Uint8Array()));
  const isPlant = (source: Source) => source.file.startsWith('models/plant/');
  const plantFiles = sources.filter(isPlant);
  const modelFiles = sources.filter((source) => !isPlant(source));
  const plant = readPlant(plantFiles, loadSchema(schemas.plant, plantValidator));
  const byName = new Map(modelFiles.map((source) => [source.file.slice('models/'.length, -'.yaml'.length), source]));
  const catalogue = { sources: byName, schema: loadSchema(schemas.model, modelValidator), names: plant.names };
  const ids = [...byName.keys()].filter((name) => !name.includes('/'));
  const readings = readReadings(
    files
      .list('models/readings')
      .filter((path) => /\.csv$/i.test(path))
      .map((path) => ({ path, bytes: files.read(path) ?? new Uint8Array() })),
    { stations: plant.names('plant.stations'), models: ids },
  );
  const unread = plantFiles.flatMap((source) => source.findings.map((one) => ({ ...one, about: ['plant'] })));
  const findings = [...unread, ...plant.findings, ...readings.findings];
  if (plantFiles.length === 0) {
    findings.push(
      mistake('file-missing', {
        place: { file: 'models/plant', start: 0, end: 0 },
        what: 'There is no plant: models/plant/ holds no YAML file.',
        mend: 'Run platen in the folder that holds models/, or name it with --root.',
        about: ['plant'],
      }),
    );
  }
  const models = ids.map((id) => readModel(id, catalogue));
  const tables = [plant.spec, ...models.flatMap(({ variants }) => variants.map(({ spec }) => spec))];
  const pictures = readPictures(
    tables.map((table) => table.pictures),
    files,
  );
  // A base nobody starts from is still a file somebody wrote: its faults are shown with the plant's.
  const met = new Set(models.flatMap((model) => model.findings));
  const unused = modelFiles.flatMap((source) => source.findings.filter((finding) => !met.has(finding)));
  return {
    plant: plant.spec,
    models,
    findings: [...findings, ...unused],
    readings,
    pictures,
    texts: new Map([...sources.map((source) => [source.file, source.text] as const), ...readings.texts]),
  };
}
