/** Both woods of a lamination bear at least the least pressure the adhesive asks for. */
import { laminationAdhesive } from '../../facts/press-row.ts';
import { boardOf, partsOf } from '../../facts/parts.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { sayAs } from '../say.ts';
import { line, rect, ring, section, shape, way } from '../sketch.ts';

const check: Check = {
  id: 'wood-too-soft-for-glue',
  stage: 'derived',
  severity: 'error',
  why: 'Pressed as the glue asks, the softer wood is crushed and the joint springs open later; pressed as the wood bears, the joint starves.',
  mend: 'Take an adhesive that closes under less pressure, or another wood; a plant that has tried it gives the species its own joint pressure.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'joint-pressure: 700 ±50 kPa',
    fails: 'joint-pressure: 950 ±50 kPa',
  },
  sketch: section(
    shape(rect(8, -5, 52, -1), 'bed', 'edge'),
    shape(rect(8, 18, 52, 22), 'bed', 'edge'),
    shape(rect(15, -1, 45, 6), 'cap', 'edge'),
    shape('M 15 6 H 45 C 52 9 52 15 45 18 H 15 C 8 15 8 9 15 6 Z', 'wood', 'edge'),
    way([22, -9], [22, -5]),
    way([38, -9], [38, -5]),
    line(
      'M 17 9 Q 23 12 30 9 Q 37 6 43 9 M 15 12 Q 22 15 30 12 Q 38 9 45 12 M 17 15 Q 23 17 30 15 Q 37 13 43 15',
      'thin',
    ),
    ring(48, 12, 4),
  ),
  run: ({ subject, facts }) => {
    if (!partsOf(subject.spec).includes('cap')) return [];
    const seen = look(facts, (use) => {
      const [cap, back] = [use.fact('press.bears.cap'), use.fact('press.bears.back')];
      const softer = back.value < cap.value ? ('back' as const) : ('cap' as const);
      return {
        at: laminationAdhesive(subject, use).need('joint-pressure', (glue) => glue['joint-pressure']).id,
        band: use.fact('press.pressable'),
        softer,
        species: boardOf(subject.spec, softer).species.id,
      };
    });
    if (!seen || seen.band.ok) return [];
    const { asked, borne } = seen.band;
    const least = asked.low ?? asked.value;
    return [
      {
        at: seen.at,
        what: `The glue asks for at least ${sayAs(asked, least)} on the joint, and the ${seen.softer}, the softer wood, bears ${sayAs(borne, borne.value)} at most.`,
        mend: `Take an adhesive that closes at ${sayAs(borne, Math.floor(borne.value / 10_000) * 10_000)} or less, or a denser wood.`,
        against: [{ at: seen.species, text: 'the softer wood' }],
      },
    ];
  },
};
export default check;
