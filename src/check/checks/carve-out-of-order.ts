/** The zones of a top follow each other from the edge inward: land, recurve, crown; and the land lies lower than what follows. */
import { highestPoint, pointsOf } from '../../facts/parts.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { carve, cuts, EDGE, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'carve-out-of-order',
  stage: 'spec',
  severity: 'error',
  why: 'The parts of the carve would lie over each other: it comes out as something nobody drew.',
  mend: 'Put land, recurve and crown one after the other from the edge inward, and the land lower than the crown or face.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'recurve: { at: 26, depth: 0.8 }, crown: { from: 95 }',
    fails: 'recurve: { at: 26, depth: 0.8 }, crown: { from: 20 }',
  },
  sketch: section(
    slab({ right: EDGE }),
    cuts(carve(24, 'C 54 0 50 10 41 10 C 32 10 34 4.5 44 4.5 H 56')),
    ring(38, 7, 4.2),
  ),
  run: (bench) => [...zones(bench), ...heights(bench)],
};
export default check;

function zones({ subject: { spec }, facts }: Bench): Fault[] {
  if (look(facts, (use) => use(spec.carve.kind)) !== 'arched') return [];
  const given = [
    { name: 'land', leaf: spec.carve.land?.width },
    { name: 'recurve', leaf: spec.carve.recurve?.at },
    { name: 'crown', leaf: spec.carve.crown?.from },
  ];
  const read = given.flatMap(({ name, leaf }) => {
    const q = leaf && look(facts, (use) => use(leaf));
    return q ? [{ name, at: leaf.id, q }] : [];
  });
  return read.slice(1).flatMap(({ name, at, q }, i) => {
    const before = read[i]!;
    if (q.value > before.q.value) return [];
    return [
      {
        at,
        what: `The ${name} is given at ${say(q, q.value)} from the edge. The ${before.name}, which comes before it, reaches ${say(before.q, before.q.value)} from the edge.`,
        mend: `Put the ${name} more than ${say(before.q, before.q.value)} from the edge.`,
        against: [{ at: before.at, text: `how far in the ${before.name} reaches` }],
      },
    ];
  });
}

function heights({ subject: { spec }, facts }: Bench): Fault[] {
  const high = highestPoint(spec);
  if (high === 'land' || !pointsOf(spec, 'machined').includes('land')) return [];
  const seen = look(facts, (use) => ({
    land: use.fact('thickness.body.machined.land'),
    high: use.fact(`thickness.body.machined.${high}`),
  }));
  if (!seen || seen.land.value < seen.high.value) return [];
  return [
    {
      at: 'thickness.body.machined.land',
      what: `The machined body is ${say(seen.land, seen.land.value)} at the land and ${say(seen.high, seen.high.value)} at the ${high}: the edge would stand higher than the middle.`,
      mend: `Make the body less than ${say(seen.high, seen.high.value)} thick at the land.`,
      against: [{ at: `thickness.body.machined.${high}`, text: `thickness at the ${high}` }],
    },
  ];
}
