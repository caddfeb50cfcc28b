import { expect, it } from 'vitest';
import type { FloorAnswer } from '../lib/contract';
import { Motion, newMoment } from '../floor/motion';
import lantern from '../floor/fixtures/tin-lantern.json';
import { unfold, unfoldCall, unfoldFloor } from './unfold';

const floor = lantern as FloorAnswer;
const short = (values: readonly number[]) => values.map((v, i) => (i === 0 ? v : v - values[i - 1]!));

it('gives back the numbers that were folded', () => {
  expect(unfold([])).toEqual([]);
  expect(unfold([5, -2, 0, 4])).toEqual([5, 3, 3, 7]);
});

it('dances what the studio dances', () => {
  const foot = (f: FloorAnswer['left']) => ({
    ...f,
    x: short(f.x),
    y: short(f.y),
    angle: short(f.angle),
    lift: short(f.lift),
  });
  const b = floor.body;
  const folded: FloorAnswer = {
    ...floor,
    left: foot(floor.left),
    right: foot(floor.right),
    body: { ...b, x: short(b.x), y: short(b.y), hips: [], facing: short(b.facing), turned: short(b.turned) },
  };
  const steps = {
    at: floor.steps.map((s) => s.at),
    count: floor.steps.map((s) => s.count),
    facing: floor.steps.map((s) => s.facing ?? ''),
  };
  expect(unfoldFloor(folded, steps).steps.map((s) => [s.at, s.count, s.facing])).toEqual(
    floor.steps.map((s) => [s.at, s.count, s.facing]),
  );
  const [given, whole] = [new Motion(unfoldFloor(folded, steps)), new Motion(floor)];
  const [a, z] = [newMoment(), newMoment()];
  for (let count = 0; count < floor.length; count += 0.37) {
    given.at(count, a);
    whole.at(count, z);
    expect([a.left, a.right, a.x, a.y, a.facing, a.sway]).toEqual([z.left, z.right, z.x, z.y, z.facing, z.sway]);
  }
});

it('has calls as practice knows them', () => {
  expect(unfoldCall({ kind: 'move', words: 'box', at: 2, for: 4, wall: 1 })).toMatchObject({
    at: 2,
    for: 4,
    until: 4,
    words: 'box',
  });
});
