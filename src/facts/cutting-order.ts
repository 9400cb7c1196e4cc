/**
 * In which order a body is cut: set-up by set-up; in each its face, then the cavities by what they are for, then a smaller
 * cutter along the edges, then holes, then channels. Common practice of the trade, no source.
 */
import type { Cut, CutId } from './cuts.ts';
import { cutsOf } from './cuts.ts';
import type { Use } from './facts.ts';
import type { Leaf } from './leaf.ts';
import { namesOf, wanted } from './row.ts';
import type { ModelSpec } from './spec.generated.ts';

export type SetupId = 'glue-face' | 'back' | 'top';

export const setupOrder: readonly SetupId[] = ['glue-face', 'back', 'top'];

/** Order of cutting; common practice of the trade, no source. */
const ORDER = ['chamber', 'springs', 'controls', 'recess', 'pickup', 'bridge', 'neck', 'other'] as const;

/** Cavities of a set-up in the order they are cut. */
export function cavitiesInOrder({ cavities }: ModelSpec, use: Use, setup: SetupId): readonly string[] {
  const place = (name: string) => ORDER.indexOf(use(cavities![name]!.purpose));
  return namesOf(cavities)
    .filter((name) => use(cavities![name]!.setup) === setup)
    .toSorted((a, b) => place(a) - place(b));
}

/** All cuts of a set-up in the order they are made. */
export function cutsInOrder(spec: ModelSpec, use: Use, setup: SetupId): readonly Cut[] {
  const cuts = cutsOf(spec);
  const cavities = cavitiesInOrder(spec, use, setup).map((name) =>
    cuts.find(({ kind, id }) => kind === 'cavity' && id === name)!,
  );
  const others = cuts.filter((cut) => cut.kind !== 'cavity' && use(cut.spec.setup) === setup);
  return [...cavities, ...others];
}

/** What a step is called: `top.carve`, `contour.belly`, `cavity.controls`. */
export type StepKey = `${SetupId}.${'face' | 'carve' | 'perimeter' | 'edge'}` | `contour.${string}` | CutId;

/** One thing cut in a set-up, and what with. */
export interface MachineStep {
  readonly key: StepKey;
  readonly cutter: Leaf<string>;
}

/** All of a set-up, in order; holes of one drill one after the other. */
export function machineSteps(spec: ModelSpec, use: Use, setup: SetupId): readonly MachineStep[] {
  const { cutters } = wanted(spec.setups[setup], `setups.${setup}`);
  const { cavities, channels } = spec;
  const own = (part: 'face' | 'carve' | 'perimeter'): MachineStep[] =>
    cutters?.[part] ? [{ key: `${setup}.${part}`, cutter: cutters[part] }] : [];
  const edge = setup === 'glue-face' ? undefined : spec.edges?.[setup];
  return [
    ...own('face'),
    ...own('carve'),
    ...namesOf(spec.contours)
      .filter((name) => use(spec.contours![name]!.face) === setup)
      .map((name): MachineStep => ({ key: `contour.${name}`, cutter: spec.contours![name]!.cutter })),
    ...own('perimeter'),
    ...cavitiesInOrder(spec, use, setup).map((name): MachineStep => ({
      key: `cavity.${name}`,
      cutter: cavities![name]!.cutter,
    })),
    ...(edge ? [{ key: `${setup}.edge` as const, cutter: edge.cutter }] : []),
    ...holeSteps(spec, use, setup),
    ...namesOf(channels)
      .filter((name) => use(channels![name]!.setup) === setup)
      .map((name): MachineStep => ({ key: `channel.${name}`, cutter: channels![name]!.drill })),
  ];
}

/** The holes of a set-up, those of one drill one after the other. */
export function holeSteps({ holes }: ModelSpec, use: Use, setup: SetupId): readonly MachineStep[] {
  const steps = namesOf(holes)
    .filter((name) => use(holes![name]!.setup) === setup)
    .map((name): MachineStep => ({ key: `hole.${name}`, cutter: holes![name]!.drill }));
  const drills = steps.map(({ cutter }) => use(cutter));
  return [...new Set(drills)].flatMap((drill) => steps.filter((_, i) => drills[i] === drill));
}
