/**
 * Depths through the set-ups, against the process acted out: a blank of some thickness is laid on its fixture, a zero is
 * taken, the program's own number is cut with some error, the body is turned over. Nothing here knows of surfaces or ways.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Facts } from '../../src/facts/facts.ts';
import type { Subject } from '../../src/facts/subject.ts';
import { factsOf, hundredths, lengthLeaf, MM, mmOf, sampleSubject, textLeaf, valueOf } from './subject.ts';

const base = underTheCrown(sampleSubject());

/** The controls in the middle of the body, where the arch is level: the wood over them is counted from the crown alone. */
function underTheCrown(subject: Subject): Subject {
  const { cavities } = subject.spec;
  const at = { x: lengthLeaf('cavities.controls.at.x', '0'), y: lengthLeaf('cavities.controls.at.y', '-60') };
  return {
    ...subject,
    spec: {
      ...subject.spec,
      carve: { ...subject.spec.carve, crown: { from: lengthLeaf('carve.crown.from', '70') } },
      cavities: { ...cavities, controls: { ...cavities!['controls']!, at } },
    },
  };
}

interface Process {
  readonly faced: boolean;
  readonly zero: 'fixture' | 'touched-off';
  /** Half widths, in mm. */
  readonly blank: number;
  readonly back: number;
  readonly crown: number;
  readonly machine: number;
}

const pm = (nominal: string, half: number) => `${nominal} ±${hundredths(Math.round(half * 100))}`;

function subjectOf({ faced, zero, blank, back, crown, machine }: Process): Subject {
  const { spec, plant } = base;
  const { faces, ...unfaced } = spec.setups.back;
  const { router } = plant.machines! as { router: NonNullable<Subject['plant']['machines']>[string] };
  const error = lengthLeaf('plant.machines.router.depth-error', pm('0', machine));
  const zeroed = { ...unfaced, 'z-zero': textLeaf('setups.back.z-zero', zero) as (typeof unfaced)['z-zero'] };
  return {
    hand: 'right',
    readings: new Map(),
    pictures: base.pictures,
    plant: { ...plant, machines: { ...plant.machines, router: { ...router, 'depth-error': error } } },
    spec: {
      ...spec,
      setups: { ...spec.setups, back: faced && faces ? { ...zeroed, faces } : zeroed },
      stages: {
        // The whole variation of the blank in its cap: what is asked here does not tell the two apart.
        cap: { sized: lengthLeaf('stages.cap.sized', pm('16.40', blank)) },
        back: { sized: lengthLeaf('stages.back.sized', '34.40') },
        body: {
          ...spec.stages.body,
          ...(faced ? { 'back-faced': lengthLeaf('stages.body.back-faced', pm('50.30', back)) } : {}),
          machined: {
            crown: lengthLeaf('stages.body.machined.crown', pm('49.60', crown)),
            land: lengthLeaf('stages.body.machined.land', pm('45.40', crown)),
          },
        },
      },
    },
  };
}

const GLUE = 0.03;

/** Least and most wood over the floor of the back cavity, the program's height taken from the facts. */
function actOut(process: Process, programMm: number): [number, number] {
  const { faced, zero, machine, back, crown } = process;
  const blank = process.blank + GLUE;
  const ends = [-blank, 0, blank];
  const wood: number[] = [];
  // A linear form is at its least and most in a vertex: of the box, or where one of the machine's bounds meets it.
  for (const t of ends) {
    const blankMm = 50.85 + t;
    const zeroMm = zero === 'fixture' ? 0 : blankMm;
    for (const f of faced ? [-back, 0, back] : [0]) {
      const backMm = faced ? 50.3 + f : blankMm;
      const shift = zero === 'fixture' ? 0 : t;
      for (const e of [-machine, 0, machine, f - shift - machine, f - shift + machine]) {
        if (Math.abs(e) > machine + 1e-9) continue;
        const floorMm = zeroMm + programMm + e;
        // The same machine skims the back and cuts the floor: the two are within its error of each other as well.
        if (faced && Math.abs(shift + e - f) > machine + 1e-9) continue;
        for (const m of [-crown, crown]) wood.push(floorMm - backMm + 49.6 + m);
      }
    }
  }
  return [Math.min(...wood), Math.max(...wood)];
}

const half = fc.integer({ min: 1, max: 40 }).map((n) => n / 100);
const processes: fc.Arbitrary<Process> = fc.record({
  faced: fc.boolean(),
  zero: fc.constantFrom('fixture', 'touched-off'),
  blank: half,
  back: half,
  crown: half,
  machine: half,
});

const programOf = (facts: Facts) => valueOf(facts, 'cavity.controls.height').value / MM;

