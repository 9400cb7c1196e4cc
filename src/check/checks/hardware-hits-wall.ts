/** What hangs behind a panel in its hole keeps clear of the walls of its cavity, at the worst of location and machine. */
import type { Bench, Check, Fault } from '../check.ts';
import type { Part } from '../hardware.ts';
import { against, fittedParts, lowOf } from '../hardware.ts';
import { drawnAndWorst, say } from '../say.ts';
import { bore, cut, cuts, pot, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'hardware-hits-wall',
  stage: 'derived',
  severity: 'error',
  why: 'The shaft comes up through the panel and the part behind it stands on the wall: it is filed or chiselled in.',
  mend: 'Move the hole away from the wall, or make the cavity larger there.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'at: { x: 70, y: -88 }',
    fails: 'at: { x: 58, y: -88 }',
  },
  sketch: section(
    slab(),
    cuts(
      cut({ from: 20, to: 52, depth: 12, back: true }),
      bore({ from: [22, 0], to: [22, 6], width: 2.8, end: 'open' }),
    ),
    pot(22, 5),
    ring(18.4, 7.4, 3.4, 'upper-left'),
  ),
  run: (bench) => fittedParts(bench).flatMap((part) => faults(bench, part)),
};
export default check;

function faults(bench: Bench, { fitted, id, name, row }: Part): Fault[] {
  if (fitted.kind !== 'hole') return [];
  const room = `fitted.${id}.room` as const;
  const seen = against(bench, room, row.room);
  if (!seen || lowOf(seen.found) >= seen.asked.value) return [];
  const { found, asked, at } = seen;
  const short = asked.value - lowOf(found);
  const lies = drawnAndWorst(found, (size, past) => `${size} ${past ? 'inside' : 'clear of'} the wall of its cavity`);
  return [
    {
      at: fitted.place.id,
      what: `${name} in ${fitted.id} lies ${lies}. It needs ${say(asked, asked.value)} of room.`,
      mend: `Move ${fitted.id} ${say(asked, short)} away from the wall.`,
      against: [
        { at: fitted.hardware.id, text: 'the part that goes in' },
        { at, text: `the room ${name} needs` },
        ...placesOf(bench, fitted.id),
      ],
      hangsOn: [room],
    },
  ];
}

/** Where the cavity lies that the hole runs into. */
function placesOf({ subject: { spec }, facts }: Bench, hole: string) {
  const reading = facts.read((use) => use.fact(`fitted.hole.${hole}.cavity`));
  const cavity = reading.ok ? reading.value?.slice('cavity.'.length) : undefined;
  return cavity === undefined ? [] : [{ at: spec.cavities![cavity]!.at.x.id, text: 'where the cavity lies' }];
}
