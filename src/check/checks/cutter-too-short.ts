/** Cutters and drills reach the floor of what they cut. */
import { setupOrder } from '../../facts/cutting-order.ts';
import { namesOf, row } from '../../facts/row.ts';
import type { Leaf } from '../../facts/leaf.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { cut, cuts, cutter, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'cutter-too-short',
  stage: 'derived',
  severity: 'error',
  why: 'Where the flutes end the shank rubs: it burns the wood, and the tool or the hold gives way.',
  mend: 'Name a tool that reaches deeper, or cut less deep.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'diameter: 12\n    reach: 48',
    fails: 'diameter: 12\n    reach: 30',
  },
  sketch: section(
    slab(),
    cuts(cut({ from: 12, to: 40, depth: 14 })),
    cutter({ x: 37, tip: 14, width: 6, flutes: 6, shank: 7.4 }),
    ring(40.6, 4, 3.4),
  ),
  run: (bench) => {
    const { cavities, holes, channels } = bench.subject.spec;
    return [
      ...namesOf(cavities).flatMap((id) => fault(bench, 'cavity', id, cavities![id]!.cutter)),
      ...namesOf(holes).flatMap((id) => fault(bench, 'hole', id, holes![id]!.drill)),
      ...namesOf(channels).flatMap((id) => channelFault(bench, id)),
      ...setupOrder.flatMap((setup) => {
        const cutter = bench.subject.spec.setups[setup]?.cutters?.perimeter;
        return cutter ? fault(bench, 'perimeter', setup, cutter) : [];
      }),
    ];
  },
};
export default check;

type Kind = 'cavity' | 'hole' | 'perimeter';

function fault({ subject: { plant }, facts }: Bench, kind: Kind, id: string, tool: Leaf<string>): Fault[] {
  const fact = `${kind}.${id}.deep` as `hole.${string}.deep`;
  const seen = look(facts, (use) => {
    const { reach } = row(plant.cutters, use(tool), 'plant.cutters');
    return { name: use(tool), reach: use(reach), row: reach.id, deep: use.fact(fact) };
  });
  if (!seen) return [];
  const { name, reach, deep } = seen;
  const most = deep.high ?? deep.value;
  if (reach.value >= most) return [];
  return [
    {
      at: tool.id,
      what: `${name} reaches ${say(deep, reach.value)} deep, and here it has to go as deep as ${say(deep, most)}.`,
      mend: `Name a tool that reaches at least ${say(deep, most)}.`,
      against: [
        { at: seen.row, text: 'how deep it reaches' },
        { at: kind === 'perimeter' ? fact : `${kind}.${id}.required`, text: 'the depth asked for' },
      ],
    },
  ];
}

/** A drill goes the length of its channel and of the way before it: its chuck cannot follow into the body. */
function channelFault({ subject: { spec, plant }, facts }: Bench, id: string): Fault[] {
  const { drill, start, end } = spec.channels![id]!;
  const seen = look(facts, (use) => {
    const { reach } = row(plant.cutters, use(drill), 'plant.cutters');
    return {
      name: use(drill),
      reach: use(reach),
      row: reach.id,
      long: use.fact(`channel.${id}.length`),
      whole: use.fact(`channel.${id}.drill-length`),
    };
  });
  if (!seen || seen.reach.value >= seen.whole.value) return [];
  const { name, reach, long, whole } = seen;
  const before = whole.value - long.value;
  return [
    {
      at: drill.id,
      what: `${name} reaches ${say(long, reach.value)}, and the channel ${id} needs ${say(long, whole.value)}: ${say(long, long.value)} for itself${before > 0 ? ` and ${say(long, before)} before it, from where the drill comes into the body; the chuck stays outside` : ''}.`,
      mend: `Name a drill that reaches at least ${say(long, whole.value)}${before > 0 ? ', or start it nearer to the open' : ''}.`,
      against: [
        { at: seen.row, text: 'how deep it reaches' },
        { at: start.x.id, text: `where ${id} starts` },
        { at: end.y.id, text: `where ${id} ends` },
      ],
      hangsOn: [`channel.${id}.void`],
    },
  ];
}
