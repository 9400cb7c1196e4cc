/** The left hand of a model that has none: fixtures, jig and programs of its own, copied from the right hand's. */
import { stringify } from 'yaml';
import { at, treeAt } from '../merged.ts';
import type { Way } from './variant.ts';

export const leftHand: Way = {
  name: 'left hand added',
  same: false,
  apply: (sound) => {
    const { model, plant, layers, files } = sound;
    if (model['handed'] !== undefined) return undefined;
    const jig = String(at(model, ['location', 'jig']));
    const setups = Object.entries(treeAt(model, ['setups'])).map(([name, setup], i) => ({
      name,
      right: String(at(setup, ['fixture'])),
      left: `left-${name}`,
      program: String(9001 + i),
    }));
    const overlay = {
      handed: {
        left: {
          setups: Object.fromEntries(setups.map(({ name, left, program }) => [name, { fixture: left, program }])),
          location: { jig: 'left-jig' },
        },
      },
    };
    const rows = {
      units: 'mm',
      fixtures: Object.fromEntries(
        setups.map(({ right, left }) => [
          left,
          { ...treeAt(plant, ['fixtures', right]), title: `Fixture ${left}`, hand: 'left' },
        ]),
      ),
      jigs: { 'left-jig': { ...treeAt(plant, ['jigs', jig]), title: 'Jig left', hand: 'left' } },
    };
    const file = layers[0]!;
    return {
      ...files,
      [file]: `${files[file]!.trimEnd()}\n${stringify(overlay)}`,
      'models/plant/zz-left.yaml': stringify(rows),
    };
  },
};
