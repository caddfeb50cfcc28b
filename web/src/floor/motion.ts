import type { FloorAnswer, FloorFoot } from '../lib/contract';

/** The part of a foot that meets the floor, or the air. */
export type Contact = 'f' | 'b' | 'h' | 't' | 'a';

/** A foot at one moment: metres and radians. */
export interface FootNow {
  /** Its ball, to the right of the start. */
  x: number;
  /** Its ball, forward of the start. */
  y: number;
  /** Where the toe points, clockwise from 12:00. */
  angle: number;
  /** Above the floor. */
  lift: number;
  /** How far the heel is raised (above zero) or the toe (below). */
  pitch: number;
  contact: Contact;
  /** Whether it carries weight. */
  carries: boolean;
}

/** The dancer at one moment: metres and radians. */
export interface Moment {
  left: FootNow;
  right: FootNow;
  /** Below the hips. */
  x: number;
  y: number;
  /** Height of the hips: never higher than both legs allow, and without the jerk of a leg that is suddenly free. */
  hips: number;
  /** Where the dance faces, clockwise from 12:00, not reduced. */
  facing: number;
  /** Styling turn of the body against it. */
  turned: number;
  /** Where the weight is: -1 left, 1 right, 0 between. */
  sway: number;
}

/** A place where a foot stood. */
export interface Footprint {
  x: number;
  y: number;
  angle: number;
  /** The counts between which it stood there. */
  from: number;
  to: number;
}

/** Where the feet get in one wall, with what is danced before the next: metres from the start of the dance. */
export interface WallGround {
  /** The count it begins at. */
  from: number;
  /** The middle. */
  x: number;
  y: number;
  /** From edge to edge. */
  across: number;
  deep: number;
  /** Where the wall is, in radians clockwise from 12:00. */
  facing: number;
}

const MILLI = 1 / 1000;

/** Radians of a tenth of a degree. */
const TENTH = Math.PI / 1800;

// How far the foot is pitched while a part of it meets the floor; design values, inside what an ankle does easily.
const PITCH: Record<Contact, number> = { f: 0, b: 0.38, t: 0.75, h: -0.42, a: 0 };
const AIR_PITCH_PER_METRE = 1.6;
const MOST_AIR_PITCH = 0.5;

// An ankle takes some time, and so do the weight and the hips: parts of a count to either side.
const PITCH_EASE = 1 / 6;
const SWAY_EASE = 1 / 3;
const HIPS_EASE = 1 / 4;

const LEAST_STAND = 0.25;

/** A moment to be filled by {@link Motion.at}. */
export function newMoment(): Moment {
  const foot = (): FootNow => ({ x: 0, y: 0, angle: 0, lift: 0, pitch: 0, contact: 'f', carries: false });
  return { left: foot(), right: foot(), x: 0, y: 0, hips: 0, facing: 0, turned: 0, sway: 0 };
}

/** A dance as it moves: straight between the moments that the program gave. */
export class Motion {
  /** Height of the dancer in metres. */
  readonly height: number;
  /** From the ball of a foot to its heel, in metres. */
  readonly heelToBall: number;
  /** From hip to floor, in metres. */
  readonly leg: number;
  /** Where the left foot stood, in order. */
  readonly leftPrints: readonly Footprint[];
  /** Where the right foot stood, in order. */
  readonly rightPrints: readonly Footprint[];
  /** The ground of every wall, in order; one at least. */
  readonly walls: readonly WallGround[];
  /** What holds the ground of any wall, from edge to edge. */
  readonly across: number;
  readonly deep: number;

  private readonly leftPitch: Float32Array;
  private readonly rightPitch: Float32Array;
  private readonly sway: Float32Array;
  private readonly hips: Float32Array;
  private readonly last: number;

