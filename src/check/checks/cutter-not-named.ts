/** Every cut of a set-up names its cutter, and the top has the points its shape asks for. */
import { placeOf } from '../../facts/placed.ts';
import { present } from '../../facts/row.ts';
import type { Check, Fault } from '../check.ts';
import { look } from '../check.ts';

const check: Check = {
  id: 'cutter-not-named',
  stage: 'spec',
  severity: 'error',
  why: 'The card would ask for a cut and name no cutter: the one in the spindle would make it.',
  mend: 'Name the cutter under `cutters` of the set-up.',
  example: {
    file: 'models/tarn.yaml',
    passes: 'cutters: { carve: ball-20, perimeter: mill-16 }',
    fails: 'cutters: { perimeter: mill-16 }',
  },
  run: ({ subject: { spec }, facts }) => {
    const { back, top } = spec.setups;
    const carve = look(facts, (use) => use(spec.carve.kind));
    const without = (setup: typeof back, at: string, cut: string, key: string): Fault => {
      const place = placeOf(setup.cutters);
      return {
        at,
        ...(place ? { place } : {}),
        what: `No cutter is named for ${cut}.`,
        mend: `Add "${key}", with the name of the cutter, to \`cutters\` of set-up ${setup === back ? 'back' : 'top'}.`,
        against: [{ at, text: 'what asks for it' }],
        hangsOn: [`setups.${setup === back ? 'back' : 'top'}.cutters`],
      };
    };
    const { faces } = back;
    const facing = faces && look(facts, (use) => use(faces));
    return [
      ...(faces && facing && !present(back.cutters)?.face ? [without(back, faces.id, 'facing the back', 'face')] : []),
      ...(carve && carve !== 'flat' && !present(top.cutters)?.carve
        ? [without(top, spec.carve.kind.id, `the ${carve} top`, 'carve')]
        : []),
    ];
  },
};
export default check;
