/** The fourth phase: the cards of one hand of a model, in route order, and what they show. */
import type { CardSeen } from '../facts/card-seen.ts';
import type { Facts } from '../facts/facts.ts';
import type { Leaf } from '../facts/leaf.ts';
import { placeOf } from '../facts/placed.ts';
import { row } from '../facts/row.ts';
import type { Subject } from '../facts/subject.ts';
import type { Finding } from '../findings/finding.ts';
import type { Card, CardBody, Line, MadeCard, Name } from './card.ts';
import { contentCode } from './code.ts';
import type { Noted } from './desk.ts';
import { blankRecord, deskAt, keyOf, stationsOf } from './desk.ts';
import { captionsOf, stepName, withPictures } from './pictures.ts';
import { reworkLines, reworkTable } from './reworks.ts';
import type { Desk, Station } from './station.ts';
import { say } from './station.ts';

/** A caution somebody lets stand: it prints on every card of the model. */
export interface Permitted {
  /** What was found, and the fact it was found at. */
  readonly what: string;
  readonly at: string;
  readonly reason: Leaf<string>;
  readonly name: Leaf<string>;
  readonly until: Leaf<string>;
}

export interface Made {
  readonly cards: readonly MadeCard[];
  readonly seen: readonly CardSeen[];
  readonly findings: readonly Finding[];
}

export function makeCards(subject: Subject, facts: Facts, permits: readonly Permitted[]): Made {
  const cards: MadeCard[] = [];
  const seen: CardSeen[] = [];
  const findings: Finding[] = [];
  for (const station of stationsOf(subject, facts)) {
    const made = makeCard(station, subject, facts, permits);
    if ('finding' in made) findings.push(made.finding);
    else {
      cards.push({ card: made.card, code: contentCode(made.card), reads: made.reads });
      seen.push(made.seen);
    }
  }
  return { cards, seen, findings };
}

type MadeOne =
  { readonly card: Card; readonly seen: CardSeen; readonly reads: readonly string[] } | { readonly finding: Finding };

function makeCard(station: Station, subject: Subject, facts: Facts, permits: readonly Permitted[]): MadeOne {
  const { spec, plant } = subject;
  const record = blankRecord();
  const reading = facts.read((use): Card => {
    const desk = deskAt(station, subject, facts, use, record);
    const { row: at } = desk;
    const note = spec.notes?.[station.id];
    const body = station.card(desk);
    return {
      key: keyOf(station.id, subject, use),
      model: desk.name(spec.title),
      station: desk.name(at.title),
      ...(spec.handed ? { handLine: say(`hand.${subject.hand}`) } : {}),
      finishNames: spec.finishes.map((finish) => desk.name(row(plant.finishes, use(finish), 'plant.finishes').title)),
      decides: desk.name(at.decides),
      ...accepts(body, desk),
      notes: [note, at.notice].flatMap((leaf) => (leaf ? [desk.name(leaf)] : [])),
      permits: permits.map(({ what, at: found, reason, name, until }) =>
        say('common.permitted', {
          what: { kind: 'name', text: what, fact: found },
          reason: desk.name(reason),
          name: desk.name(name),
          until: desk.name(until),
        }),
      ),
      ...body,
      ...withPictures(desk, body.steps),
      whenOut: [...body.whenOut, ...reworkLines(desk)],
      tables: [
        ...body.tables.filter(({ place }) => place !== 'form'),
        ...reworkTable(desk),
        ...body.tables.filter(({ place }) => place === 'form'),
      ],
    };
  });
  if (reading.ok) return { card: reading.value, seen: seenOn(reading.value, record), reads: reading.inputs };
  const finding: Finding = {
    id: 'card-not-made',
    severity: 'error',
    place: placeOf(plant.stations?.[station.id]) ?? placeOf(spec)!,
    what: `The card of ${station.id} cannot be made: ${reading.missing.join(', ')} is missing.`,
    why: 'A station on the route of this model would be without a card.',
    mend: 'Give what is missing, in the plant or in the model.',
    notes: [],
    about: reading.missing,
    from: reading.inputs,
  };
  return { finding };
}

/** When a reading counts as in. Every card with limits says so: usage and standards differ. */
function accepts({ checks }: CardBody, desk: Desk): { readonly accepts?: Line } {
  const measured = checks.flatMap(({ limits }) => (limits ? [limits] : []));
  if (measured.length === 0) return {};
  const drawn = measured.some(({ acceptance }) => acceptance !== undefined);
  return {
    accepts: drawn ? say('common.accept-drawn-in', { who: desk.name(desk.row.decides) }) : say('common.accept-limits'),
  };
}

function seenOn(card: Card, { readings, gauges, figures }: Noted): CardSeen {
  const notes = [...card.notes, ...captionsOf(card)].map(({ fact, text }: Name) => ({ fact, text }));
  const steps = card.steps.map(stepName);
  return { station: card.key.station, readings, gauges: [...gauges], figures: [...figures], notes, steps };
}