  /** @param floor What the program answered. */
  constructor(private readonly floor: FloorAnswer) {
    this.height = floor.height;
    this.heelToBall = floor.heelToBall;
    this.leg = floor.leg;
    this.last = floor.body.x.length - 1;
    this.leftPitch = pitches(floor.left, floor.perCount);
    this.rightPitch = pitches(floor.right, floor.perCount);
    this.sway = smooth(
      Float32Array.from(floor.body.weight, (w) => (w === 'L' ? -1 : w === 'R' ? 1 : 0)),
      Math.round(floor.perCount * SWAY_EASE),
    );
    const ease = Math.round(floor.perCount * HIPS_EASE);
    this.hips = mean(lowest(Float32Array.from(floor.body.hips), ease), ease);
    this.leftPrints = printsOf(floor, floor.left);
    this.rightPrints = printsOf(floor, floor.right);
    this.walls = groundsOf(floor);
    this.across = Math.max(...this.walls.map((w) => w.across));
    this.deep = Math.max(...this.walls.map((w) => w.deep));
  }

  /** Whether there is anything to draw. */
  get isEmpty(): boolean {
    return this.last < 0;
  }

  /** Fills in the dancer at a count; before the first and after the last moment stands what they give. */
  at(count: number, moment: Moment): void {
    const { floor } = this;
    if (this.last < 0) return;
    const place = Math.min(this.last, Math.max(0, (count - floor.first) * floor.perCount));
    // a count is looked up from seconds: it may miss the moment by a hair
    const i = Math.min(this.last, Math.floor(place + 1e-4));
    const j = Math.min(this.last, i + 1);
    const share = Math.max(0, place - i);
    const { body } = floor;
    const weight = body.weight[i];
    fillFoot(floor.left, this.leftPitch, i, j, share, moment.left);
    fillFoot(floor.right, this.rightPitch, i, j, share, moment.right);
    moment.left.carries = weight === 'L' || weight === 'B';
    moment.right.carries = weight === 'R' || weight === 'B';
    moment.x = mix(body.x, i, j, share) * MILLI;
    moment.y = mix(body.y, i, j, share) * MILLI;
    moment.hips = mix(this.hips, i, j, share) * MILLI;
    moment.facing = mix(body.facing, i, j, share) * TENTH;
    moment.turned = mix(body.turned, i, j, share) * TENTH;
    moment.sway = mix(this.sway, i, j, share);
  }

  /** The ground of the wall danced at a count. */
  wallAt(count: number): WallGround {
    const { walls } = this;
    let i = walls.length - 1;
    while (i > 0 && walls[i]!.from > count + 1e-4) i--;
    return walls[i]!;
  }

  /** How far the body is at one count from where it is at another: to the right and forward. */
  leap(from: number, to: number): [number, number] {
    const { x, y } = this.floor.body;
    const [i, j] = [from, to].map((count) =>
      Math.min(this.last, Math.max(0, Math.round((count - this.floor.first) * this.floor.perCount))),
    ) as [number, number];
    return this.last < 0 ? [0, 0] : [(x[j]! - x[i]!) * MILLI, (y[j]! - y[i]!) * MILLI];
  }

  /** Where the dance faces at a count, in radians clockwise from 12:00, not reduced. */
  facingAt(count: number): number {
    const { floor } = this;
    if (this.last < 0) return 0;
    const place = Math.min(this.last, Math.max(0, (count - floor.first) * floor.perCount));
    const i = Math.floor(place);
    return mix(floor.body.facing, i, Math.min(this.last, i + 1), place - i) * TENTH;
  }
}

function mix(values: ArrayLike<number>, i: number, j: number, share: number): number {
  const from = values[i]!;
  return from + (values[j]! - from) * share;
}

function fillFoot(foot: FloorFoot, pitch: Float32Array, i: number, j: number, share: number, now: FootNow): void {
  now.x = mix(foot.x, i, j, share) * MILLI;
  now.y = mix(foot.y, i, j, share) * MILLI;
  now.angle = mix(foot.angle, i, j, share) * TENTH;
  now.lift = mix(foot.lift, i, j, share) * MILLI;
  now.pitch = mix(pitch, i, j, share);
  now.contact = foot.contact[i] as Contact;
}

