/** What is known of the saw of a station. */
import { most } from '../units/arithmetic.ts';
import type { Use } from './facts.ts';
import { row, wanted } from './row.ts';
import type { Subject } from './subject.ts';

/** How wide the saw of a station cuts and how far it strays, at most. */
export function sawOf({ plant }: Subject, use: Use, which: 'rough' | 'trim') {
  const station = row(plant.stations, `${which}-sawing`, 'plant.stations');
  const id = use(wanted(station.machine, `plant.stations.${which}-sawing.machine`));
  const saw = row(plant.machines, id, 'plant.machines');
  const kerf = wanted(saw.kerf, `plant.machines.${id}.kerf`);
  const wander = wanted(saw.wander, `plant.machines.${id}.wander`);
  return { kerf: most(use(kerf)), wander: most(use(wander)), at: { kerf: kerf.id, wander: wander.id } };
}
