/** The checks of a card as forms have them: those made on a piece, in the unit of the gauge. */
import { makeFacts } from '../facts/facts.ts';
import { row } from '../facts/row.ts';
import type { PlantSpec } from '../facts/spec.generated.ts';
import type { Card, Check, FormCheck, Limits, Name } from './card.ts';

/** How often checks of a piece, or of the load it is in, are made; all others are made of a board or of the room. */
const OF_A_PIECE: ReadonlySet<string> = new Set(['common.every-piece', 'common.first-and-every', 'common.every-load']);

/** What is counted is written down, by whatever it is counted. */
const COUNTED = 'common.by-count';

/** Checks that the first piece of a run passes, and each sample after it, in the order of the card. */
export const pieceChecks = ({ checks }: Card, plant: PlantSpec): readonly FormCheck[] =>
  checks
    .filter(({ often }) => OF_A_PIECE.has(often.say))
    .map((check) => ({ ...inOneUnit(check), how: isWritten(check, plant) ? 'written' : 'ticked' }));

/** As the gauge shows it: what is read there is written here. */
export const inOneUnit = ({ limits, ...check }: Check): Check => (limits ? { ...check, limits: own(limits) } : check);

function own({ second: _second, acceptance, ...limits }: Limits): Limits {
  if (!acceptance) return limits;
  const { second: _other, ...accepted } = acceptance;
  return { ...limits, acceptance: accepted };
}

function isWritten({ limits, gauge }: Check, plant: PlantSpec): boolean {
  if (limits) return true;
  return gauge.kind === 'line' ? gauge.say === COUNTED : !onlyPasses(gauge, plant);
}

/** A plug goes in or does not: there is no number to write. */
function onlyPasses(gauge: Name, plant: PlantSpec): boolean {
  const id = rowIn('gauges', gauge);
  if (id === undefined) return false;
  const reading = makeFacts([]).read((use) => use(row(plant.gauges, id, 'plant.gauges').reads) === 'pass');
  return reading.ok && reading.value;
}

/** The row of that table whose title a name is: `caliper` of `plant.gauges.caliper.title`. */
export function rowIn(table: 'gauges' | 'machines' | 'finishes', { fact }: Name): string | undefined {
  const [plant, of, id, key] = fact.split('.');
  return plant === 'plant' && of === table && key === 'title' ? id : undefined;
}
