/** The jig puts the seam of a matched cap as near the centreline as the line wants it. */
import { capOf, partsOf } from '../../facts/parts.ts';
import { row } from '../../facts/row.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { centreline, gap, line, outline, plan } from '../sketch.ts';

const check: Check = {
  id: 'seam-off-centre',
  stage: 'derived',
  severity: 'error',
  why: 'Under a clear finish a seam beside the centreline is seen from across the room, and every hole is measured from the wrong line.',
  mend: 'Set the jig against the seam, or use a jig that marks it closer.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'title: Jig P2 right\n    pattern: p2\n    hand: right\n    registers-on: seam',
    fails: 'title: Jig P2 right\n    pattern: p2\n    hand: right\n    registers-on: edge',
  },
  sketch: plan(outline(), line('M -22.6 4 H 22.5'), centreline(), gap(4, 0, 4, 'end')),
  run: ({ subject: { spec, plant }, facts }) => {
    if (!partsOf(spec).includes('cap')) return [];
    const seen = look(facts, (use) => {
      const within = row(plant.lines, use(spec.line), 'plant.lines')['seam-off'];
      const jig = row(plant.jigs, use(spec.location.jig), 'plant.jigs');
      const matched = use(capOf(spec).match) !== 'none';
      return matched && within && jig['registers-on']
        ? {
            at: jig['registers-on'].id,
            on: use(jig['registers-on']),
            id: within.id,
            within: use(within),
            off: use.fact('seam.off'),
          }
        : undefined;
    });
    if (!seen || seen.off.value <= seen.within.value) return [];
    const { at, on, id, within, off } = seen;
    return [
      {
        at,
        what: `Set against the ${on}, this jig may put the seam ${say(off, off.value)} off the centreline. No more than ${say(within, within.value)} is allowed.`,
        mend:
          on === 'edge' ? 'Use a jig that is set against the seam.' : 'Use a jig whose mark lies closer on the seam.',
        against: [{ at: id, text: 'how far off the seam may lie' }],
      },
    ];
  },
};
export default check;
