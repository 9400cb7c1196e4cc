/** A wire’s channel drilled in from the edge leaves no open hole in the side: a part closes it, or it is plugged. */
import { namesOf } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say, sayPoint } from '../say.ts';
import { bore, cut, cuts, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'wire-hole-in-side',
  stage: 'derived',
  severity: 'error',
  why: 'A hole for a wire stands open in the side of the finished body; filled later, it shows through the finish.',
  mend: 'Start the channel in a cavity, let a jack close it, or say `mouth: plugged`.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'channels:\n  pickup-wire:',
    fails:
      'channels:\n  charger-wire: { setup: top, start: { x: 160, y: -100 }, end: { x: 100, y: -100 }, diameter: 6, from: cap-face, depth: 25 ±1.0, drill: d-6-long, use: wire, into: [controls] }\n  pickup-wire:',
  },
  sketch: section(
    slab({ right: 54 }),
    cuts(cut({ from: 10, to: 28, depth: 11 }), bore({ from: [54, 7], to: [26, 7], width: 3.4, end: 'open' })),
    ring(53, 7, 3.6),
  ),
  run: (bench) => namesOf(bench.subject.spec.channels).flatMap((id) => fault(bench, id)),
};
export default check;

function fault(bench: Bench, id: string): Fault[] {
  const { subject, facts } = bench;
  const channel = subject.spec.channels![id]!;
  const seen = look(facts, (use) => ({
    what: use(channel.use),
    plugged: channel.mouth !== undefined && use(channel.mouth) === 'plugged',
    mouth: use.fact(`channel.${id}.mouth`),
    wide: use(channel.diameter),
  }));
  if (!seen) return [];
  const { mouth, plugged, wide } = seen;
  if (plugged && !mouth) {
    return [
      {
        at: channel.mouth!.id,
        what: `The channel ${id} is said to be plugged, and leaves no hole in the side: it starts inside the body.`,
        mend: 'Take `mouth` out, or start it outside the edge.',
        against: [{ at: channel.start.x.id, text: 'where it starts' }],
        hangsOn: [`channel.${id}.mouth`],
      },
    ];
  }
  if (!mouth || plugged || seen.what !== 'wire' || isClosed(bench, id)) return [];
  return [
    {
      at: channel.start.x.id,
      what: `The channel ${id} is drilled in from outside and leaves a hole ${say(wide, wide.value)} wide in the side of the body, at ${sayPoint({ x: mouth.xMm, y: mouth.yMm }, subject.hand)}: no jack lies there to close it.`,
      mend: 'Start it inside the cavity it comes from, or say `mouth: plugged`.',
      against: [{ at: channel.use.id, text: 'what it is for' }],
      hangsOn: [`channel.${id}.mouth`],
    },
  ];
}

/** Whether the bore of a jack takes the whole of it away: what is plugged in there covers it. */
function isClosed({ subject: { spec }, facts }: Bench, id: string): boolean {
  return namesOf(spec.channels).some((other) => {
    const { use: what, diameter } = spec.channels![other]!;
    if (other === id || look(facts, (use) => use(what)) !== 'jack') return false;
    return (
      look(facts, (use) => {
        const [own, bore] = [use.fact(`channel.${id}.mouth`), use.fact(`channel.${other}.mouth`)];
        if (!own || !bore) return false;
        const off = Math.hypot(own.xMm - bore.xMm, own.yMm - bore.yMm, own.zMm - bore.zMm);
        return off * 1e6 + use(spec.channels![id]!.diameter).value / 2 <= use(diameter).value / 2;
      }) ?? true
    );
  });
}
