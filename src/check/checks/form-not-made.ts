/** A form cutter makes the round or the bevel it is named for: whatever is drawn, it leaves its own shape. */
import { highestPoint } from '../../facts/parts.ts';
import type { Use } from '../../facts/facts.ts';
import type { Leaf } from '../../facts/leaf.ts';
import { present, row } from '../../facts/row.ts';
import type { Subject } from '../../facts/subject.ts';
import { formatNumber } from '../../units/format.ts';
import type { Length } from '../../units/quantity.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { say } from '../say.ts';
import { ideal, line, ring, section, shape } from '../sketch.ts';

const check: Check = {
  id: 'form-not-made',
  stage: 'derived',
  severity: 'error',
  why: 'A form cutter leaves its own shape in one path, whatever the drawing says: the edge is another one than was drawn, on every body, until somebody lays a gauge on it.',
  mend: 'Name a cutter that makes this round or this bevel, or draw the one that the cutter makes.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'crown: { from: 95 } }\n',
    fails: 'crown: { from: 95 } }\nedges: { back: { round: 4, cutter: round-3 } }\n',
    beside: {
      file: 'models/plant/plant.yaml',
      find: 'cutters:\n',
      replace:
        'cutters:\n  round-3: { title: Rounding cutter 3, kind: form, makes: { round: 3 }, diameter: 20, reach: 12, length: 40, flutes: 2, most-speed: 20000 rpm, speed: 16000 rpm, feed: 5 m/min, step-down: 6 }\n',
    },
  },
  sketch: section(
    shape('M 2 0 H 36 L 48 12 V 17 H 2 Z', 'wood'),
    line('M 2 0 H 36 L 48 12 V 17 H 2'),
    ideal('M 36 0 A 12 12 0 0 1 48 12'),
    ring(43.2, 5.4, 3.6),
  ),
  run: (bench) => [...(['top', 'back'] as const).flatMap((side) => roundFault(bench, side)), ...bevelFault(bench)],
};
export default check;

/** The form a named cutter makes; undefined where it is no form cutter, or nobody says what it makes. */
function formOf({ plant }: Subject, use: Use, cutter: Leaf<string>) {
  const { kind, title, makes } = row(plant.cutters, use(cutter), 'plant.cutters');
  if (use(kind) !== 'form' || !makes) return undefined;
  return { title: use(title), makes, at: (makes.round ?? makes.bevel?.slope)?.id ?? cutter.id };
}

function roundFault({ subject, facts }: Bench, side: 'top' | 'back'): Fault[] {
  const edge = present(present(subject.spec.edges)?.[side]);
  const [round, cutter] = [edge?.round, edge?.cutter];
  if (!round || !cutter) return [];
  const seen = look(facts, (use) => {
    const form = formOf(subject, use, cutter);
    const own = form?.makes.round;
    return form && { form, round: use(round), own: own && use(own) };
  });
  if (!seen || seen.own?.value === seen.round.value) return [];
  const { form, own } = seen;
  return [
    {
      at: cutter.id,
      what: `The edge at the ${side} is drawn with a round of ${say(seen.round, seen.round.value)}, and ${form.title} makes ${own ? `one of ${say(own, own.value)}` : 'a bevel'}.`,
      mend: own
        ? `Name a cutter that makes ${say(seen.round, seen.round.value)}, or draw a round of ${say(own, own.value)}.`
        : 'Name a cutter that makes a round.',
      against: [
        { at: round.id, text: 'the round as it is drawn' },
        { at: form.at, text: 'what the cutter makes' },
      ],
    },
  ];
}

function bevelFault({ subject, facts }: Bench): Fault[] {
  const { carve, setups } = subject.spec;
  const width = carve.bevel?.width;
  const cutter = present(present(present(setups)?.top)?.cutters)?.carve;
  if (!width || !cutter) return [];
  const seen = look(facts, (use) => {
    const form = formOf(subject, use, cutter);
    const bevel = form?.makes.bevel;
    return (
      form && {
        form,
        own: bevel && { slope: use(bevel.slope), width: use(bevel.width) },
        width: use(width),
        face: use.fact(`thickness.body.machined.${highestPoint(subject.spec)}`),
        land: use.fact('thickness.body.machined.land'),
      }
    );
  });
  const wrong = seen && wrongBevel(seen);
  if (!wrong) return [];
  return [
    {
      at: cutter.id,
      what: `${seen.form.title} makes ${wrong.makes}, and the bevel ${wrong.drawn}.`,
      mend: wrong.mend,
      against: [
        { at: width.id, text: 'how wide the bevel is drawn' },
        { at: 'thickness.body.machined.land', text: 'how far it goes down' },
        { at: seen.form.at, text: 'what the cutter makes' },
      ],
    },
  ];
}

interface Bevel {
  readonly own: { readonly slope: { readonly value: number }; readonly width: Length } | undefined;
  readonly width: Length;
  readonly face: Length;
  readonly land: Length;
}

function wrongBevel({ own, width, face, land }: Bevel) {
  const drop = face.value - land.value;
  const drawn = `is drawn ${say(width, width.value)} wide and ${say(land, drop)} deep`;
  const slope = degrees(drop / width.value);
  const mend = `Name a cutter that makes a bevel of ${slope} at least ${say(width, width.value)} wide.`;
  if (!own) return { makes: 'a round', drawn, mend };
  if (own.width.value < width.value)
    return { makes: `a bevel no wider than ${say(own.width, own.width.value)}`, drawn, mend };
  // In the depth it comes to over the width drawn, held against the limits of face and land.
  const made = Math.tan((own.slope.value * Math.PI) / 180) * width.value;
  const most = (face.high ?? face.value) - (land.low ?? land.value);
  const least = (face.low ?? face.value) - (land.high ?? land.value);
  if (made >= least && made <= most) return undefined;
  return {
    makes: `a bevel that goes down ${say(land, made)} in ${say(width, width.value)}`,
    drawn: `may go down ${say(land, least)} to ${say(land, most)}`,
    mend: `${mend.slice(0, -1)}, or draw it ${say(width, drop / Math.tan((own.slope.value * Math.PI) / 180))} wide.`,
  };
}

/** In a tenth of a degree, as such cutters are sold. */
const degrees = (slope: number): string => `${formatNumber((Math.atan(slope) * 180) / Math.PI, 'deg', 1)}°`;
