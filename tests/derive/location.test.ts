/** What location does to cuts: nothing between two of one set-up, and of two set-ups no more than bodies laid on the pins show. */
import { describe, expect, test } from 'vitest';
import { derive } from '../../src/derive/derive.ts';
import { apartCauses, setupsApart, sideOf } from '../../src/derive/location.ts';
import type { Place } from '../../src/derive/location.ts';
import { cutsOf } from '../../src/facts/cuts.ts';
import type { Facts, Use } from '../../src/facts/facts.ts';
import type { Subject } from '../../src/facts/subject.ts';
import { worstCase } from '../../src/units/arithmetic.ts';
import { compileDemo } from '../cards/demo.ts';
import { seeded } from '../faults/seeded.ts';
import type { Seeded } from '../faults/seeded.ts';
import { MM, valueOf } from './subject.ts';

const { checked } = compileDemo();
const subjects = checked.models.flatMap(({ hands }) => hands.map(({ subject }) => subject));
const named = subjects.map((subject) => [`${valueOfTitle(subject)} ${subject.hand}`, subject] as const);

function valueOfTitle(subject: Subject): string {
  const reading = derive(subject).read((use) => use(subject.spec.model));
  return reading.ok ? reading.value : '?';
}

function read<T>(facts: Facts, reader: (use: Use) => T): T {
  const reading = facts.read(reader);
  if (!reading.ok) throw new Error(reading.missing.join());
  return reading.value;
}

describe.each(named)('%s', (_, subject) => {
  const facts = derive(subject);
  const cuts = cutsOf(subject.spec);

  test('two cuts of one set-up do not see the location error', () => {
    for (const setup of ['back', 'top'] as const) {
      const own = cuts.filter((cut) => read(facts, (use) => use(cut.spec.setup)) === setup);
      expect(own.length).toBeGreaterThan(1);
      for (const a of own)
        for (const b of own) {
          const causes = read(facts, (use) =>
            apartCauses(subject, use, sideOf(use, a), sideOf(use, b), { xMm: 90, yMm: -90 }),
          );
          expect(causes.filter(({ cause }) => cause.startsWith('location.'))).toEqual([]);
        }
    }
    const pairs = valueOf(facts, 'sideways.pairs');
    for (const { word, off } of pairs) {
      const seesPins = (off.causes ?? []).some(({ cause }) => cause.startsWith('location.'));
      expect(seesPins).toBe(word === 'back-to-top');
    }
  });

  test('of two set-ups the play of the first does not count where the second locates on its holes', () => {
    const causes = read(facts, (use) => setupsApart(subject, use, 'back', 'top', { xMm: 90, yMm: -90 })).map(
      ({ cause }) => cause.replace(/#.*/, ''),
    );
    expect(new Set(causes)).toEqual(
      new Set(['location.top.first-play', 'location.top.second-play', 'plant.machines.router.place-error']),
    );
  });

  test('no body laid on its pins lies farther off than said, and some come near', () => {
    const chance = seeded(20_261_126);
    const [a, b] = valueOf(facts, 'location.top.datums')!;
    const plays = (['first', 'second'] as const).map((which) => valueOf(facts, `location.top.${which}-play`)!);
    let nearest = 0;
    for (const at of [
      { xMm: 100, yMm: -90 },
      { xMm: -60, yMm: 150 },
      { xMm: 0, yMm: 20 },
    ]) {
      const said = worstCase(read(facts, (use) => setupsApart(subject, use, 'back', 'top', at))).plus / MM;
      for (let body = 0; body < 4000; body++) {
        const off = laid(chance, [a, b], plays.map((play) => play.high! / MM) as [number, number], at);
        expect(off).toBeLessThanOrEqual(said + 1e-4);
        nearest = Math.max(nearest, off / said);
      }
    }
    expect(nearest).toBeGreaterThan(0.8);
  });
});

/** The router drills two holes, each up to 0.15 off any way; the body is laid on its pins; how far off the place then lies. */
function laid(chance: Seeded, [a, b]: readonly [Place, Place], plays: readonly [number, number], at: Place): number {
  const anyWay = (most: number): readonly [number, number] => {
    const [angle, away] = [chance.next() * 2 * Math.PI, most * (chance.whole(4) ? 1 : chance.next())];
    return [away * Math.cos(angle), away * Math.sin(angle)];
  };
  const [holeA, holeB] = [anyWay(0.15), anyWay(0.15)];
  const play = anyWay(plays[0] / 2);
  const spacing = Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm);
  const [ux, uy] = [(b.xMm - a.xMm) / spacing, (b.yMm - a.yMm) / spacing];
  const side = (chance.whole(2) ? 1 : -1) * (plays[1] / 2);
  // Fixed pins; the body moves so that its first hole lies about the first pin, its second across against the other.
  const move: readonly [number, number] = [play[0] - holeA[0], play[1] - holeA[1]];
  const acrossB = side - (-uy * holeB[0] + ux * holeB[1]);
  const angle = (acrossB - (-uy * move[0] + ux * move[1])) / spacing;
  const [dx, dy] = [at.xMm - a.xMm, at.yMm - a.yMm];
  return Math.hypot(move[0] - angle * dy, move[1] + angle * dx);
}
