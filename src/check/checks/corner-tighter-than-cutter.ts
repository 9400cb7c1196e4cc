/** The cutter of a cavity gets into its corners. */
import { namesOf, row } from '../../facts/row.ts';
import { formatNumber } from '../../units/format.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { centreMark, disc, field, ideal, line, plan, ring, shape } from '../sketch.ts';

const check: Check = {
  id: 'corner-tighter-than-cutter',
  stage: 'derived',
  severity: 'error',
  why: 'A cutter leaves its own radius in a corner: what is to go in there does not.',
  mend: 'Name a thinner cutter, or draw the corners rounder.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'depth: 19.0 ±0.2\n    corner: 4',
    fails: 'depth: 19.0 ±0.2\n    corner: 3',
  },
  sketch: plan(
    field(),
    shape('M -29.4 16.4 V -9 H 12 V 16.4 Z', 'air'),
    shape('M 12 -9 H 4 A 8 8 0 0 1 12 -1 Z', 'wood'),
    line('M -29 -9 H 4 A 8 8 0 0 1 12 -1 V 16'),
    ideal('M 4 -9 H 12 V -1'),
    line(disc(4, -1, 7.8), 'thin'),
    centreMark(4, -1),
    ring(10.6, -7.6, 3.2),
  ),
  run: (bench) => namesOf(bench.subject.spec.cavities).flatMap((id) => fault(bench, id)),
};
export default check;

function fault({ subject: { spec, plant }, facts }: Bench, id: string): Fault[] {
  const seen = look(facts, (use) => {
    const { corner, cutter } = spec.cavities![id]!;
    const { diameter } = row(plant.cutters, use(cutter), 'plant.cutters');
    const rest = use.fact(`cavity.${id}.rest`);
    return { corner: use(corner), at: corner.id, name: use(cutter), diameter: use(diameter), row: diameter.id, rest };
  });
  if (!seen) return [];
  const { corner, diameter, name, at, rest } = seen;
  const radius = diameter.value / 2;
  const tight = diameter.value > 2 * corner.value;
  if (!tight && rest.gapMm === 0) return [];
  const left =
    rest.gapMm === Infinity
      ? 'it fits nowhere in it'
      : `it leaves up to ${say(corner, Math.round(rest.gapMm * 1e6))} of wood standing there, ${formatNumber(rest.areaMm2 / 1e6, 'mm²', 1)} mm² in all`;
  const clears = rest.clears === undefined ? '' : ` ${rest.clears} clears it.`;
  return [
    {
      at,
      what: tight
        ? `A corner of ${say(corner, corner.value)} cannot be cut with ${name}, which has a radius of ${say(corner, radius)}: ${left}.`
        : `Somewhere ${id} is narrower than ${name}, which has a radius of ${say(corner, radius)}: ${left}.`,
      mend: tight
        ? `Give the corner a radius of at least ${say(corner, radius)}, or name a cutter no thicker than ${say(corner, 2 * corner.value)}.${clears}`
        : `Draw it wider there than ${say(corner, diameter.value)}, or name a thinner cutter.${clears}`,
      against: [{ at: seen.row, text: 'diameter of the cutter' }],
    },
  ];
}
