/** How deep the holes are that a set-up is pinned through, from the face that lies on its fixture. */
import type { SetupId } from '../../facts/cutting-order.ts';
import { setupOrder } from '../../facts/cutting-order.ts';
import type { Use } from '../../facts/facts.ts';
import { byDefinition } from '../../facts/facts.ts';
import { namesOf, row } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Length } from '../../units/quantity.ts';
import type { Rule } from '../rule.ts';
import { derivation } from '../rule.ts';
import { setupOf, surfaceOf } from '../surfaces.ts';

/** A hole as the pin of the fixture meets it. */
export interface PinHole {
  readonly id: string;
  /** The number that says how deep it is; of one that goes right through, what says where it lies. */
  readonly by: string;
  /** Where it opens on the fixture: how deep it is there; nothing of one that goes right through. */
  readonly deep: Length | undefined;
  /** Whether it opens on the face that lies on the fixture. */
  readonly open: boolean;
}

declare module '../../facts/facts.ts' {
  interface DerivedFacts extends Record<`location.${SetupId}.pin-holes`, readonly PinHole[]> {}
}

const rule: Rule = (subject) =>
  setupOrder
    .filter((setup) => subject.spec.setups[setup] !== undefined)
    .map((setup) =>
      derivation({
        id: `location.${setup}.pin-holes`,
        label: `set-up ${setup}: holes it is pinned through, from below`,
        formula:
          'open on the face they are drilled from: those of the jig on the top of the blank, those of the body where their set-up looks up; on the other face where they are at least as deep as the wood there',
        source: byDefinition,
        value: (use) => (setupOf(subject.spec, setup).pins ? ofJig(subject, use, setup) : ofBody(subject, use, setup)),
      }),
    );
export default rule;

const least = ({ low, value }: Length): number => low ?? value;
const most = ({ high, value }: Length): number => high ?? value;

function ofJig({ spec, plant }: Subject, use: Use, setup: SetupId): readonly PinHole[] {
  const { pins, 'rests-on': rests } = setupOf(spec, setup);
  const { holes } = row(plant.patterns, use(pins!), 'plant.patterns');
  const { depth, jig } = spec.location;
  const deep = depth && use(depth);
  const from = ['blank-face', 'glue-face'].includes(surfaceOf(spec, use(rests)));
  const through = deep === undefined || (!from && least(deep) >= most(use.fact('thickness.blank')));
  const by = depth?.id ?? jig.id;
  return namesOf(holes).map((id) => ({ id, by, deep: through ? undefined : deep, open: from || through }));
}

function ofBody({ spec }: Subject, use: Use, setup: SetupId): readonly PinHole[] {
  const { 'locates-on': located, 'rests-on': rests } = setupOf(spec, setup);
  const underBack = ['back-face', 'blank-back'].includes(use(rests));
  return (located ?? []).map((leaf) => {
    const id = use(leaf);
    const { setup: drilled, depth } = row(spec.holes, id, 'holes');
    const from = (use(setupOf(spec, use(drilled) as SetupId).up) === 'back') === underBack;
    const deep = use.fact(`hole.${id}.deep`);
    const through = !from && least(deep) >= use.fact(`hole.${id}.through`).value;
    return { id, by: depth.id, deep: through ? undefined : deep, open: from || through };
  });
}
