import type { FootNow, Moment } from './motion';

/** A place in the room: metres to the right, above the floor and towards 6:00, as three.js has it. */
export interface Place {
  x: number;
  y: number;
  z: number;
}

/**
 * Lengths as parts of the body height. Sources: Drillis and Contini 1966, Body segment parameters, as reprinted in textbooks of
 * biomechanics, from memory; those marked are design values.
 */
export const PART = {
  ankle: 0.039,
  shoulder: 0.818,
  /** From the top of the shoulders down to their joints; design value. */
  shoulderDrop: 0.02,
  shoulderHalf: 0.1,
  upperArm: 0.186,
  /** Forearm with half of the hand. */
  forearm: 0.2,
  /** Middle of the head; design value. */
  head: 0.93,
  /** From the middle to a hip joint; design value. */
  hipHalf: 0.048,
} as const;

// The hips stand over the middle of the feet, the floor's places are those of the balls: parts of the way to the heel. Design value.
const HIPS_BEHIND = 0.42;

// How far behind the ball the ankle lies, as a part of the way to the heel. Design value.
const ANKLE_BEHIND = 0.72;

// A leg is never quite straight, or the knee would snap: parts of the leg.
const SOFT_KNEES = 0.022;
const MOST_STRAIGHT = 0.995;

// The hips go a little over the foot that carries, and that side of them is a little higher: metres, design values.
const SWAY = 0.022;
const HIP_RISE = 0.014;

// Arms swing against the feet: radians a metre, and the most. Design values for a calm dancer.
const ARM_SWING = 0.75;
const MOST_SWING = 0.42;
const ARMS_OUT = 0.17;
const ELBOW = 0.42;

/** All joints of a dancer at one moment, in metres, and where the parts point. */
export interface Figure {
  pelvis: Place;
  /** Between the shoulders. */
  chest: Place;
  head: Place;
  leftHip: Place;
  rightHip: Place;
  leftKnee: Place;
  rightKnee: Place;
  leftAnkle: Place;
  rightAnkle: Place;
  leftShoulder: Place;
  rightShoulder: Place;
  leftElbow: Place;
  rightElbow: Place;
  leftHand: Place;
  rightHand: Place;
  /** Radians clockwise from 12:00. */
  hipAngle: number;
  chestAngle: number;
  headAngle: number;
  /** Length of a thigh, and of a shin. */
  thigh: number;
  shin: number;
}

/** A figure to be filled by {@link pose}. */
export function newFigure(): Figure {
  const at = (): Place => ({ x: 0, y: 0, z: 0 });
  return {
    pelvis: at(),
    chest: at(),
    head: at(),
    leftHip: at(),
    rightHip: at(),
    leftKnee: at(),
    rightKnee: at(),
    leftAnkle: at(),
    rightAnkle: at(),
    leftShoulder: at(),
    rightShoulder: at(),
    leftElbow: at(),
    rightElbow: at(),
    leftHand: at(),
    rightHand: at(),
    hipAngle: 0,
    chestAngle: 0,
    headAngle: 0,
    thigh: 0,
    shin: 0,
  };
}

/** What a figure needs to know of the dancer's size, in metres. */
export interface Size {
  height: number;
  heelToBall: number;
  /** From hip to floor. */
  leg: number;
}

/**
 * Stands a figure on its feet: the feet are where they are, the legs follow them.
 * @param now The moment.
 * @param looksTo Where the eyes are already, in radians.
 * @param size The dancer.
 * @param figure What is filled in.
 */
export function pose(now: Moment, looksTo: number, size: Size, figure: Figure): void {
  const { height } = size;
  const thigh = (size.leg - PART.ankle * height) / 2;
  figure.thigh = thigh;
  figure.shin = thigh;
  ankle(now.left, size, figure.leftAnkle);
  ankle(now.right, size, figure.rightAnkle);

  const hipAngle = now.facing + now.turned * 0.4;
  const sin = Math.sin(hipAngle);
  const cos = Math.cos(hipAngle);
  const behind = HIPS_BEHIND * size.heelToBall;
  const x = now.x + cos * now.sway * SWAY - sin * behind;
  const z = -now.y + sin * now.sway * SWAY + cos * behind;
  const half = PART.hipHalf * height;
  set(figure.leftHip, x - cos * half, 0, z - sin * half);
  set(figure.rightHip, x + cos * half, 0, z + sin * half);

  // as high as both legs allow, each side for itself
  const reach = 2 * thigh * MOST_STRAIGHT;
  const rise = now.sway * HIP_RISE;
  let hips = now.hips - SOFT_KNEES * size.leg;
  hips = Math.min(hips, highest(figure.leftHip, figure.leftAnkle, reach) + rise);
  hips = Math.min(hips, highest(figure.rightHip, figure.rightAnkle, reach) - rise);
  figure.leftHip.y = hips - rise;
  figure.rightHip.y = hips + rise;
  set(figure.pelvis, x, hips, z);
  figure.hipAngle = hipAngle;

  knee(figure.leftHip, figure.leftAnkle, thigh, thigh, kneeAngle(hipAngle, now.left.angle), figure.leftKnee);
  knee(figure.rightHip, figure.rightAnkle, thigh, thigh, kneeAngle(hipAngle, now.right.angle), figure.rightKnee);
  upper(now, looksTo, height, hips, figure);
}

