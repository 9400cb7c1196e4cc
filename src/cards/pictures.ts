/** The engineer's own pictures on a card: numbered in the order of their steps, which refer to them by number. */
import { picturesOf } from '../facts/pictures.ts';
import type { Card, Line, Literal, Name, Picture } from './card.ts';
import type { Desk } from './station.ts';
import { say } from './station.ts';

/** What a step is called in a spec: the last part of its sentence's id, `saw` of `trim-sawing.step.saw`. */
export function stepName(step: Line): string {
  const { say: id, with: args } = step;
  return id === REFERRED && args['step']?.kind === 'line' ? stepName(args['step']) : id.slice(id.lastIndexOf('.') + 1);
}

const REFERRED = 'picture.at-step';

/** The steps with their references, and the pictures; nothing where the station has none. */
export function withPictures(
  desk: Desk,
  steps: readonly Line[],
): { readonly steps?: readonly Line[]; readonly pictures?: readonly Picture[] } {
  const names = steps.map(stepName);
  const found = picturesOf(desk.subject)
    .filter(({ row }) => desk.use(row.station) === desk.station)
    .map(({ id, row }) => {
      const at = row.at && desk.use(row.at);
      return { id, row, at: names.flatMap((name, i) => (name === at ? [i] : [])) };
    })
    .toSorted((a, b) => (a.at[0] ?? steps.length) - (b.at[0] ?? steps.length));
  if (found.length === 0) return {};
  const numbers = found.map((_, i) => literal('picture', i));
  const referring = (step: Line, i: number): Line =>
    found.reduce(
      (line, { at }, n) => (at.includes(i) ? say(REFERRED, { step: line, number: numbers[n]! }) : line),
      step,
    );
  const pictures = found.map(({ id, row, at }, n): Picture => {
    const file = desk.subject.pictures.files.get(desk.use(row.file));
    // A check has stopped the model before: a file that is no picture gets onto no card.
    if (file === undefined || file === 'outside' || file.form.is !== 'picture') throw new Error(`no picture: ${id}`);
    const { sha256, form } = file;
    return {
      kind: 'picture',
      id,
      number: numbers[n]!,
      steps: at.map((i) => literal('step', i)),
      caption: desk.name(row.caption),
      type: form.type,
      sha256,
    };
  });
  return { steps: steps.map(referring), pictures };
}

const literal = (of: Literal['of'], index: number): Literal => ({ kind: 'literal', of, text: String(index + 1) });

export const captionsOf = ({ pictures = [] }: Card): readonly Name[] => pictures.map(({ caption }) => caption);
