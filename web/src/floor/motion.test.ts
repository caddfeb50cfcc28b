import { describe, expect, it } from 'vitest';
import type { FloorAnswer } from '../lib/contract';
import answer from './fixtures/tin-lantern.json';
import { angleOf, type FootNow, type Moment, Motion, newMoment } from './motion';

// One wall of a dance of the demo club, as the program answers it.
const floor: FloorAnswer = answer;
const motion = new Motion(floor);

function at(count: number): Moment {
  const moment = newMoment();
  motion.at(count, moment);
  return moment;
}

describe('a dance as it moves', () => {
  it('is at every moment what the program gave', () => {
    for (let i = 0; i < floor.body.x.length; i++) {
      const moment = at(floor.first + i / floor.perCount);
      expect(moment.left.x).toBeCloseTo(floor.left.x[i]! / 1000, 9);
      expect(moment.right.y).toBeCloseTo(floor.right.y[i]! / 1000, 9);
      expect(moment.right.angle).toBeCloseTo((floor.right.angle[i]! * Math.PI) / 1800, 9);
      expect(moment.left.contact).toBe(floor.left.contact[i]);
      expect(moment.left.carries).toBe(floor.body.weight[i] === 'L');
    }
  });

  it('lies between two moments where it is between them', () => {
    const i = floor.left.x.findIndex((x, k) => x !== floor.left.x[k + 1]);
    const between = at(floor.first + (i + 0.25) / floor.perCount);
    expect(between.left.x * 1000).toBeCloseTo(0.75 * floor.left.x[i]! + 0.25 * floor.left.x[i + 1]!, 9);
  });

  it('stands before its first and after its last moment', () => {
    expect(at(-50)).toEqual(at(floor.first));
    expect(at(1000)).toEqual(at(floor.length));
  });

  it('never lets a foot slide that carries the weight', () => {
    const feet: [keyof Moment & ('left' | 'right'), string][] = [
      ['left', 'L'],
      ['right', 'R'],
    ];
    let looked = 0;
    for (const [name, letter] of feet) {
      for (let i = 1; i < floor.body.x.length; i++) {
        const foot = floor[name];
        const stays = [i - 1, i].every((k) => floor.body.weight[k] === letter && 'fb'.includes(foot.contact[k]!));
        if (!stays) continue;
        looked++;
        const from = at(floor.first + (i - 1) / floor.perCount)[name];
        for (const part of [0.3, 0.7, 1]) {
          const now = at(floor.first + (i - 1 + part) / floor.perCount)[name];
          expect(Math.hypot(now.x - from.x, now.y - from.y)).toBeLessThan(0.0011);
        }
      }
    }
    expect(looked).toBeGreaterThan(200);
  });

  it('has hips as high as both legs allow at the most, and near to it', () => {
    floor.body.hips.forEach((hips, i) => {
      const now = at(floor.first + i / floor.perCount).hips;
      expect(now).toBeLessThanOrEqual(hips / 1000 + 1e-6);
      expect(now).toBeGreaterThan(hips / 1000 - 0.09);
    });
  });

  it('raises the toe over a heel', () => {
    const contact = 'f'.repeat(100) + 'h'.repeat(30) + 'f'.repeat(floor.left.contact.length - 130);
    const onHeel = new Motion({ ...floor, left: { ...floor.left, contact } });
    const moment = newMoment();
    onHeel.at(floor.first + 115 / floor.perCount, moment);
    expect(moment.left.pitch).toBeLessThan(-0.3);
    onHeel.at(floor.first + 140 / floor.perCount, moment);
    expect(moment.left.pitch).toBeCloseTo(0, 9);
  });

  it('raises the heel over a ball, and not of a foot that stands flat of a foot that stands flat', () => {
    let highest = 0;
    for (let count = 0; count < 32; count += 1 / 24) {
      for (const foot of [at(count).left, at(count).right]) {
        if (foot.contact === 'b') highest = Math.max(highest, foot.pitch);
      }
    }
    expect(highest).toBeGreaterThan(0.3);
    for (const print of motion.rightPrints) {
      const middle = at((print.from + print.to) / 2).right;
      if (middle.contact === 'f' && print.to - print.from > 1) expect(middle.pitch).toBeCloseTo(0, 6);
    }
  });

  it('has no leap in anything', () => {
    const step = 1 / 96;
    let before = at(0);
    for (let count = step; count <= 32; count += step) {
      const now = at(count);
      const pairs: [FootNow, FootNow][] = [
        [before.left, now.left],
        [before.right, now.right],
      ];
      for (const [a, b] of pairs) {
        expect(Math.hypot(b.x - a.x, b.y - a.y, b.lift - a.lift)).toBeLessThan(0.03);
        expect(Math.abs(b.pitch - a.pitch)).toBeLessThan(0.05);
      }
      expect(Math.abs(now.sway - before.sway)).toBeLessThan(0.07);
      before = now;
    }
  });

  it('keeps the places where feet stood', () => {
    expect(motion.leftPrints.length).toBeGreaterThan(10);
    for (const print of motion.leftPrints) {
      expect(print.to - print.from).toBeGreaterThanOrEqual(0.25);
      for (const count of [print.from, (print.from + print.to) / 2, print.to]) {
        const foot = at(count).left;
        expect([foot.x, foot.y, foot.angle]).toEqual([print.x, print.y, print.angle]);
        expect(foot.contact).not.toBe('a');
      }
    }
  });

  it('holds all feet in the ground of the wall', () => {
    const wall = motion.wallAt(5);
    expect(wall.facing).toBe(0);
    for (let count = 0; count <= 32; count += 0.25) {
      for (const foot of [at(count).left, at(count).right]) {
        expect(Math.abs(foot.x - wall.x)).toBeLessThanOrEqual(wall.across / 2 + 1e-9);
        expect(Math.abs(foot.y - wall.y)).toBeLessThanOrEqual(wall.deep / 2 + 1e-9);
      }
    }
  });

  it('knows the ground of every wall, also before the first', () => {
    const two = new Motion({
      ...floor,
      stretches: [
        { ...floor.stretches[0]!, at: 4, facing: '12:00' },
        { ...floor.stretches[0]!, at: 16, facing: '9:00' },
      ],
    });
    expect(two.walls.map((w) => w.from)).toEqual([0, 4, 16]);
    expect(two.wallAt(3.9).from).toBe(0);
    expect(two.wallAt(16).facing).toBeCloseTo(1.5 * Math.PI, 9);
  });

  it('says how far it is from its end to its beginning', () => {
    const [x, y] = motion.leap(32, 0);
    expect(x).toBeCloseTo(at(0).x - at(32).x, 9);
    expect(y).toBeCloseTo(at(0).y - at(32).y, 9);
  });

  it('is nothing where there is nothing', () => {
    const foot = { x: [], y: [], angle: [], lift: [], contact: '' };
    const empty = new Motion({
      ...floor,
      left: foot,
      right: foot,
      body: { x: [], y: [], hips: [], facing: [], turned: [], weight: '' },
      stretches: [],
      steps: [],
      length: 0,
    });
    expect(empty.isEmpty).toBe(true);
    expect(empty.wallAt(0)).toMatchObject({ x: 0, y: 0, across: 0 });
    expect(empty.facingAt(3)).toBe(0);
  });
});

describe('a clock time', () => {
  it('is an angle', () => {
    expect(angleOf('12:00')).toBe(0);
    expect(angleOf('3:00')).toBeCloseTo(Math.PI / 2, 12);
    expect(angleOf('4:30')).toBeCloseTo((3 * Math.PI) / 4, 12);
    expect(angleOf(null)).toBe(0);
  });
});
