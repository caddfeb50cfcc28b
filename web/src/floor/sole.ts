/**
 * Our sole, as on the printed sheet: its length is the unit, the origin is the middle of the ball, x to the right, y forward, drawn
 * for a right foot. Each list starts with a point; every six numbers after it are a curve: two handles and its end.
 */
export type Outline = readonly number[];

// prettier-ignore
/** The front part. */
export const FOREFOOT: Outline = [
  -0.10, -0.30,
  -0.12, -0.18, -0.19, -0.10, -0.18, 0.04,
  -0.175, 0.14, -0.16, 0.28, -0.06, 0.28,
  0.06, 0.28, 0.18, 0.14, 0.18, 0.0,
  0.18, -0.10, 0.12, -0.20, 0.115, -0.30,
  0.05, -0.27, -0.03, -0.27, -0.10, -0.30,
];

// prettier-ignore
/** The heel. */
export const HEEL: Outline = [
  -0.105, -0.41,
  -0.03, -0.385, 0.05, -0.385, 0.118, -0.41,
  0.135, -0.52, 0.13, -0.72, 0.005, -0.72,
  -0.12, -0.72, -0.125, -0.52, -0.105, -0.41,
];

// prettier-ignore
/** The tip. */
export const TOE: Outline = [
  -0.18, 0.08,
  -0.175, 0.17, -0.16, 0.28, -0.06, 0.28,
  0.04, 0.28, 0.15, 0.19, 0.172, 0.08,
  0.06, 0.12, -0.06, 0.12, -0.18, 0.08,
];

// prettier-ignore
/** All of it. */
export const WHOLE: Outline = [
  -0.10, -0.34,
  -0.12, -0.20, -0.19, -0.10, -0.18, 0.04,
  -0.175, 0.14, -0.16, 0.28, -0.06, 0.28,
  0.06, 0.28, 0.18, 0.14, 0.18, 0.0,
  0.18, -0.10, 0.12, -0.22, 0.118, -0.34,
  0.125, -0.47, 0.14, -0.72, 0.005, -0.72,
  -0.13, -0.72, -0.12, -0.47, -0.10, -0.34,
];

// prettier-ignore
/** What is solid in a right foot that is in the air. */
export const CORE: Outline = [
  -0.09, 0.0,
  -0.09, 0.10, -0.06, 0.17, -0.02, 0.17,
  0.04, 0.17, 0.10, 0.08, 0.10, -0.01,
  0.10, -0.08, 0.05, -0.16, 0.0, -0.16,
  -0.05, -0.16, -0.09, -0.08, -0.09, 0.0,
];

// prettier-ignore
/** The mark of weight on a part that is not the whole foot: a bar across, about its own middle. */
export const BAR: Outline = [
  -0.16, -0.05,
  -0.16, -0.05, 0.16, -0.05, 0.16, -0.05,
  0.16, -0.05, 0.16, 0.05, 0.16, 0.05,
  0.16, 0.05, -0.16, 0.05, -0.16, 0.05,
  -0.16, 0.05, -0.16, -0.05, -0.16, -0.05,
];

/** How far behind the ball that bar lies. */
export const BAR_BEHIND = { b: 0.45, t: 0.08, h: 0.24 } as const;

/** Where the heel ends: behind the ball, as a part of the length. */
export const HEEL_END = 0.72;

/** What a pen does. */
export interface Pen {
  moveTo(x: number, y: number): void;
  bezierCurveTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): void;
  closePath(): void;
}

/**
 * Draws an outline.
 * @param outline What.
 * @param pen With what.
 * @param mirror -1 for a left foot, 1 for a right one.
 * @param up -1 where y grows downwards, as on a screen; 1 where it grows forward.
 */
export function trace(outline: Outline, pen: Pen, mirror: 1 | -1, up: 1 | -1): void {
  pen.moveTo(outline[0]! * mirror, outline[1]! * up);
  for (let i = 2; i + 5 < outline.length; i += 6) {
    pen.bezierCurveTo(
      outline[i]! * mirror,
      outline[i + 1]! * up,
      outline[i + 2]! * mirror,
      outline[i + 3]! * up,
      outline[i + 4]! * mirror,
      outline[i + 5]! * up,
    );
  }
  pen.closePath();
}
