/** Holes that serve the making, or screws, are cut away or covered: none shows in the finished body. */
import { cutId, cutsOf } from '../../facts/cuts.ts';
import { namesOf } from '../../facts/row.ts';
import type { Region } from '../../geometry/polygon.ts';
import type { Pocket } from '../../geometry/solid/solid.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { liesInside } from '../../geometry/lies-inside.ts';
import { bore, cut, cuts, plate, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'hole-left-in-white',
  stage: 'derived',
  severity: 'error',
  why: 'A plugged hole shows through every finish, and an open one is a reject.',
  mend: 'Move it under a cover or into a cavity that is cut deeper, or make it less deep.',
  example: {
    file: 'models/base/bolt-on.yaml',
    passes: 'shape: { kind: rectangle, length: 52, width: 64 }',
    fails: 'shape: { kind: rectangle, length: 6, width: 64 }',
  },
  sketch: section(
    slab(),
    cuts(
      cut({ from: 28, to: 46, depth: 9 }),
      bore({ from: [13, 0], to: [13, 10], width: 4 }),
      bore({ from: [24, 0], to: [24, 7], width: 2 }),
    ),
    plate(20, 53),
    ring(13, 0, 3.8, 'upper-left'),
  ),
  run: (bench) => [...locationHoles(bench), ...ownHoles(bench)],
};
export default check;

/** Uses of a hole that nobody is to see. Ferrules and bushings are. */
const HIDDEN = ['location', 'pilot', 'screw'];

/** Of the jig: from the top, and out at the back where they go right through. */
function locationHoles(bench: Bench): Fault[] {
  const { subject, facts } = bench;
  const { location } = subject.spec;
  const holes = look(facts, (use) => use.fact('location.holes'));
  const at = location.depth?.id ?? location.jig.id;
  return (holes ?? []).flatMap((hole): Fault[] => {
    const through = hole.floor.zMm === -Infinity;
    const fault = (face: string, mend: string): Fault => ({
      at,
      what: `Hole ${hole.id} of the drilling jig would show in the ${face}: nothing there is cut deeper or lies over it.`,
      mend,
      against: [{ at: location.jig.id, text: 'the jig that is drilled through' }],
      hangsOn: ['location.holes'],
    });
    return [
      ...(isHidden(bench, hole, 'top')
        ? []
        : [fault('top', 'Drill it less deep, or cut a cavity there that is deeper.')]),
      ...(!through || isHidden(bench, { ...hole, opens: 'back' }, 'back')
        ? []
        : [fault('back', 'Give `location` a depth, so that it does not come through, or cover it.')]),
    ];
  });
}

/** Cut from the back: for pins, screws and pilots. */
function ownHoles(bench: Bench): Fault[] {
  const { subject, facts } = bench;
  const { holes } = subject.spec;
  return namesOf(holes).flatMap((id) => {
    const seen = look(facts, (use) => ({ use: use(holes![id]!.use), own: use.fact(`hole.${id}.void`) }));
    if (seen?.own.kind !== 'pocket' || seen.own.opens !== 'back' || !HIDDEN.includes(seen.use)) return [];
    if (isHidden(bench, seen.own, 'back')) return [];
    return [
      {
        at: holes![id]!.at.x.id,
        what: `The hole ${id} would show in the back: no cover lies over it, and nothing there is cut deeper.`,
        mend: 'Move it under a cover, or add the cover it belongs to.',
        against: platesOn(bench, 'back'),
        hangsOn: [`hole.${id}.void`],
      },
    ];
  });
}

/** The plates there are on a face: one may lie elsewhere than it should, or be too small. */
const platesOn = ({ subject: { spec }, facts }: Bench, face: 'back') =>
  namesOf(spec.covers)
    .filter((id) => look(facts, (use) => use(spec.covers![id]!.face)) === face)
    .flatMap((id) => {
      const { at, shape } = spec.covers![id]!;
      const size = shape.length ?? shape.diameter;
      return [
        { at: at.x.id, text: `where the cover ${id} lies` },
        ...(size ? [{ at: size.id, text: `how large the cover ${id} is` }] : []),
      ];
    });

/** Under a plate, in the seat of a cover, or cut away by a deeper cavity. */
function isHidden({ subject: { spec }, facts }: Bench, hole: Pocket, face: 'top' | 'back'): boolean {
  const plates = namesOf(spec.covers).map((id) =>
    look(facts, (use) => {
      const drawn = use.fact(`cover.${id}.drawn`);
      return use(spec.covers![id]!.face) === face && drawn.ok ? [drawn.polygon] : [];
    }),
  );
  const pockets = cutsOf(spec)
    .filter(({ kind }) => kind === 'cavity')
    .map((cut) =>
      look(facts, (use) => {
        const own = use.fact(`${cutId(cut)}.void`);
        if (own.kind !== 'pocket' || own.opens !== face) return [];
        const seat = use(spec.cavities![cut.id]!.purpose) === 'recess';
        return seat || isDeeper(own, hole, face) ? own.region : [];
      }),
    );
  // Where something cannot be read, it may be hidden: that is another finding's business.
  return [...plates, ...pockets].some((region: Region | undefined) => !region || liesInside(hole.region, region));
}

/** A hole that goes right through is cut away on a face by any cavity there. */
function isDeeper({ floor }: Pocket, hole: Pocket, face: 'top' | 'back'): boolean {
  if (hole.floor.zMm === -Infinity) return true;
  return face === 'top' ? floor.zMm <= hole.floor.zMm : floor.zMm >= hole.floor.zMm;
}
