/**
 * What the suite holds, one workspace each: `hold` throws where the suite would fail. These are the very functions that its
 * tests call, and nothing else is asked of a workspace here than what they assert.
 */
import { expect } from 'vitest';
import { all } from '../../src/check/checks/all.generated.ts';
import { compileAll } from '../../src/compile.ts';
import { memoryHost } from '../../src/host/memory.ts';
import { mistakeKinds } from '../../src/read/mistakes.ts';
import type { Kind } from '../../src/findings/finding.ts';
import { caseNames, everyFinding, holdCase } from '../cases/case.ts';
import { sample } from '../cases/workspace.ts';
import { edges } from '../check/edges/index.ts';
import { holdEdge } from '../check/edges/edge.ts';
import { holdExample } from '../check/example.ts';
import { allFaults, judged, shortcoming, soundAlone } from '../faults/by-hand-judge.ts';
import { outcomeOf } from '../faults/judge.ts';
import { known } from '../faults/known.ts';

interface Workspace {
  readonly name: string;
  readonly hold: () => void;
}

export interface Held extends Workspace {
  /** Whether it holds anything about the words of what is found: where it does not, other words need not be looked into. */
  readonly texts: boolean;
  /** Whether it is held again for what is met around the checks, where places and causes are found: of faults there are too many. */
  readonly around: boolean;
  /** Whether it holds that nothing at all is found. */
  readonly sound: boolean;
}

/** tests/cases.test.ts: the sample has no finding. */
const ofSample: Workspace = {
  name: 'the sample',
  hold: () => expect(everyFinding(compileAll(memoryHost(sample())))).toEqual([]),
};

/** tests/check/examples.test.ts. */
const examples: readonly Workspace[] = ([...all, ...mistakeKinds] as readonly Kind[]).flatMap((kind) =>
  kind.example ? [{ name: `example ${kind.id}`, hold: () => holdExample(kind, kind.example!) }] : [],
);

/** tests/check/edges.test.ts. */
const onEdges: readonly Workspace[] = edges.map((edge) => ({
  name: `edge ${edge.check}: ${edge.name}`,
  hold: () => holdEdge(edge),
}));

/** tests/cases.test.ts. */
const cases: readonly Workspace[] = caseNames.map((name) => ({ name: `case ${name}`, hold: () => holdCase(name) }));

/** tests/faults/by-hand.test.ts: the demo models have no finding. */
const demos: readonly Workspace[] = [...soundAlone].map(([name, files]) => ({
  name: `model ${name}`,
  hold: () => {
    const { errors, cautions } = outcomeOf(files);
    expect([...errors, ...cautions]).toEqual([]);
  },
}));

/** tests/faults/by-hand.test.ts: each found, at its line, one at the top; or short of that as the lists say, and no other way. */
const byHand: readonly Workspace[] = allFaults.map((fault) => ({
  name: `fault ${fault.name}`,
  hold: () => {
    const result = judged(fault);
    const short = shortcoming(result);
    expect(result.thrown).toBeUndefined();
    expect(short === undefined ? [] : [`${fault.name}: ${short}`]).toEqual(
      known.filter((one) => one.startsWith(`${fault.name}: `)),
    );
  },
}));

const findings = { texts: false, around: true, sound: false };

export const benches: readonly Held[] = [
  { ...ofSample, ...findings, sound: true },
  ...onEdges.map((one) => ({ ...one, ...findings, texts: true, around: false })),
  ...[...examples, ...cases].map((one) => ({ ...one, ...findings })),
  ...demos.map((one) => ({ ...one, ...findings, sound: true })),
  ...byHand.map((one) => ({ ...one, ...findings, around: false })),
];
