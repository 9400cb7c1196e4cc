/**
 * Edges: the sample, or a demo model, with an edit or two that puts it just on this or on that side of what a check asks; and
 * what that one check then finds. The other checks are not run: the cases and the examples are there for what they make of it.
 */
import { expect } from 'vitest';
import { flowOf } from '../../../src/cards/desk.ts';
import { makeCards } from '../../../src/cards/make.ts';
import type { Check, Fault } from '../../../src/check/check.ts';
import { all } from '../../../src/check/checks/all.generated.ts';
import { checkAll } from '../../../src/compile.ts';
import { memoryHost } from '../../../src/host/memory.ts';
import { morePictures } from '../../cases/pictures.ts';
import type { Edit, WorkspaceFiles } from '../../cases/workspace.ts';
import { editedFrom, sample } from '../../cases/workspace.ts';
import { soundAlone } from '../../faults/by-hand-judge.ts';

export interface Edge {
  readonly check: string;
  /** Which side it is on, in words. */
  readonly name: string;
  readonly edits: readonly Edit[];
  /** Facts at which the check finds something, in the order it finds them; none where it is just well. */
  readonly found: readonly string[];
  /** The demo model it is made of; without it the sample. */
  readonly of?: string;
  readonly hand?: 'left';
  readonly on?: string;
  /** Texts that what it finds has in it, or in what mends it: numbers and names. */
  readonly says?: readonly string[];
  /** Texts that are in neither. */
  readonly not?: readonly string[];
  /** Facts it conflicts with, all of them, of all it finds. */
  readonly notes?: readonly string[];
}

const DAY = '2026-11-25';
const checks: readonly Check[] = all;

export const inTarn = (find: string, replace: string): Edit => ({ file: 'models/tarn.yaml', find, replace });
export const inPlant = (find: string, replace: string): Edit => ({ file: 'models/plant/plant.yaml', find, replace });
export const inBase = (find: string, replace: string): Edit => ({ file: 'models/base/bolt-on.yaml', find, replace });

/** The edits of the example of a check. */
export function exampleOf(id: string): readonly Edit[] {
  const { file, passes, fails, beside } = checks.find((check) => check.id === id)!.example;
  return [...(beside ? [beside] : []), { file, find: passes, replace: fails }];
}

function filesOf({ of, edits }: Edge): WorkspaceFiles {
  if (of === undefined) return { ...morePictures(), ...editedFrom(sample(), edits) };
  return editedFrom(soundAlone.get(of)!, edits);
}

export function faultsOf(edge: Edge): readonly Fault[] {
  const { on = DAY, hand = 'right', of = 'tarn' } = edge;
  const check = checks.find(({ id }) => id === edge.check)!;
  const { models } = checkAll(memoryHost(filesOf(edge)), on);
  const hands = models.flatMap((model) => model.hands.map((one) => ({ ...one, model: model.id })));
  const { subject, facts } = hands.find((one) => one.model === of && one.subject.hand === hand)!;
  const others = hands.map((one) => one.subject).filter((other) => other !== subject);
  const cautions = checks.filter(({ severity }) => severity === 'caution').map(({ id }) => id);
  const seen = check.stage === 'card' ? makeCards(subject, facts, []).seen : [];
  return check.run({ subject, facts, others, on, cautions, flow: flowOf(subject, facts), seen });
}

export function holdEdge(edge: Edge): void {
  const faults = faultsOf(edge);
  const said = faults.map(({ what, mend }) => `${what} ${mend}`).join('\n');
  expect(
    faults.map(({ at }) => at),
    said,
  ).toEqual(edge.found);
  for (const text of edge.says ?? []) expect(said).toContain(text);
  for (const text of edge.not ?? []) expect(said).not.toContain(text);
  if (edge.notes)
    expect(faults.flatMap(({ against }) => against.map(({ at }) => at)).toSorted()).toEqual(edge.notes.toSorted());
}
