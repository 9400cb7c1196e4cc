/** Every note is for a station that this model passes: only there it prints. */
import { namesOf, present } from '../../facts/row.ts';
import { offer } from '../../findings/nearest.ts';
import type { Check } from '../check.ts';

const check: Check = {
  id: 'note-of-no-station',
  stage: 'spec',
  severity: 'error',
  why: 'A note prints on the card of its station. One for a station that no body of this model passes is read by nobody.',
  mend: 'Call the note as the plant calls the station it is for.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'notes: { sizing: Sand the glue faces last. }',
    fails: 'notes: { sanding: Sand the glue faces last. }',
  },
  run: ({ subject: { spec, plant }, facts, flow }) => {
    const rows = namesOf(present(plant.stations));
    // Of a plant that cannot be read nobody knows the stations.
    if (rows.length === 0) return [];
    const passed = rows.filter((id) => flow.find((station) => station.id === id)?.passes ?? true);
    return namesOf(spec.notes)
      .filter((id) => !passed.includes(id))
      .map((id) => {
        const leaf = spec.notes![id]!;
        facts.note(leaf);
        const what = rows.includes(id)
          ? `This note is for ${id}, and no body of this model passes that station.`
          : `This note is for ${id}, and the plant has no station of that name.`;
        return { at: leaf.id, what, mend: offer(id, passed), against: [] };
      });
  },
};
export default check;
