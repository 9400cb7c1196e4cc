/** The stack goes into the open press, the closing plate reaches it, and the parts lie on the plate. */
import type { Use } from '../../facts/facts.ts';
import { machineAt } from '../../facts/press-row.ts';
import { partsOf } from '../../facts/parts.ts';
import type { Subject } from '../../facts/subject.ts';
import type { Length } from '../../units/quantity.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { asked, gap, rect, section, shape } from '../sketch.ts';

const check: Check = {
  id: 'stack-does-not-fit-press',
  stage: 'derived',
  severity: 'error',
  why: 'A stack that is too high does not go in; one the plate does not reach gets no pressure while the gauge shows it all; one over the edge of the plate tips.',
  mend: 'Take other boards, or another press.',
  example: { file: 'models/plant/plant.yaml', passes: 'closed-height: 120', fails: 'closed-height: 180' },
  sketch: section(
    shape(rect(6, 20, 54, 24), 'bed', 'edge'),
    shape(rect(6, -2, 54, 2.6), 'bed', 'edge'),
    shape(rect(14, 14.4, 42, 20.0), 'wood', 'edge'),
    shape(rect(14, 8.8, 42, 14.4), 'wood', 'edge'),
    shape(rect(14, 3.2, 42, 8.8), 'wood', 'edge'),
    shape(rect(14, -2.4, 42, 3.2), 'wood', 'edge'),
    asked([49, 2.6], [49, 20]),
    gap(28, -2.4, 20),
  ),
  run: ({ subject, facts }) => {
    if (!partsOf(subject.spec).includes('cap')) return [];
    return [
      ...(look(facts, (use) => tooHigh(subject, use)) ?? []),
      ...(look(facts, (use) => notReached(subject, use)) ?? []),
      ...(look(facts, (use) => overThePlate(subject, use)) ?? []),
    ];
  },
};
export default check;

const blankNote = { at: 'thickness.blank', text: 'a thickness that makes up the blank' };

function tooHigh(subject: Subject, use: Use): Fault[] {
  if (use.fact('press.layers.daylight').value >= 1) return [];
  const press = machineAt(subject, use, 'press');
  const leaf = press.need('daylight', (row) => row.daylight);
  const [daylight, board, blank] = [
    use(leaf),
    use(press.need('board', (row) => row.board)),
    use.fact('thickness.blank'),
  ];
  const height = (blank.high ?? blank.value) + 2 * (board.high ?? board.value);
  return [
    {
      at: leaf.id,
      what: `One blank with a board under and over it is ${say(blank, height)} high at its thickest, and the press opens ${say(daylight, daylight.low ?? daylight.value)}.`,
      mend: 'Take thinner boards, or a press that opens wider.',
      against: [blankNote],
      hangsOn: ['press.layers.daylight'],
    },
  ];
}

/** Of one stack and of the full row, whichever is lower: both are on the card. */
function notReached(subject: Subject, use: Use): Fault[] {
  const press = machineAt(subject, use, 'press');
  const layers = (['stack', 'row'] as const)
    .map((loading) => ({ loading, layers: use.fact(`press.${loading}.layers`).value }))
    .filter((one) => one.layers >= 1)
    .toSorted((a, b) => a.layers - b.layers)[0];
  if (!layers || layers.layers >= use.fact('press.layers.least').value) return [];
  const leaf = press.need('closed-height', (row) => row['closed-height']);
  const [closed, height] = [use(leaf), use.fact(`press.${layers.loading}.height`)];
  return [
    {
      at: leaf.id,
      what: `A full load, ${layers.layers} on each other${layers.loading === 'row' ? ' in each stack' : ''}, is ${say(height, height.low ?? height.value)} high at its thinnest, and the plate comes down no lower than ${say(closed, closed.high ?? closed.value)}: it does not reach the stack.`,
      mend: `Take thicker boards, or lay a filler at least ${say(height, (closed.high ?? closed.value) - (height.low ?? height.value))} thick on the plate and give the height that is left.`,
      against: [blankNote],
      hangsOn: [`press.${layers.loading}.height`, 'press.layers.least'],
    },
  ];
}

function overThePlate(subject: Subject, use: Use): Fault[] {
  const side = machineAt(subject, use, 'press').need('side-by-side', (row) => row['side-by-side']).id;
  const stacks = use.fact('press.side-by-side').value;
  const [along, across] = [use.fact('press.plate.length'), use.fact('press.plate.width')];
  const [long, wide] = [use.fact('press.part.length'), use.fact('press.part.width')];
  const lies = (beside: Length, other: Length): boolean =>
    stacks * beside.value <= along.value && other.value <= across.value;
  if (lies(wide, long) || lies(long, wide)) return [];
  const parts = `${say(long, long.value)} × ${say(wide, wide.value)}`;
  const plate = `${say(along, along.value)} × ${say(across, across.value)}`;
  const [what, mend] =
    stacks === 1
      ? [`A part of ${parts} does not lie on a plate of ${plate}.`, 'Press this model on a bigger press.']
      : [
          `${stacks} parts side by side, each ${parts}, do not lie on a plate of ${plate}.`,
          'Put fewer side by side, or take a bigger press.',
        ];
  return [
    {
      at: 'press.plate.length',
      what,
      mend,
      against: [{ at: side, text: 'how many stacks stand side by side' }],
      hangsOn: ['press.part.length', 'press.part.width', 'press.plate.width'],
    },
  ];
}
