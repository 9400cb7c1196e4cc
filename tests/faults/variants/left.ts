/** The left hand of a model that has none: fixtures, jig and programs of its own, copied from the right hand's. */
import { stringify } from 'yaml';
import { at, treeAt } from '../merged.ts';
import type { Tree } from '../merged.ts';
import type { Way } from './variant.ts';

/** A fixture without pins has no pattern. */
const patternOf = (plant: Tree, fixture: string) =>
  at(plant, ['fixtures', fixture, 'pattern']) === undefined ? {} : { pattern: 'left-pattern' };

/** Its zones lie the other way round too: rectangles along the body, as all of ours are. */
function zonesOf(plant: Tree, fixture: string): Tree {
  const zones = at(plant, ['fixtures', fixture, 'zones']);
  if (zones === undefined) return {};
  const mirrored = Object.entries(zones as Tree).map(([name, zone]) => {
    const place = treeAt(zone, ['at']);
    return [name, { ...(zone as Tree), at: { ...place, x: -Number(place['x']) } }] as const;
  });
  return { zones: Object.fromEntries(mirrored) };
}

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
      pinned: at(setup, ['pins']) !== undefined,
    }));
    const overlay = {
      handed: {
        left: {
          setups: Object.fromEntries(
            setups.map(({ name, left, program, pinned }) => [
              name,
              { fixture: left, program, ...(pinned ? { pins: 'left-pattern' } : {}) },
            ]),
          ),
          location: { jig: 'left-jig' },
        },
      },
    };
    // The left hand's holes lie the other way round: its jig and its fixtures have a pattern of their own.
    const pattern = treeAt(plant, ['patterns', String(at(plant, ['jigs', jig, 'pattern']))]);
    const holes = Object.entries(treeAt(pattern, ['holes'])).map(([name, hole]) => {
      const place = treeAt(hole, ['at']);
      return [name, { ...(hole as Tree), at: { ...place, x: -Number(place['x']) } }] as const;
    });
    const rows = {
      units: 'mm',
      patterns: { 'left-pattern': { ...pattern, title: 'Pattern left', holes: Object.fromEntries(holes) } },
      fixtures: Object.fromEntries(
        setups.map(({ right, left }) => [
          left,
          {
            ...treeAt(plant, ['fixtures', right]),
            title: `Fixture ${left}`,
            ...patternOf(plant, right),
            ...zonesOf(plant, right),
            hand: 'left',
          },
        ]),
      ),
      jigs: {
        'left-jig': { ...treeAt(plant, ['jigs', jig]), title: 'Jig left', pattern: 'left-pattern', hand: 'left' },
      },
    };
    const file = layers[0]!;
    return {
      ...files,
      [file]: `${files[file]!.trimEnd()}\n${stringify(overlay)}`,
      'models/plant/zz-left.yaml': stringify(rows),
    };
  },
};
