/** What is named in a cavity, a hole or a channel is of a kind that goes there. */
import type { Bench, Check } from '../check.ts';
import { look } from '../check.ts';
import type { Part } from '../hardware.ts';
import { fittedParts } from '../hardware.ts';

const check: Check = {
  id: 'hardware-of-another-kind',
  stage: 'derived',
  severity: 'error',
  why: 'The wrong row was named: its sizes say nothing about the part that really goes in.',
  mend: 'Name the part that goes there.',
  example: {
    file: 'models/plant/plant.yaml',
    passes: 'kind: battery',
    fails: 'kind: pot',
  },
  run: (bench) =>
    fittedParts(bench).flatMap((part) => {
      const seen = goesWith(bench, part);
      if (!seen || seen.kinds.includes(seen.kind)) return [];
      const { kind, kinds, where, at } = seen;
      return [
        {
          at: part.fitted.hardware.id,
          what: `The part ${part.name} is of the kind ${kind}. ${part.fitted.id} is ${where}, where ${kinds.length > 0 ? `a part of the kind ${kinds.join(' or ')} goes` : 'no part of the table goes'}.`,
          mend: 'Name the part that goes there, or say what the cut is for.',
          against: [
            { at: part.row.kind.id, text: `the kind of ${part.name}` },
            ...(at === undefined ? [] : [{ at, text: 'what the cut is for' }]),
          ],
        },
      ];
    }),
};
export default check;

/** By what a cavity, hole or channel is for. What is not listed may hold anything. */
const OF_CAVITY: Readonly<Record<string, readonly string[]>> = {
  pickup: ['pickup'],
  controls: ['pot', 'switch', 'jack', 'battery'],
  springs: ['springs'],
  bridge: ['bridge', 'tailpiece'],
  other: ['battery', 'jack', 'switch'],
};
const OF_HOLE: Readonly<Record<string, readonly string[]>> = {
  control: ['pot', 'switch', 'jack'],
  bushing: ['bushing', 'ferrule'],
  stud: ['stud'],
  wire: ['wire'],
};
const OF_CHANNEL: Readonly<Record<string, readonly string[]>> = {
  wire: ['wire'],
  jack: ['jack'],
  other: ['jack', 'wire'],
};
const ON_FACE = ['bridge', 'tailpiece', 'pickup'];

interface Goes {
  readonly kind: string;
  readonly kinds: readonly string[];
  readonly where: string;
  /** Where that is said. */
  readonly at: string | undefined;
}

function goesWith({ subject: { spec }, facts }: Bench, { fitted: { kind, id }, row }: Part): Goes | undefined {
  return look(facts, (use) => {
    const own = use(row.kind);
    const ofCavity = (name: string): Goes => {
      const { purpose } = spec.cavities![name]!;
      return { kind: own, kinds: OF_CAVITY[use(purpose)] ?? [], where: `for ${use(purpose)}`, at: purpose.id };
    };
    if (kind === 'cavity') return ofCavity(id);
    if (kind === 'hole') {
      const { use: what } = spec.holes![id]!;
      return { kind: own, kinds: OF_HOLE[use(what)] ?? [], where: `for a ${use(what)}`, at: what.id };
    }
    if (kind === 'channel') {
      const { use: what } = spec.channels![id]!;
      return { kind: own, kinds: OF_CHANNEL[use(what)] ?? [], where: `for a ${use(what)}`, at: what.id };
    }
    const { in: inside } = spec.fittings![id]!;
    return inside ? ofCavity(use(inside)) : { kind: own, kinds: ON_FACE, where: 'on a face', at: undefined };
  });
}
