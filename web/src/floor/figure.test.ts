import { describe, expect, it } from 'vitest';
import type { FloorAnswer } from '../lib/contract';
import { ankle, type Figure, knee, kneeAngle, newFigure, PART, type Place, pose } from './figure';
import answer from './fixtures/tin-lantern.json';
import { type FootNow, Motion, newMoment } from './motion';

const floor: FloorAnswer = answer;
const motion = new Motion(floor);
const length = (a: Place, b: Place) => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);

function everyMoment(look: (figure: Figure, now: ReturnType<typeof newMoment>, count: number) => void): void {
  const now = newMoment();
  for (let count = 0; count <= 32; count += 1 / 24) {
    const figure = newFigure();
    motion.at(count, now);
    pose(now, motion.facingAt(count), motion, figure);
    look(figure, now, count);
  }
}

describe('the figure', () => {
  it('keeps the lengths of its legs and arms in every moment of a dance', () => {
    everyMoment((f) => {
      for (const [hip, joint, end] of [
        [f.leftHip, f.leftKnee, f.leftAnkle],
        [f.rightHip, f.rightKnee, f.rightAnkle],
      ] as const) {
        expect(length(hip, joint)).toBeCloseTo(f.thigh, 9);
        expect(length(joint, end)).toBeCloseTo(f.shin, 9);
      }
      expect(length(f.leftShoulder, f.leftElbow)).toBeCloseTo(PART.upperArm * motion.height, 9);
      expect(length(f.rightElbow, f.rightHand)).toBeCloseTo(PART.forearm * motion.height, 9);
    });
  });

  it('stands with its ankles where the feet are', () => {
    everyMoment((f, now) => {
      const place: Place = { x: 0, y: 0, z: 0 };
      ankle(now.left, motion, place);
      expect(f.leftAnkle).toEqual(place);
      // an ankle is never further from its ball than a foot is long, nor below its height
      expect(Math.hypot(place.x - now.left.x, place.z + now.left.y)).toBeLessThan(motion.heelToBall);
      expect(place.y).toBeGreaterThan(PART.ankle * motion.height * 0.95);
    });
  });

  it('bends its knees forward, never back', () => {
    everyMoment((f, now) => {
      for (const [hip, joint, end, foot] of [
        [f.leftHip, f.leftKnee, f.leftAnkle, now.left],
        [f.rightHip, f.rightKnee, f.rightAnkle, now.right],
      ] as const) {
        const angle = kneeAngle(f.hipAngle, foot.angle);
        const share = length(hip, joint) / (length(hip, joint) + length(joint, end));
        const x = joint.x - (hip.x + (end.x - hip.x) * share);
        const z = joint.z - (hip.z + (end.z - hip.z) * share);
        expect(x * Math.sin(angle) - z * Math.cos(angle)).toBeGreaterThan(0);
        // and towards where the body looks
        expect(x * Math.sin(f.hipAngle) - z * Math.cos(f.hipAngle)).toBeGreaterThan(0);
      }
    });
  });

  it('moves without a jerk', () => {
    let before: Figure | null = null;
    everyMoment((f) => {
      if (before) {
        for (const name of ['pelvis', 'leftKnee', 'rightKnee', 'leftHand', 'head'] as const) {
          expect(length(f[name], before[name])).toBeLessThan(0.12);
        }
        expect(Math.abs(f.pelvis.y - before.pelvis.y)).toBeLessThan(0.02);
      }
      before = f;
    });
  });

  it('swings the arm forward that is opposite to the foot in front', () => {
    const now = newMoment();
    const figure = newFigure();
    now.hips = motion.leg;
    now.right.y = 0.4;
    pose(now, 0, motion, figure);
    expect(figure.leftHand.z).toBeLessThan(figure.rightHand.z);
    expect(figure.leftElbow.z).toBeLessThan(figure.leftShoulder.z);
    expect(figure.rightElbow.z).toBeGreaterThan(figure.rightShoulder.z);
  });
});

describe('an ankle', () => {
  const size = { height: 1.68, heelToBall: 0.18, leg: 0.89 };
  const foot: FootNow = { x: 0.3, y: 0.5, angle: Math.PI / 2, lift: 0, pitch: 0, contact: 'f', carries: true };
  const up = PART.ankle * size.height;

  it('is behind the ball of a flat foot and at its own height', () => {
    const place: Place = { x: 0, y: 0, z: 0 };
    ankle(foot, size, place);
    expect(place.y).toBeCloseTo(up, 12);
    expect(place.z).toBeCloseTo(-0.5, 12);
    expect(place.x).toBeLessThan(0.3);
    expect(place.x).toBeGreaterThan(0.3 - size.heelToBall);
  });

  it('goes up with the heel, about the ball, and stays as far from it', () => {
    const [flat, raised] = [newPlace(), newPlace()];
    ankle(foot, size, flat);
    ankle({ ...foot, pitch: 0.6 }, size, raised);
    expect(raised.y).toBeGreaterThan(flat.y + 0.03);
    const ball = { x: foot.x, y: 0, z: -foot.y };
    expect(length(raised, ball)).toBeCloseTo(length(flat, ball), 12);
  });

  it('turns about the heel when the toe is raised', () => {
    const [flat, raised] = [newPlace(), newPlace()];
    ankle(foot, size, flat);
    ankle({ ...foot, pitch: -0.5 }, size, raised);
    const heel = { x: foot.x - size.heelToBall, y: 0, z: -foot.y };
    expect(length(raised, heel)).toBeCloseTo(length(flat, heel), 12);
    expect(raised.x).toBeLessThan(flat.x);
  });
});

describe('a knee', () => {
  it('is straight where the ankle is out of reach', () => {
    const out = newPlace();
    knee({ x: 0, y: 1, z: 0 }, { x: 0, y: -1, z: 0 }, 0.4, 0.4, 0, out);
    expect(out.x).toBeCloseTo(0, 12);
    expect(out.z).toBeCloseTo(0, 12);
  });

  it('is found for bones of two lengths', () => {
    const [hip, end, out] = [{ x: 0.1, y: 0.9, z: 0.2 }, { x: -0.1, y: 0.1, z: -0.2 }, newPlace()];
    knee(hip, end, 0.55, 0.4, 1.1, out);
    expect(length(hip, out)).toBeCloseTo(0.55, 12);
    expect(length(out, end)).toBeCloseTo(0.4, 12);
  });
});

function newPlace(): Place {
  return { x: 0, y: 0, z: 0 };
}
