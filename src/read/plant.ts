/** The plant: all files of models/plant/ as one tree. A row defined twice is a finding. */
import type { PlantSpec } from '../facts/spec.generated.ts';
import type { Finding } from '../findings/finding.ts';
import { mistake } from './mistakes.ts';
import type { Entry, MapNode } from './node.ts';
import { keysAt } from './node.ts';
import type { Schema } from './schema.ts';
import { validate } from './schema.ts';
import type { Source } from './source.ts';
import { buildTree } from './tree.ts';

export interface PlantSource {
  readonly spec: PlantSpec;
  /** Names in a table of the plant; undefined where a file of it cannot be read: the name may stand there. */
  readonly names: (table: string) => readonly string[] | undefined;
  readonly findings: readonly Finding[];
}

export function joinPlant(sources: readonly Source[], findings: Finding[]): MapNode {
  const joined = new Map<string, Entry>();
  for (const { root } of sources) {
    if (root?.kind !== 'map') continue;
    for (const [key, entry] of root.entries) {
      if (key === 'units') {
        if (!joined.has(key)) joined.set(key, entry);
        continue;
      }
      const before = joined.get(key);
      joined.set(key, before ? joinSections(key, before, entry, findings) : entry);
    }
  }
  const place = sources[0]?.root?.place ?? { file: 'models/plant', start: 0, end: 0 };
  return { kind: 'map', place, entries: joined };
}

/** Rows of one section from two files; what is no map of rows can only be given once. */
function joinSections(section: string, first: Entry, second: Entry, findings: Finding[]): Entry {
  const twice = (name: string, here: Entry, there: Entry) =>
    findings.push(
      mistake('defined-twice', {
        place: here.key,
        what: `${name === section ? '' : `${section}: `}"${name}" is defined twice in the plant.`,
        mend: name === section ? 'Keep one of the two.' : 'Keep one of the two rows, or give one another name.',
        notes: [{ place: there.key, text: 'the other one' }],
      }),
    );
  if (first.value.kind !== 'map' || second.value.kind !== 'map' || section === 'plant') {
    twice(section, second, first);
    return first;
  }
  const rows = new Map(first.value.entries);
  for (const [name, entry] of second.value.entries) {
    const there = rows.get(name);
    if (there) twice(name, entry, there);
    else rows.set(name, entry);
  }
  return { key: first.key, value: { ...first.value, entries: rows } };
}

export function readPlant(sources: readonly Source[], schema: Schema): PlantSource {
  const findings: Finding[] = sources.flatMap((source) => (source.root ? validate(schema, source.root, 'plant.') : []));
  const root = joinPlant(sources, findings);
  const whole = sources.length > 0 && sources.every((source) => source.root);
  const names = (table: string) => (whole ? keysAt(root, table.slice('plant.'.length)) : undefined);
  if (whole) findings.push(...sectionsMissing(root));
  const spec = buildTree(root, 'plant.', { schema, kind: 'plant', names, findings }) as PlantSpec;
  return { spec, names, findings };
}

/** What no card can do without. A file of the plant may lack any of them, the plant may not. */
function sectionsMissing(root: MapNode): Finding[] {
  const first = [...root.entries.values()][0]?.key ?? root.place;
  return ['plant', 'route', 'stations']
    .filter((section) => !root.entries.has(section))
    .map((section) =>
      mistake('not-given', {
        place: first,
        what: `No file of the plant says "${section}".`,
        mend: `Add "${section}" to this file or to another of models/plant/.`,
        about: [`plant.${section}`],
      }),
    );
}
