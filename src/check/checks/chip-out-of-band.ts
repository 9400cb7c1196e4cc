/** A cutter takes chips that are neither too thin, so that it rubs, nor too thick, so that it tears and breaks. */
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say, sayAs } from '../say.ts';
import { across, centreMark, disc, line, plan, rect, shape } from '../sketch.ts';
import type { UsedCutter } from '../used-cutters.ts';
import { cuttersOnce } from '../used-cutters.ts';

const check: Check = {
  id: 'chip-out-of-band',
  stage: 'derived',
  severity: 'caution',
  why: 'Too thin a chip rubs, burns the wood and dulls the edge; too thick a one tears figured wood and breaks the cutter.',
  mend: 'Change feed or spindle speed, or write the band its maker gives into the row of the cutter.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'feed: 3.6 m/min',
    fails: 'feed: 9.6 m/min',
  },
  sketch: plan(
    shape(rect(-29, -6, 29, 16), 'wood', 'edge'),
    shape(disc(2, -2, 9), 'removed', 'edge'),
    shape('M -30 -17 V 7 H -6 A 9 9 0 0 0 3 -2 V -17 Z', 'air'),
    line('M -29 7 H -6 A 9 9 0 0 0 2 -6', 'edge'),
    shape('M -6 -17 H 30 V -6.2 H -6 Z', 'air'),
    line(disc(-6, -2, 9), 'thin'),
    centreMark(-6, -2),
    across(2, 2.1, 10.1),
  ),
  run: (bench) => cuttersOnce(bench).flatMap((used) => fault(bench, used)),
};
export default check;

function fault({ facts }: Bench, { cutter, named }: UsedCutter): Fault[] {
  const { id } = cutter;
  if (!facts.has(`cutter.${id}.chip`)) return [];
  const seen = look(facts, (use) => ({
    chip: use.fact(`cutter.${id}.chip`),
    load: use.fact(`cutter.${id}.chip-load`),
    band: use.fact(`cutter.${id}.chip-band`),
    feed: use(cutter.need('feed')),
    at: cutter.need('feed').id,
    own: cutter.row['chip-load']?.id,
    over: cutter.row['step-over']?.id,
  }));
  if (!seen?.band) return [];
  const { chip, load, band, feed, at, own, over } = seen;
  const { value, low = value, high = value } = band;
  if (chip.value >= low && chip.value <= high) return [];
  const near = (feed.value / chip.value) * (chip.value < low ? low : high);
  const thinned =
    chip.value < load.value ? ` (${say3(load.value)} for each tooth, thinned by the narrow step over)` : '';
  return [
    {
      at,
      what: `${id} takes chips ${say3(chip.value)} thick${thinned}. ${own ? 'The band given for it' : 'The published band'} is ${say3(low)} to ${say3(high)}.`,
      mend: `At this spindle speed feed ${chip.value < low ? 'at least' : 'at most'} ${sayAs(feed, near, Math.max(2, feed.decimals))}; or write the band its maker gives into its row.`,
      against: [
        ...(own ? [{ at: own, text: 'the band given for it' }] : []),
        ...(over && chip.value < load.value ? [{ at: over, text: 'how far it steps over' }] : []),
        { at: named.id, text: 'where the model cuts with it' },
      ],
      hangsOn: [`cutter.${id}.chip`],
    },
  ];
}

const say3 = (nm: number): string => say({ unit: 'mm', decimals: 3 }, nm);
