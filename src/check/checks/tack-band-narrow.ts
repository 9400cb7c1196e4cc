/** Between the two saw cuts there is room for the tacks that stand in the waste. */
import type { DerivedFacts, Use } from '../../facts/facts.ts';
import { row } from '../../facts/row.ts';
import type { Length } from '../../units/quantity.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { plan, ring, sawLine, tackHead, waste } from '../sketch.ts';
import { kindNamed, tacksToLookAt } from '../tacks.ts';
import type { Tack } from '../tacks.ts';

const check: Check = {
  id: 'tack-band-narrow',
  stage: 'derived',
  severity: 'error',
  why: 'A tack nearer to the trim line is in the way of the blade: teeth fly. One nearer to the edge splits the waste and holds nothing.',
  mend: 'Move the rough line out, take thinner tacks, or let the model place pins inside the joint.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'pin-b: { at: { x: -70, y: -130 }, kind: pin-14 }',
    fails: 'pin-b: { at: { x: -70, y: -204 }, kind: pin-14 }',
  },
  sketch: plan(waste(-12, 14), sawLine(-3), tackHead(7, -9), tackHead(-1, 5), ring(-1.4, 5, 3.2)),
  run: (bench) => {
    const faults = tacksToLookAt(bench).flatMap((tack) => narrow(bench, tack));
    // Tacks of one kind want the same room: said once.
    const first = faults.filter((one, i) => faults.findIndex(({ what }) => what === one.what) === i);
    return first.length > 0 ? first : crowded(bench);
  },
};
export default check;

function narrow(bench: Bench, tack: Tack): Fault[] {
  const seen = look(bench.facts, (use) => {
    const kind = kindOf(bench, use, tack);
    return {
      needed: use.fact(`tacks.rough-needed.${kind}`),
      band: use.fact(`tacks.band.${kind}`),
      there: use.fact('saw.rough.distance'),
      inWaste: !tack.own || !use.fact(`tack.${tack.id}.spot`).inBody,
      at: tack.own ? tack.at : 'saw.rough.distance',
      edge: row(bench.subject.plant.tacks, kind, 'plant.tacks').edge.id,
      named: kindNamed(bench, use, tack),
    };
  });
  if (!seen?.inWaste || seen.there.value >= seen.needed.value) return [];
  const { needed, band, there } = seen;
  return [
    {
      at: seen.at,
      what: `The rough line is ${say(needed, there.value)} outside the outline. For tacks in the waste it must be at least ${sumOf(needed, band)} = ${say(needed, needed.value)} outside.`,
      mend: `Put the rough line at least ${say(needed, needed.value)} outside, or stand pins in the joint of the body.`,
      against: [
        ...(tack.own ? [{ at: 'saw.rough.distance', text: 'the rough line' }] : []),
        { at: seen.named, text: 'which kind of tack it is' },
        { at: seen.edge, text: 'the least wood between a tack and an edge' },
      ],
    },
  ];
}

/** Of the tacks a line spreads none may have found a place: what it is called is known all the same. */
function kindOf({ subject: { spec, plant } }: Bench, use: Use, tack: Tack): string {
  const own = spec.tacks?.[tack.id]?.kind;
  const line = row(plant.lines, use(spec.line), 'plant.lines').tacks;
  return use((own ?? line?.kind)!);
}

function sumOf(needed: Length, band: DerivedFacts[`tacks.band.${string}`]): string {
  const mm = (nm: number) => say(needed, nm);
  return [
    `${mm(band.trim.value)} (trim line)`,
    `${mm(band.kerf.value)} (its kerf)`,
    `${mm(band.trimWander.value)} (how far the trim saw strays)`,
    `${mm(band.edge.value)} (wood)`,
    `${mm(band.diameter.value)} (tack)`,
    `${mm(2 * band.offMark.value)} (off its mark, either way)`,
    `${mm(band.edge.value)} (wood)`,
    `${mm(band.roughWander.value)} (how far the rough saw strays)`,
  ].join(' + ');
}

/** Wide enough, and yet nowhere clear of all else. */
function crowded({ subject: { spec, plant }, facts }: Bench): Fault[] {
  if (!facts.has('tacks.by-rule')) return [];
  const seen = look(facts, (use) => {
    const tacks = row(plant.lines, use(spec.line), 'plant.lines').tacks;
    return tacks && { wanted: use(tacks.count).value, at: tacks.count.id, placed: use.fact('tacks.by-rule').length };
  });
  if (!seen || seen.placed === seen.wanted) return [];
  return [
    {
      at: 'saw.rough.distance',
      what: `Nowhere along the waste is room for ${seen.wanted} tacks clear of seams, holes and relief cuts.`,
      mend: 'Put the rough line further out, or place the tacks in the model.',
      against: [{ at: seen.at, text: 'how many tacks the line wants' }],
    },
  ];
}
