/** Both woods of a lamination bear at least the least pressure the adhesive asks for. */
import { laminationAdhesive } from '../../facts/press-row.ts';
import { boardOf, partsOf } from '../../facts/parts.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { sayAs } from '../say.ts';

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
