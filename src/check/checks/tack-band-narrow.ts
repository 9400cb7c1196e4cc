/** Between the two saw cuts there is room for the tacks the line spreads there. */
import { namesOf, row } from '../../facts/row.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';

const check: Check = {
  id: 'tack-band-narrow',
  stage: 'derived',
  severity: 'error',
  why: 'A tack nearer to the trim line is in the way of the blade: teeth fly. One nearer to the edge splits the waste and holds nothing.',
  mend: 'Move the rough line out, take thinner tacks, or let the model place pins inside the joint.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'tacks:\n  pin-a: { at: { x: -80, y: 150 } }\n  pin-b: { at: { x: -70, y: -130 } }\n',
    fails: '',
  },
  run: ({ subject: { spec, plant }, facts }) => {
    if (namesOf(spec.tacks).length > 0 || !facts.has('tacks.by-rule')) return [];
    const seen = look(facts, (use) => {
      const tacks = row(plant.lines, use(spec.line), 'plant.lines').tacks;
      const [needed, band] = [use.fact('tacks.rough-needed'), use.fact('tacks.band')];
      if (!tacks || !needed || !band) return undefined;
      return {
        needed,
        band,
        there: use.fact('saw.rough.distance'),
        wanted: use(tacks.count).value,
        placed: use.fact('tacks.by-rule').length,
        tacks,
        edge: row(plant.tacks, use(tacks.kind), 'plant.tacks').edge.id,
      };
    });
    if (!seen) return [];
    const { needed, band, there, wanted, placed, tacks, edge } = seen;
    const against = [
      { at: tacks.kind.id, text: 'the tack' },
      { at: edge, text: 'the least wood to an edge' },
    ];
    if (there.value < needed.value) {
      const mm = (nm: number) => say(needed, nm);
      const sum = [
        `${mm(band.trim.value)} trim line`,
        `${mm(band.kerf.value)} its kerf`,
        `${mm(band.trimWander.value)} the trim saw strays`,
        `${mm(band.edge.value)} wood`,
        `${mm(band.diameter.value)} tack`,
        `${mm(2 * band.offMark.value)} off its mark, either way`,
        `${mm(band.edge.value)} wood`,
        `${mm(band.roughWander.value)} the rough saw strays`,
      ];
      return [
        {
          at: 'saw.rough.distance',
          what: `The rough line is ${mm(there.value)} outside the outline, and tacks in the waste need ${sum.join(' + ')} = ${mm(needed.value)}.`,
          mend: `Put the rough line at least ${mm(needed.value)} outside.`,
          against,
        },
      ];
    }
    if (placed === wanted) return [];
    return [
      {
        at: 'saw.rough.distance',
        what: `Nowhere along the waste is room for ${wanted} tacks clear of seams, holes and relief cuts.`,
        mend: 'Put the rough line further out, or place the tacks in the model.',
        against,
      },
    ];
  },
};
export default check;