function pitches(foot: FloorFoot, perCount: number): Float32Array {
  const wanted = Float32Array.from(foot.contact, (c, i) =>
    c === 'a' ? Math.min(MOST_AIR_PITCH, foot.lift[i]! * MILLI * AIR_PITCH_PER_METRE) : PITCH[c as Contact],
  );
  return smooth(wanted, Math.round(perCount * PITCH_EASE));
}

// Twice the mean of the neighbours: no corner is left.
function smooth(values: Float32Array, reach: number): Float32Array {
  return mean(mean(values, reach), reach);
}

function lowest(values: Float32Array, reach: number): Float32Array {
  return values.map((_, i) => Math.min(...values.subarray(Math.max(0, i - reach), i + reach + 1)));
}

function mean(values: Float32Array, reach: number): Float32Array {
  return values.map((_, i) => {
    const from = Math.max(0, i - reach);
    const to = Math.min(values.length - 1, i + reach);
    let sum = 0;
    for (let k = from; k <= to; k++) sum += values[k]!;
    return sum / (to - from + 1);
  });
}

function printsOf(floor: FloorAnswer, foot: FloorFoot): Footprint[] {
  const prints: Footprint[] = [];
  const countOf = (i: number) => floor.first + i / floor.perCount;
  const isSame = (i: number, k: number) =>
    foot.x[i] === foot.x[k] && foot.y[i] === foot.y[k] && foot.angle[i] === foot.angle[k];
  let from = 0;
  for (let i = 0; i < foot.contact.length; i++) {
    if (foot.contact[i] === 'a') {
      from = i + 1;
      continue;
    }
    const goesOn = i + 1 < foot.contact.length && foot.contact[i + 1] !== 'a' && isSame(from, i + 1);
    if (goesOn) continue;
    if (i - from >= LEAST_STAND * floor.perCount) {
      prints.push({
        x: foot.x[from]! * MILLI,
        y: foot.y[from]! * MILLI,
        angle: foot.angle[from]! * TENTH,
        from: countOf(from),
        to: countOf(i),
      });
    }
    from = i + 1;
  }
  return prints;
}

function groundsOf(floor: FloorAnswer): WallGround[] {
  const starts = floor.stretches.filter((s) => s.startsWall).map((s) => ({ at: s.at, facing: angleOf(s.facing) }));
  if (starts.length === 0 || starts[0]!.at > floor.first)
    starts.unshift({ at: floor.first, facing: starts[0]?.facing ?? 0 });
  const last = floor.body.x.length - 1;
  const momentOf = (count: number) => Math.round((count - floor.first) * floor.perCount);
  return starts.map(({ at: from, facing }, i) => {
    const begin = Math.min(last, momentOf(from));
    const end = i + 1 < starts.length ? Math.min(last, momentOf(starts[i + 1]!.at)) : last;
    let [left, right, back, forward] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const foot of [floor.left, floor.right]) {
      for (let k = begin; k <= end; k++) {
        left = Math.min(left, foot.x[k]! * MILLI);
        right = Math.max(right, foot.x[k]! * MILLI);
        back = Math.min(back, foot.y[k]! * MILLI);
        forward = Math.max(forward, foot.y[k]! * MILLI);
      }
    }
    return last < 0
      ? { from, x: 0, y: 0, across: 0, deep: 0, facing }
      : { from, x: (left + right) / 2, y: (back + forward) / 2, across: right - left, deep: forward - back, facing };
  });
}

/** Radians of a clock time: `3:00` is a quarter turn; 0 where none is known. */
export function angleOf(facing: string | null): number {
  const [hours = NaN, minutes = 0] = facing?.split(':').map(Number) ?? [];
  return Number.isNaN(hours) ? 0 : ((hours % 12) + minutes / 60) * (Math.PI / 6);
}
