/** What lamination and press read of the adhesive of a model's line. */
import { row, wanted } from '../facts/row.ts';
import type { Desk } from './station.ts';

/** What the adhesive of this model's line asks for. */
export function laminating({ subject: { spec, plant }, use, name }: Desk) {
  const line = use(spec.line);
  const id = use(wanted(row(plant.lines, line, 'plant.lines').adhesive, `plant.lines.${line}.adhesive`));
  const glue = row(plant.adhesives, id, 'plant.adhesives');
  const need = <T>(leaf: T | undefined, field: string): T => wanted(leaf, `plant.adhesives.${id}.${field}`);
  return {
    title: name(glue.title),
    spread: glue.spread,
    get open() {
      return need(glue['open-time'], 'open-time');
    },
    get press() {
      return need(glue['press-time'], 'press-time');
    },
    get after() {
      return need(glue['machining-after'], 'machining-after');
    },
    get 'last-grit'() {
      return need(glue['last-grit'], 'last-grit');
    },
    get 'fresh-for'() {
      return need(glue['fresh-for'], 'fresh-for');
    },
    get pressure() {
      return need(glue['joint-pressure'], 'joint-pressure');
    },
  };
}
