/**
 * First-piece reports: after a set-up the first piece is measured whole, written down, and somebody lets the run go on. One
 * for each station of a machine, as each set-up is let go by itself.
 */
import type { PlantSpec } from '../facts/spec.generated.ts';
import type { Card, FirstPieceReport, MadeCard, Table, Tool } from './card.ts';
import { pieceChecks, rowIn } from './form-checks.ts';

/** The report of one card; undefined where no check of it is made on a piece. */
export function firstPieceOf({ card, code }: MadeCard, plant: PlantSpec): FirstPieceReport | undefined {
  const checks = pieceChecks(card, plant);
  if (checks.length === 0) return undefined;
  const { key, model, station, handLine, accepts, whenOut, decides } = card;
  const machine = machineOf(card);
  const cutters = formOf(card, 'running.sheet-cutters');
  const gauges = checks.flatMap(({ gauge }) => (gauge.kind === 'name' ? [gauge] : []));
  return {
    key,
    model,
    station,
    ...(handLine ? { handLine } : {}),
    ...(machine ? { machine } : {}),
    code,
    setUp: setUpOf(card),
    ...(cutters ? { cutters } : {}),
    gauges: gauges.filter(({ fact }, i) => gauges.findIndex((other) => other.fact === fact) === i),
    checks,
    ...(accepts ? { accepts } : {}),
    whenOut,
    decides,
  };
}

/** The first machine among the card's tools. */
function machineOf({ tools }: Card): FirstPieceReport['machine'] {
  return tools.flatMap(({ name }) => {
    if (name.kind !== 'name') return [];
    const id = rowIn('machines', name);
    return id === undefined ? [] : [{ id, name }];
  })[0];
}

/** As the card's set-up sheet has it; without one, what is in hand besides gauges. */
function setUpOf(card: Card): FirstPieceReport['setUp'] {
  const sheet = formOf(card, 'running.sheet');
  if (!sheet) return card.tools.filter(isNoGauge).map(({ role, name }) => ({ what: role, must: name }));
  return sheet.rows.flatMap(([what, must]) => (what?.kind === 'line' && must ? [{ what, must }] : []));
}

const isNoGauge = ({ name }: Tool): boolean => name.kind !== 'name' || rowIn('gauges', name) === undefined;

const formOf = ({ tables }: Card, id: string): Table | undefined =>
  tables.find(({ place, title }) => place === 'form' && title.say === id);