describe('wood left over a back cavity', () => {
  test('what the set-ups hold at worst is what acting it out gives, least and most', () => {
    fc.assert(
      fc.property(processes, (process) => {
        const facts = factsOf(subjectOf(process));
        const [least, most] = actOut(process, programOf(facts));
        const { low, high } = valueOf(facts, 'cavity.controls.achieved');
        expect(Math.abs(low! / MM - least)).toBeLessThanOrEqual(1e-6);
        expect(Math.abs(high! / MM - most)).toBeLessThanOrEqual(1e-6);
      }),
    );
  });

  const at = { blank: 0.2, back: 0.1, crown: 0.12, machine: 0.08 };
  test.each([
    [false, 'fixture', 0.43],
    [true, 'fixture', 0.2],
    [false, 'touched-off', 0.2],
    [true, 'touched-off', 0.2],
  ] as const)('faced %s, zero %s: 5.00 ±%d', (faced, zero, off) => {
    const facts = factsOf(subjectOf({ ...at, faced, zero }));
    const [value, low, high] = mmOf(valueOf(facts, 'cavity.controls.achieved'));
    expect([value, low, high].map((mm) => mm!.toFixed(6))).toEqual([5, 5 - off, 5 + off].map((mm) => mm.toFixed(6)));
  });

  test('the machine counts once, and so does each of the others', () => {
    const { causes } = valueOf(factsOf(base), 'cavity.controls.achieved');
    expect(causes!.map(({ cause }) => cause.replace(/#.*/, '')).toSorted()).toEqual([
      'plant.machines.router.depth-error',
      'stages.body.machined.crown',
    ]);
  });
});

describe('what the gauge must read', () => {
  test('a reading inside proves the floor, whatever the rest is; a reading outside does not', () => {
    fc.assert(
      fc.property(processes, fc.integer({ min: 30, max: 90 }), (process, tol) => {
        const subject = subjectOf(process);
        const floor = lengthLeaf('cavities.controls.floor', pm('5.0', tol / 100));
        const { cavities } = subject.spec;
        const controls = { ...cavities!['controls']!, floor };
        const spec = { ...subject.spec, cavities: { ...cavities, controls } };
        const { way, limits } = valueOf(factsOf({ ...subject, spec }), 'cavity.controls.measuring');
        const blank = process.blank + GLUE;
        const backs = process.faced ? [50.3 - process.back, 50.3 + process.back] : [50.85 - blank, 50.85 + blank];
        const woods = (reading: number) =>
          [-process.crown, process.crown].flatMap((m) =>
            // Down from the back, or up from the fixture the cap face lies on.
            backs.map((back) => (way === 'depth' ? 49.6 + m - reading : reading - back + 49.6 + m)),
          );
        const holds = (reading: number) => woods(reading).every((wood) => Math.abs(wood - 5) <= tol / 100 + 1e-9);
        const [low, high] = [limits.low! / MM, limits.high! / MM];
        if (low > high) {
          for (let mm = low - 1; mm < high + 1; mm += 0.01) expect(holds(mm)).toBe(false);
          return;
        }
        expect([holds(low), holds(high), holds((low + high) / 2)]).toEqual([true, true, true]);
        expect([holds(low - 0.001), holds(high + 0.001)]).toEqual([false, false]);
      }),
    );
  });

  test('the sample by hand', () => {
    const facts = factsOf(base);
    // Down from the faced back: 49.60 − 5.0; at most 49.48 − 4.60, at least 49.72 − 5.40.
    expect(valueOf(facts, 'cavity.controls.measuring')).toMatchObject({ way: 'depth', from: 'back-face' });
    expect(mmOf(valueOf(facts, 'cavity.controls.measured'))).toEqual([44.6, 44.32, 44.88]);
    // Up from the fixture the back lies on: at least 50.40 − 19.20, at most 50.20 − 18.80.
    expect(valueOf(facts, 'cavity.neck-pickup.measuring')).toMatchObject({ way: 'height', from: 'back-face' });
    expect(mmOf(valueOf(facts, 'cavity.neck-pickup.measured'))).toEqual([31.3, 31.2, 31.4]);
    expect(mmOf(valueOf(facts, 'cavity.neck-pocket.measured'))).toEqual([33.6, 33.4, 33.8]);
  });
});

test('what the program cuts to, by hand', () => {
  const facts = factsOf(base);
  const height = (id: 'controls' | 'neck-pickup' | 'neck-pocket') => valueOf(facts, `cavity.${id}.height`).value / MM;
  // Over the fixture, cap face down: 50.30 − (49.60 − 5.0).
  expect(height('controls')).toBe(5.7);
  // Over the fixture, back down: 50.30 − 19.0; and the floor itself.
  expect(height('neck-pickup')).toBe(31.3);
  expect(height('neck-pocket')).toBe(33.6);
  // With the back left as glued, 50.85 − 44.60; touched off the glued back, 44.60 down from it less what it is thicker.
  const at = { blank: 0.2, back: 0.1, crown: 0.12, machine: 0.08, faced: false } as const;
  expect(programOf(factsOf(subjectOf({ ...at, zero: 'fixture' })))).toBe(6.25);
  expect(programOf(factsOf(subjectOf({ ...at, zero: 'touched-off' })))).toBe(-44.6);
});
