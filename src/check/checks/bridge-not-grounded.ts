/** From a part whose strings are grounded by wire there is a way for that wire to the controls. */
import type { CutId } from '../../facts/cuts.ts';
import { cutId, cutsOf } from '../../facts/cuts.ts';
import { cavityOfPart } from '../../facts/fitted.ts';
import { namesOf } from '../../facts/row.ts';
import { regionContains } from '../../geometry/nearness.ts';
import type { Bench, Check } from '../check.ts';
import { look } from '../check.ts';
import type { Part } from '../hardware.ts';
import { fittedParts, sizesOf } from '../hardware.ts';
import { meantMeetings, reachedFrom } from '../reached.ts';
import { bore, cut, cuts, plate, ring, section, slab } from '../sketch.ts';

const check: Check = {
  id: 'bridge-not-grounded',
  stage: 'derived',
  severity: 'error',
  why: 'The strings hum until a hand touches them. The way for the wire is then drilled by hand through a finished body.',
  mend: 'Add a channel from under the part, or from one of its holes, into the controls.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'width: 90, corner: 2 }',
    fails: 'width: 20, corner: 2 }',
  },
  sketch: section(
    slab(),
    cuts(cut({ from: 6, to: 22, depth: 9, back: true }), bore({ from: [20, 11], to: [31, 0], width: 2, end: 'open' })),
    plate(38, 55, 0, 2),
    ring(31, 0, 3.2, 'upper-left'),
  ),
  run: (bench) => {
    const controls = controlsOf(bench);
    const reached = new Set(controls.flatMap((id) => [...reachedFrom(bench, id)]));
    return fittedParts(bench).flatMap((part) => {
      const { ground } = part.row;
      const from = ground ? cutsUnder(bench, part) : undefined;
      if (!from || controls.length === 0 || from.some((id) => reached.has(id))) return [];
      // Where it leads to a pickup that is not reached itself, that is the finding.
      if (from.some((id) => [...reachedFrom(bench, id)].some((other) => isPickup(bench, other)))) return [];
      return [
        {
          at: part.fitted.hardware.id,
          what: `${part.name} is grounded by a wire, and no channel or cavity leads that wire from ${part.fitted.id} to ${controls[0]!.slice('cavity.'.length)}.`,
          mend: 'Drill a channel from one of its holes, or from under it, that runs into the controls.',
          against: [
            { at: part.row.ground!.id, text: 'how it is grounded' },
            ...sizesOf(part.row.body, part.name),
            ...namesOf(bench.subject.spec.channels).flatMap((id) => {
              const [into] = bench.subject.spec.channels![id]!.into ?? [];
              return into ? [{ at: into.id, text: `what the channel ${id} runs into` }] : [];
            }),
          ],
          hangsOn: meantMeetings(bench),
        },
      ];
    });
  },
};
export default check;

function isPickup({ subject: { spec }, facts }: Bench, id: CutId): boolean {
  const cavity = spec.cavities?.[id.slice('cavity.'.length)];
  return id.startsWith('cavity.') && cavity !== undefined && look(facts, (use) => use(cavity.purpose)) === 'pickup';
}

function controlsOf({ subject: { spec }, facts }: Bench): readonly CutId[] {
  return namesOf(spec.cavities)
    .filter((id) => look(facts, (use) => use(spec.cavities![id]!.purpose)) === 'controls')
    .map((id): CutId => `cavity.${id}`);
}

/** The cavity it lies in; its own holes, and those that open under it. */
function cutsUnder({ subject: { spec }, facts }: Bench, { id, fitted }: Part): readonly CutId[] | undefined {
  return look(facts, (use) => {
    if (fitted.kind === 'hole' || fitted.kind === 'channel') return [`${fitted.kind}.${fitted.id}` as CutId];
    const cavity = cavityOfPart(spec, use, fitted);
    if (cavity || fitted.kind !== 'fitting') return cavity ? [cavity] : [];
    const face = use.fact(`fitted.${id}.face`);
    const under = use.fact(`fitted.${id}.on-face`);
    const own = use.fact(`fitted.fitting.${fitted.id}.mounts`).map(({ hole }) => `hole.${hole}`);
    return cutsOf(spec)
      .filter((cut) => {
        if (own.includes(cutId(cut))) return true;
        const taken = use.fact(`${cutId(cut)}.void`);
        if (!under || cut.kind !== 'hole' || taken.kind !== 'pocket' || taken.opens !== face) return false;
        const { xMm, yMm } = use.fact(`hole.${cut.id}.spot`);
        return regionContains(under, xMm, yMm);
      })
      .map(cutId);
  });
}
