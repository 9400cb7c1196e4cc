/** The reference page: every kind of finding, why it matters, what mends it, and an example. */
import type { Kind, Stage } from '../findings/finding.ts';
import type { PrintInput } from './input.ts';
import { markup } from './markup.ts';
import { drawSketch } from './sketch.ts';

const STAGES: readonly Stage[] = ['spec', 'derived', 'card'];

export function referenceView({ plantName, kinds }: PrintInput) {
  return {
    plant: plantName,
    stages: STAGES.map((stage) => ({
      title: `reference.stage-${stage}`,
      kinds: kinds
        .filter((kind) => kind.stage === stage)
        .toSorted((a, b) => (a.id < b.id ? -1 : 1))
        .map(kindView),
    })).filter((stage) => stage.kinds.length > 0),
  };
}

function kindView({ id, severity, why, mend, example, sketch }: Kind) {
  return {
    id,
    severityWord: `severity.${severity}`,
    why,
    mend,
    sketch: sketch ? markup(drawSketch(sketch, `sketch-${id}`, `${id}: ${why}`)) : null,
    example: example
      ? { file: example.file, passes: example.passes.trim(), fails: example.fails.trim() || null }
      : null,
  };
}
