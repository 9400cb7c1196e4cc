/** Each set-up lies the way its name says, on the face opposite. */
import { surfacesNotThere } from '../../facts/parts.ts';
import { namesOf } from '../../facts/row.ts';
import type { Bench, Check, Fault } from '../check.ts';
import { look } from '../check.ts';
import { bed, ring, section, slab } from '../sketch.ts';

/** What each set-up looks up with, and what it may rest on. */
const WAYS: Readonly<Record<string, { up: string; rests: readonly string[] }>> = {
  'glue-face': { up: 'glue-face', rests: ['blank-back'] },
  back: { up: 'back', rests: ['cap-face', 'slab-face'] },
  top: { up: 'top', rests: ['back-face', 'blank-back'] },
};

const check: Check = {
  id: 'setup-wrong-way',
  stage: 'spec',
  severity: 'error',
  why: 'A body put on the fixture the wrong way up is cut on the wrong face.',
  mend: 'Let the set-up look up with the face it is named for, and rest on the face opposite.',
  example: { file: 'models/tarn.yaml', passes: 'rests-on: cap-face', fails: 'rests-on: back-face' },
  sketch: section(
    bed(),
    slab({ left: 6, right: 54, top: -3, bottom: 8, under: 'Q 30 26 6 8' }),
    ring(14, 14.6, 4, 'lower-left'),
    ring(46, 14.6, 4, 'lower-right'),
  ),
  run: (bench) => namesOf(bench.subject.spec.setups).flatMap((id) => fault(bench, id)),
};
export default check;

function fault({ subject: { spec }, facts }: Bench, id: string): Fault[] {
  const way = WAYS[id];
  const setup = (spec.setups as Record<string, typeof spec.setups.back | undefined>)[id];
  if (!way || !setup) return [];
  const gone = surfacesNotThere(spec);
  const may = way.rests.filter((face) => !gone.includes(face));
  const up = look(facts, (use) => use(setup.up));
  const rests = look(facts, (use) => use(setup['rests-on']));
  return [
    ...(up !== undefined && up !== way.up
      ? [
          {
            at: setup.up.id,
            what: `In set-up ${id} the ${up} looks up.`,
            mend: `Write "up: ${way.up}".`,
            against: [],
          },
        ]
      : []),
    ...(rests !== undefined && !may.includes(rests)
      ? [
          {
            at: setup['rests-on'].id,
            what: `Set-up ${id} cannot rest on the ${rests}: that face looks up, or is not there yet.`,
            mend: `Let it rest on the ${may.join(' or ')}.`,
            against: [],
            hangsOn: ['timber.slab', 'timber.cap', 'timber.back'],
          },
        ]
      : []),
  ];
}
