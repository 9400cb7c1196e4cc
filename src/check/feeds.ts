/** Machines that wood is fed through by hand or by rollers, with what goes into each. */
import type { Use } from '../facts/facts.ts';
import type { Leaf } from '../facts/leaf.ts';
import type { Part } from '../facts/parts.ts';
import { partsOf } from '../facts/parts.ts';
import { machineAt } from '../facts/station-machine.ts';
import type { Length } from '../units/quantity.ts';
import type { Bench, Fault } from './check.ts';
import { look } from './check.ts';
import { say } from './say.ts';

/** A piece as it meets the machine. */
export interface Fed {
  readonly length: Length;
  /** Once its pieces are glued; before that a single piece. */
  readonly width: Length;
  /** At its thinnest, as it leaves. */
  readonly thickness: Length;
}

type Limit = 'least-feed' | 'least-thickness' | 'widest';

export interface Question {
  readonly limit: Limit;
  readonly of: (fed: Fed) => Length;
  readonly passes: (piece: number, limit: number) => boolean;
  readonly what: (part: Part, piece: string, station: string, limit: string) => string;
  /** `lack`: what the piece is short by, or too wide by. */
  readonly mend: (part: Part, lack: string) => string;
}

const stations = ['jointing', 'planing', 'sizing'] as const;

/** One finding a station and part whose piece the machine's row does not allow. */
export const feedFaults = ({ subject, facts }: Bench, question: Question): Fault[] =>
  stations.flatMap((station) =>
    partsOf(subject.spec).flatMap((part) => {
      const seen = look(facts, (use) => {
        const machine = machineAt(subject.plant, use, station);
        const leaf: Leaf<Length> | undefined = machine[question.limit];
        // A part of one piece is not jointed.
        const goes = station !== 'jointing' || use.fact(`blank.${part}.pieces`).value > 1;
        return leaf && goes
          ? { id: leaf.id, limit: use(leaf), title: use(machine.title), fed: fed(use, part, station) }
          : undefined;
      });
      if (!seen) return [];
      const { id, limit, title, fed: piece } = seen;
      const size = question.of(piece);
      const least = question.limit === 'least-thickness' ? (size.low ?? size.value) : size.value;
      if (question.passes(least, limit.value)) return [];
      return [
        {
          at: id,
          what: question.what(part, say(size, least), title, say(limit, limit.value)),
          mend: question.mend(part, say(size, Math.abs(least - limit.value))),
          against: [{ at: `timber.${part}.stock`, text: `the wood of the ${part}` }],
        },
      ];
    }),
  );

function fed(use: Use, part: Part, station: (typeof stations)[number]): Fed {
  const stage = station === 'sizing' ? 'sized' : station === 'planing' ? 'planed' : 'rough';
  return {
    length: use.fact('blank.length'),
    width: station === 'jointing' ? use.fact(`blank.${part}.piece-width`) : use.fact('blank.width'),
    thickness: use.fact(`thickness.part.${part}.${stage}`),
  };
}
