/** A wire gets from every pickup to the controls, and to a jack's cavity, through cuts that meet. */
import type { CutId } from '../../facts/cuts.ts';
import { namesOf } from '../../facts/row.ts';
import type { Bench, Check } from '../check.ts';
import { look } from '../check.ts';
import { meantMeetings, reachedFrom } from '../reached.ts';
import { centreline, ideal, outline, plan, pocket, ring } from '../sketch.ts';

const check: Check = {
  id: 'pickup-unreached',
  stage: 'derived',
  severity: 'error',
  why: 'The body comes to assembly with no way for the wire, and a painted body gets drilled by hand.',
  mend: 'Add a channel that runs into the pickup’s cavity and the controls, or into another that is reached.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'purpose: other',
    fails: 'purpose: controls',
  },
  sketch: plan(
    outline(),
    centreline(),
    pocket(4, -6, 9, 6, 1),
    pocket(-19, 3, -8, 9, 1),
    ideal('M -8 5 L 4 1.6 M -8 7 L 4 3.6'),
    ring(4, 2.6, 3.2),
  ),
  run: (bench) => {
    const { spec } = bench.subject;
    const purpose = (id: string) => look(bench.facts, (use) => use(spec.cavities![id]!.purpose));
    const of = (wanted: string) => namesOf(spec.cavities).filter((id) => purpose(id) === wanted);
    const controls = of('controls').map((id): CutId => `cavity.${id}`);
    const ways = controls.map((id) => ({ first: id, reached: reachedFrom(bench, id) }));
    const [widest] = ways.toSorted((a, b) => b.reached.size - a.reached.size);
    if (!widest) return [];
    const { first, reached } = widest;
    return [...of('pickup'), ...of('controls')].flatMap((id) =>
      reached.has(`cavity.${id}`)
        ? []
        : [
            {
              at: spec.cavities![id]!.purpose.id,
              what: `No channel or cavity leads from ${id} to ${first.slice('cavity.'.length)}: a wire cannot get there.`,
              mend: 'Add a channel that runs into both, or into another cavity that is reached: name them under its `into`.',
              against: [
                { at: spec.cavities![first.slice('cavity.'.length)]!.at.x.id, text: 'where the wires go' },
                ...channelsOf(bench),
              ],
              hangsOn: [`cavity.${id}.void`, ...meantMeetings(bench)],
            },
          ],
    );
  },
};
export default check;

/** What the channels there are say they run into. */
const channelsOf = ({ subject: { spec } }: Bench) =>
  namesOf(spec.channels).flatMap((id) => {
    const [into] = spec.channels![id]!.into ?? [];
    return into ? [{ at: into.id, text: `what the channel ${id} runs into` }] : [];
  });
