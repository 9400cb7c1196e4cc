/** Two states of a drawing over each other: what both have as it is drawn, what went in dots, what came in a thick line. */
import type { Drawing, LineKind, Mark } from '../cards/card.ts';
import { canonical } from '../cards/code.ts';
import { say } from '../cards/station.ts';

export function overlay(old: Drawing, now: Drawing): Drawing {
  const lines = ({ marks }: Drawing) => marks.flatMap(edges);
  const [before, after] = [lines(old), lines(now)];
  const texts = now.marks.filter(
    ({ kind }) => kind === 'label' || kind === 'tag' || kind === 'dimension' || kind === 'point',
  );
  return {
    id: now.id,
    caption: say('change-notice.overlay', { what: now.caption }),
    scale: now.scale,
    marks: [
      ...after.filter((mark) => within(mark, before)),
      ...before.filter((mark) => !within(mark, after)).map((mark) => as('was', mark)),
      ...after.filter((mark) => !within(mark, before)).map((mark) => as('now', mark)),
      ...texts,
    ],
  };
}

type Edge = Extract<Mark, { kind: 'line' | 'circle' }>;

/** Areas by their edges: two hatchings over each other say nothing. */
function edges(mark: Mark): readonly Edge[] {
  if (mark.kind === 'line' || mark.kind === 'circle') return [mark];
  const ring = (points: readonly number[]): Edge => ({ kind: 'line', line: 'board', points, closed: true });
  if (mark.kind === 'area') return [ring(mark.points)];
  return mark.kind === 'region' ? mark.rings.map(ring) : [];
}

const within = (mark: Edge, marks: readonly Edge[]): boolean => {
  const key = canonical(mark);
  return marks.some((other) => other.kind === mark.kind && canonical(other) === key);
};

const as = (line: LineKind, mark: Edge): Edge => ({ ...mark, line });