function upper(now: Moment, looksTo: number, height: number, hips: number, figure: Figure): void {
  const angle = now.facing + now.turned;
  const sin = Math.sin(angle);
  const cos = Math.cos(angle);
  figure.chestAngle = angle;
  figure.headAngle = looksTo + now.turned * 0.5;
  const { pelvis, chest } = figure;
  // over the hips, and a little less to the side than they
  const x = pelvis.x - Math.cos(figure.hipAngle) * now.sway * SWAY * 0.4 + sin * 0.012;
  const z = pelvis.z - Math.sin(figure.hipAngle) * now.sway * SWAY * 0.4 - cos * 0.012;
  const stand = (PART.shoulder - 0.53) * height;
  set(chest, x, hips + stand, z);
  set(figure.head, x + sin * 0.018, hips + (PART.head - 0.53) * height, z - cos * 0.018);
  const half = PART.shoulderHalf * height;
  const tilt = -now.sway * HIP_RISE * 0.5;
  const joints = chest.y - PART.shoulderDrop * height;
  set(figure.leftShoulder, x - cos * half, joints - tilt, z - sin * half);
  set(figure.rightShoulder, x + cos * half, joints + tilt, z + sin * half);

  const ahead = (now.right.x - now.left.x) * Math.sin(now.facing) + (now.right.y - now.left.y) * Math.cos(now.facing);
  const swing = Math.max(-MOST_SWING, Math.min(MOST_SWING, ahead * ARM_SWING));
  arm(figure.leftShoulder, swing, -1, angle, height, figure.leftElbow, figure.leftHand);
  arm(figure.rightShoulder, -swing, 1, angle, height, figure.rightElbow, figure.rightHand);
}

function set(place: Place, x: number, y: number, z: number): void {
  place.x = x;
  place.y = y;
  place.z = z;
}

/** Where the ankle of a foot is: a raised heel turns about the ball, a raised toe about the heel. */
export function ankle(foot: FootNow, size: Size, out: Place): void {
  const up = PART.ankle * size.height;
  const pivot = foot.pitch < 0 ? -size.heelToBall : 0;
  const along = -ANKLE_BEHIND * size.heelToBall - pivot;
  const sin = Math.sin(foot.pitch);
  const cos = Math.cos(foot.pitch);
  const forward = pivot + along * cos + up * sin;
  set(
    out,
    foot.x + Math.sin(foot.angle) * forward,
    foot.lift + up * cos - along * sin,
    -(foot.y + Math.cos(foot.angle) * forward),
  );
}

// How high a hip can be over an ankle.
function highest(hip: Place, end: Place, reach: number): number {
  const away = (hip.x - end.x) ** 2 + (hip.z - end.z) ** 2;
  return end.y + Math.sqrt(Math.max(0, reach * reach - away));
}

/** Where a knee points: with the foot for the most part, with the hips for the rest, never far from the hips. */
export function kneeAngle(hips: number, foot: number): number {
  let off = foot - hips;
  off -= 2 * Math.PI * Math.round(off / (2 * Math.PI));
  return hips + Math.max(-0.9, Math.min(0.9, off * 0.6));
}

/**
 * The knee between a hip and an ankle: the two bones keep their lengths, the knee bends forward. Where the ankle is out of reach, the
 * leg is straight.
 * @param angle Where it bends to, in radians clockwise from 12:00.
 * @param out What is filled in.
 */
export function knee(hip: Place, end: Place, thigh: number, shin: number, angle: number, out: Place): void {
  const dx = end.x - hip.x;
  const dy = end.y - hip.y;
  const dz = end.z - hip.z;
  const far = Math.max(1e-6, Math.hypot(dx, dy, dz));
  const reach = Math.min(far, thigh + shin);
  const along = (thigh * thigh + reach * reach - shin * shin) / (2 * reach);
  const bend = Math.sqrt(Math.max(0, thigh * thigh - along * along));
  // forward, made square to the line from hip to ankle
  let px = Math.sin(angle);
  let py = 0;
  let pz = -Math.cos(angle);
  const lean = (px * dx + pz * dz) / (far * far);
  px -= lean * dx;
  py -= lean * dy;
  pz -= lean * dz;
  const length = Math.max(1e-6, Math.hypot(px, py, pz));
  const share = along / far;
  const way = bend / length;
  set(out, hip.x + dx * share + px * way, hip.y + dy * share + py * way, hip.z + dz * share + pz * way);
}

function arm(
  shoulder: Place,
  swing: number,
  side: 1 | -1,
  angle: number,
  height: number,
  elbow: Place,
  hand: Place,
): void {
  const sin = Math.sin(angle);
  const cos = Math.cos(angle);
  const upperArm = PART.upperArm * height;
  const forearm = PART.forearm * height;
  hang(shoulder, upperArm, swing, ARMS_OUT * side, sin, cos, elbow);
  // the elbow opens as the arm goes back
  hang(elbow, forearm, swing + ELBOW + swing * 0.5, -0.03 * side, sin, cos, hand);
}

// From a joint down, swung forward and out.
function hang(from: Place, length: number, forward: number, out: number, sin: number, cos: number, to: Place): void {
  const ahead = Math.sin(forward) * length;
  const aside = Math.sin(out) * Math.cos(forward) * length;
  set(
    to,
    from.x + sin * ahead + cos * aside,
    from.y - Math.cos(forward) * Math.cos(out) * length,
    from.z - cos * ahead + sin * aside,
  );
}
