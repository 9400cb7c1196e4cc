/** A station's gauge reads what the check asks for: nobody weighs glue with a tape. */
import { namesOf } from '../../facts/row.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';

/** What is read in each part a gauge plays at a station; a part not listed is a gauge's own business. */
const READS: Readonly<Record<string, string>> = {
  depth: 'length',
  height: 'length',
  thickness: 'length',
  hole: 'length',
  lean: 'length',
  line: 'length',
  width: 'length',
  flatness: 'length',
  straightedge: 'length',
  time: 'time',
  pressure: 'pressure',
  moisture: 'moisture',
  temperature: 'temperature',
  humidity: 'humidity',
  glue: 'mass',
  mass: 'mass',
  'go-no-go': 'pass',
};

const check: Check = {
  id: 'gauge-reads-another-thing',
  stage: 'derived',
  severity: 'error',
  why: 'The card names a gauge that cannot show what it is to check, and the check is skipped or invented.',
  mend: 'Name a gauge that reads it.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'gauges: { glue: scale, time: clock }',
    fails: 'gauges: { glue: tape, time: clock }',
  },
  run: ({ subject: { plant }, facts }) =>
    namesOf(plant.stations).flatMap((station) => {
      const { gauges } = plant.stations![station]!;
      return namesOf(gauges).flatMap((part): Fault[] => {
        const leaf = gauges![part]!;
        const seen = look(facts, (use) => {
          const name = use(leaf);
          const row = plant.gauges && Object.hasOwn(plant.gauges, name) ? plant.gauges[name] : undefined;
          return row && { name, reads: use(row.reads), at: row.reads.id };
        });
        const wanted = Object.hasOwn(READS, part) ? READS[part] : undefined;
        if (!seen || wanted === undefined || seen.reads === wanted) return [];
        const others = namesOf(plant.gauges).filter(
          (id) => look(facts, (use) => use(plant.gauges![id]!.reads)) === wanted,
        );
        return [
          {
            at: leaf.id,
            what: `Station ${station} is to check ${part} with "${seen.name}", which reads ${seen.reads}, not ${wanted}.`,
            mend:
              others.length > 0
                ? `Name a gauge that reads ${wanted}: ${others.join(', ')}.`
                : `Name a gauge that reads ${wanted}.`,
            against: [{ at: seen.at, text: 'what it reads' }],
          },
        ];
      });
    }),
};
export default check;
