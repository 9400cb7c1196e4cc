/** At least one body comes under pressure before its glue is too old. */
import type { Use } from '../../facts/facts.ts';
import { laminationAdhesive, machineAt } from '../../facts/press-row.ts';
import { partsOf } from '../../facts/parts.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Quantity } from '../../units/quantity.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { sayAs } from '../say.ts';

const check: Check = {
  id: 'glue-dries-before-press',
  stage: 'derived',
  severity: 'error',
  why: 'Glue that has skinned before the pressure is on does not wet the other face: the joint looks closed and opens later.',
  mend: 'Take an adhesive with a longer open time, or spread and load faster.',
  example: { file: 'models/plant/plant.yaml', passes: 'spread-time: 60 s', fails: 'spread-time: 450 s' },
  run: ({ subject, facts }) =>
    partsOf(subject.spec).includes('cap') ? (look(facts, (use) => fault(subject, use)) ?? []) : [],
};
export default check;

const most = ({ value, high = value }: Quantity): number => high;

function fault(subject: Subject, use: Use): Fault[] {
  if (use.fact('press.bodies.time').value >= 1) return [];
  const [spreader, press] = [machineAt(subject, use, 'lamination'), machineAt(subject, use, 'press')];
  const spreadLeaf = spreader.need('spread-time', (row) => row['spread-time']);
  const spread = use(spreadLeaf);
  const load = use(press.need('load-time', (row) => row['load-time']));
  const close = use(press.need('close-time', (row) => row['close-time']));
  const glue = laminationAdhesive(subject, use);
  const openLeaf = glue.need('open-time', (row) => row['open-time']);
  const open = use(openLeaf);
  const { 'closed-time': closedLeaf } = glue.row;
  const closed = closedLeaf && use(closedLeaf);
  const total = most(spread) + most(load) + most(close);
  const tooOld = (open.low ?? open.value) < total;
  const [leaf, allowed] = tooOld || !closedLeaf || !closed ? [openLeaf, open] : [closedLeaf, closed];
  const taken = tooOld ? total : total - most(spread);
  const from = tooOld ? `${sayAs(spread, most(spread))} to spread + ` : '';
  return [
    {
      at: leaf.id,
      what: `Even one body takes ${from}${sayAs(load, most(load))} to lay + ${sayAs(close, most(close))} to close the press = ${sayAs(allowed, taken, 1)}, and the glue allows ${sayAs(allowed, allowed.low ?? allowed.value)}.`,
      mend: `Take an adhesive that allows ${sayAs(allowed, taken, 1)} or more, or spread and load faster.`,
      against: [
        { at: spreadLeaf.id, text: 'spreading one body' },
        { at: `${press.id}.load-time`, text: 'laying one body' },
        { at: `${press.id}.close-time`, text: 'closing the press' },
      ],
      hangsOn: ['press.bodies.time'],
    },
  ];
}
