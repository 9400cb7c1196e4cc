/** Cuts whose place to each other matters lie as near as the line wants them, whatever machine and pins leave open. */
import { setupOrder } from '../../facts/cutting-order.ts';
import { row } from '../../facts/row.ts';
import type { Check } from '../check.ts';
import { look } from '../check.ts';
import { say, sayCauses } from '../say.ts';
import { across, bore, cut, cuts, line, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'place-not-within',
  stage: 'derived',
  severity: 'error',
  why: 'A bridge beside the line of the neck, a shaft beside its cavity: each cut is right by its own set-up, and the two do not belong together.',
  mend: 'Cut both in one set-up, draw in the limits of pins and holes, or lay the locating holes farther apart.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'neck-to-bridge: 0.4',
    fails: 'neck-to-bridge: 0.2',
  },
  sketch: section(
    slab(),
    cuts(
      cut({ from: 16, to: 46, depth: 11, back: true }),
      bore({ from: [22, 0], to: [22, 7], width: 3.4, end: 'flat' }),
    ),
    line('M 22 -5.5 V 12', 'centre'),
    line('M 31 -5.5 V 21', 'centre'),
    across(-4, 22, 31),
  ),
  run: ({ subject: { spec, plant }, facts }) => {
    const seen = look(facts, (use) => {
      const within = row(plant.lines, use(spec.line), 'plant.lines')['place-within'];
      return within && { within, pairs: use.fact('sideways.pairs') };
    });
    if (!seen) return [];
    // One finding a kind of pair and of set-ups: the worst of them. Its number stands for the others.
    const words = ['neck-to-bridge', 'back-to-top'] as const;
    return words.flatMap((word) => {
      const limit = look(facts, (use) => seen.within[word] && { id: seen.within[word].id, ...use(seen.within[word]) });
      const off = seen.pairs.filter((pair) => pair.word === word);
      const [worst] = off.toSorted((x, y) => (y.off.high ?? 0) - (x.off.high ?? 0));
      if (!limit || !worst || (worst.off.high ?? 0) <= limit.value) return [];
      const { a, b } = worst;
      const causes = sayCauses(worst.off, worst.off.causes ?? []);
      const together = look(facts, (use) => use(a.spec.setup) === use(b.spec.setup)) ?? false;
      return [
        {
          at: b.place.id,
          what: `${a.id} and ${b.id} may lie ${say(worst.off, worst.off.high ?? 0)} off from each other sideways: ${causes}. No more than ${say(limit, limit.value)} is allowed.`,
          mend: together
            ? `Cut both on a machine that is true enough to put them within ${say(limit, limit.value)} of each other.`
            : word === 'neck-to-bridge'
              ? 'Cut neck pocket and bridge holes in one set-up, on a machine that holds it.'
              : 'Draw in the limits of the pins, or locate on holes that lie farther apart.',
          against: [
            { at: limit.id, text: 'how far off they may lie' },
            { at: a.spec.setup.id, text: `the set-up that cuts ${a.id}` },
            { at: b.spec.setup.id, text: `the set-up that cuts ${b.id}` },
          ],
          hangsOn: ['sideways.pairs', ...setupOrder.map((id) => `location.${id}.datums`)],
        },
      ];
    });
  },
};
export default check;
