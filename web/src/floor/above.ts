import { Camera, type Framing } from './camera';
import type { Colours } from './colours';
import { type Footprint, type FootNow, type Moment, type Motion, newMoment } from './motion';
import { BAR, BAR_BEHIND, CORE, FOREFOOT, HEEL, HEEL_END, type Outline, TOE, trace, WHOLE } from './sole';
import { type Rows, SPACING } from './views';

/** What is asked of the view from above. */
export interface AboveWishes {
  framing: Framing;
  rows: Rows;
  /** Whether the way of the last eight is shown. */
  trail: boolean;
  /** Whether nothing may glide. */
  isStill: boolean;
  /** Counts before this one leave no trail. */
  trailFrom: number;
}

/** Metres of floor that are shown from close by. */
const CLOSE = 1.3;

// Metres that stay free around the ground of a wall.
const AROUND = 0.36;

/** Pixels at the edges for the marks of the clock. */
export const EDGE = 46;

const BOARD = 0.24;
const BOARD_LENGTH = 2.2;

// Narrower than so many pixels, boards are drawn twice as wide: few lines.
const NARROW = 36;
const TRAIL_COUNTS = 8;
const TRAIL_ALPHA = 0.5;

// Parts of a foot's length.
const OUTLINE = 0.042;
const DASH = [0.085, 0.06];
const NO_DASH: number[] = [];

const SHOULDERS = 0.259;

class Soles {
  readonly fore: Path2D;
  readonly heel: Path2D;
  readonly toe: Path2D;
  readonly whole: Path2D;
  readonly core: Path2D;
  readonly bar: Path2D;

  constructor(mirror: 1 | -1) {
    const path = (outline: Outline) => {
      const made = new Path2D();
      trace(outline, made, mirror, -1);
      return made;
    };
    this.fore = path(FOREFOOT);
    this.heel = path(HEEL);
    this.toe = path(TOE);
    this.whole = path(WHOLE);
    this.core = path(CORE);
    this.bar = path(BAR);
  }
}

/** The dance seen from above: boards on one canvas, what moves on another. 12:00 is at the top. */
export class AboveView {
  private readonly still: CanvasRenderingContext2D;
  private readonly moving: CanvasRenderingContext2D;
  private readonly left = new Soles(-1);
  private readonly right = new Soles(1);
  private readonly now: Moment = newMoment();
  private readonly camera = new Camera();
  private motion: Motion | null = null;
  private colours: Colours | null = null;
  private width = 0;
  private height = 0;
  private dots = 1;
  private scale = 1;
  private shownX = NaN;
  private shownY = NaN;
  private shownScale = NaN;
  private before = NaN;

  /**
   * @param still The canvas of the boards.
   * @param moving The canvas over it.
   * @throws When the browser draws nothing on a canvas.
   */
  constructor(still: HTMLCanvasElement, moving: HTMLCanvasElement) {
    const [under, over] = [still.getContext('2d', { alpha: false }), moving.getContext('2d')];
    if (!under || !over) throw new Error('This browser gives no canvas to draw on.');
    this.still = under;
    this.moving = over;
  }

  /** Takes another dance; the camera goes there gently. */
  setMotion(motion: Motion | null): void {
    if (!this.motion) this.camera.forget();
    this.motion = motion;
    this.before = NaN;
  }

  /** Takes other colours. */
  setColours(colours: Colours): void {
    this.colours = colours;
    this.shownX = NaN;
  }

  /** Takes another size, in pixels of the page. */
  setSize(width: number, height: number, dots: number): void {
    this.width = width;
    this.height = height;
    this.dots = dots;
    for (const context of [this.still, this.moving]) {
      context.canvas.width = Math.max(1, Math.round(width * dots));
      context.canvas.height = Math.max(1, Math.round(height * dots));
    }
    this.shownX = NaN;
  }

  /**
   * Draws a moment.
   * @returns Whether the camera is still on its way.
   */
  draw(count: number, seconds: number, wishes: AboveWishes): boolean {
    const { motion, colours, now } = this;
    if (!colours || this.width === 0) return false;
    const isEmpty = !motion || motion.isEmpty;
    if (!isEmpty) motion.at(count, now);
    // a dance that begins anew elsewhere takes the camera along
    if (!isEmpty && this.before - count > 1) this.camera.shift(motion.leap(this.before, count), CLOSE);
    this.before = count;
    const moves = this.frame(count, seconds, wishes, isEmpty);
    this.boards(colours);

    const { moving } = this;
    moving.setTransform(1, 0, 0, 1, 0, 0);
    moving.clearRect(0, 0, moving.canvas.width, moving.canvas.height);
    if (isEmpty) return moves;
    const isAlone = wishes.rows.across * wishes.rows.deep === 1;
    if (wishes.trail && isAlone) {
      this.trail(motion.leftPrints, this.left, count, wishes.trailFrom, colours);
      this.trail(motion.rightPrints, this.right, count, wishes.trailFrom, colours);
    }
    for (let row = 0; row < wishes.rows.deep; row++) {
      for (let place = 0; place < wishes.rows.across; place++) {
        const x = (place - (wishes.rows.across - 1) / 2) * SPACING;
        const y = ((wishes.rows.deep - 1) / 2 - row) * SPACING;
        this.dancer(x, y, motion, colours);
      }
    }
    return moves;
  }

  private frame(count: number, seconds: number, wishes: AboveWishes, isEmpty: boolean): boolean {
    const { motion, width, height } = this;
    const wide = Math.max(80, width - 2 * EDGE);
    const high = Math.max(80, height - 2 * EDGE);
    const close = Math.min(wide, high) / CLOSE;
    if (isEmpty || !motion) {
      this.scale = close;
      return this.camera.toward(0, 0, 0, seconds, true);
    }
    const { across, deep } = wishes.rows;
    const more = (across - 1) * SPACING;
    const behind = (deep - 1) * SPACING;
    const near = Math.min(wide / (CLOSE + more), high / (CLOSE + behind));
    const whole = Math.min(
      near,
      wide / (motion.across + 2 * AROUND + more),
      high / (motion.deep + 2 * AROUND + behind),
    );
    // a small dance is shown whole without asking
    const isWhole = wishes.framing === 'wall' || whole === near;
    this.scale = isWhole ? whole : near;
    const middle = isWhole ? motion.wallAt(count) : this.now;
    return this.camera.toward(middle.x, middle.y, 0, seconds, wishes.isStill);
  }

  private boards(colours: Colours): void {
    const { still, camera, scale, width, height, dots } = this;
    if (camera.x === this.shownX && camera.y === this.shownY && scale === this.shownScale) return;
    this.shownX = camera.x;
    this.shownY = camera.y;
    this.shownScale = scale;
    still.setTransform(1, 0, 0, 1, 0, 0);
    still.fillStyle = colours.floor;
    still.fillRect(0, 0, still.canvas.width, still.canvas.height);
    still.setTransform(dots, 0, 0, dots, 0, 0);
    still.strokeStyle = colours.line;
    still.globalAlpha = 0.32;
    still.lineWidth = 1;
    still.beginPath();
    const halfWide = width / 2 / scale;
    const halfHigh = height / 2 / scale;
    const board = BOARD * scale < NARROW ? 2 * BOARD : BOARD;
    const first = Math.floor((camera.x - halfWide) / board);
    const last = Math.ceil((camera.x + halfWide) / board);
    for (let i = first; i <= last; i++) {
      const x = width / 2 + (i * board - camera.x) * scale;
      still.moveTo(x, 0);
      still.lineTo(x, height);
      // boards are laid so that no two ends meet
      const shift = ((((i * 0.382) % 1) + 1) % 1) * BOARD_LENGTH;
      const from = Math.floor((camera.y - halfHigh - shift) / BOARD_LENGTH);
      for (let y = from * BOARD_LENGTH + shift; y < camera.y + halfHigh; y += BOARD_LENGTH) {
        const at = height / 2 - (y - camera.y) * scale;
        still.moveTo(x, at);
        still.lineTo(x + board * scale, at);
      }
    }
    still.stroke();
    still.globalAlpha = 1;
  }

  private dancer(x: number, y: number, motion: Motion, colours: Colours): void {
    const { now } = this;
    this.body(x, y, motion, colours);
    // who stands is under who moves
    const rightIsUnder = now.right.carries && !now.left.carries;
    if (rightIsUnder) this.foot(now.right, this.right, true, x, y, motion, colours);
    this.foot(now.left, this.left, false, x, y, motion, colours);
    if (!rightIsUnder) this.foot(now.right, this.right, true, x, y, motion, colours);
  }

  // Places are set so that one is `unit` metres, y downwards.
  private place(x: number, y: number, angle: number, unit: number): void {
    const { moving, camera, scale, dots, width, height } = this;
    const size = unit * scale * dots;
    const sin = Math.sin(angle) * size;
    const cos = Math.cos(angle) * size;
    moving.setTransform(
      cos,
      sin,
      -sin,
      cos,
      (width / 2 + (x - camera.x) * scale) * dots,
      (height / 2 - (y - camera.y) * scale) * dots,
    );
  }

  private body(x: number, y: number, motion: Motion, colours: Colours): void {
    const { moving, now } = this;
    const half = (SHOULDERS * motion.height) / 2;
    this.place(now.x + x, now.y + y, now.facing + now.turned, 1);
    moving.strokeStyle = colours.soft;
    moving.fillStyle = colours.soft;
    moving.setLineDash(NO_DASH);
    moving.globalAlpha = 0.2;
    moving.lineCap = 'round';
    moving.lineWidth = 0.13;
    moving.beginPath();
    moving.moveTo(-half + 0.04, 0.025);
    moving.quadraticCurveTo(0, -0.05, half - 0.04, 0.025);
    moving.stroke();
    moving.globalAlpha = 0.8;
    // the nose
    moving.beginPath();
    moving.moveTo(-0.045, -0.235);
    moving.quadraticCurveTo(0, -0.25, 0.045, -0.235);
    moving.lineTo(0, -0.325);
    moving.closePath();
    moving.fill();
    moving.globalAlpha = 1;
  }

  private foot(
    foot: FootNow,
    soles: Soles,
    isRight: boolean,
    x: number,
    y: number,
    motion: Motion,
    colours: Colours,
  ): void {
    const { moving } = this;
    const length = motion.heelToBall / HEEL_END;
    moving.strokeStyle = colours.ink;
    moving.lineJoin = 'round';
    moving.lineWidth = OUTLINE;
    if (foot.contact === 'a') {
      // a little larger, as it is nearer to the eye
      this.place(foot.x + x, foot.y + y, foot.angle, length * (1 + 0.3 * foot.lift));
      moving.fillStyle = colours.floor;
      moving.globalAlpha = 0.75;
      moving.fill(soles.whole);
      moving.globalAlpha = 1;
      moving.setLineDash(DASH);
      moving.stroke(soles.whole);
      moving.setLineDash(NO_DASH);
      if (isRight) {
        moving.fillStyle = colours.ink;
        moving.fill(soles.core);
      }
      return;
    }
    this.place(foot.x + x, foot.y + y, foot.angle, length);
    moving.setLineDash(NO_DASH);
    const solid = isRight ? colours.ink : colours.paper;
    if (foot.contact === 'f') {
      this.part(soles.fore, solid);
      this.part(soles.heel, foot.carries ? colours.ink : colours.paper);
      return;
    }
    this.part(foot.contact === 'b' ? soles.fore : foot.contact === 't' ? soles.toe : soles.heel, solid);
    if (foot.carries) {
      moving.translate(0, BAR_BEHIND[foot.contact]);
      this.part(soles.bar, colours.ink);
    }
  }

  private part(path: Path2D, fill: string): void {
    const { moving } = this;
    moving.fillStyle = fill;
    moving.fill(path);
    moving.stroke(path);
  }

  private trail(prints: readonly Footprint[], soles: Soles, count: number, from: number, colours: Colours): void {
    const { moving, motion } = this;
    const length = motion!.heelToBall / HEEL_END;
    moving.strokeStyle = colours.soft;
    moving.lineWidth = 0.022;
    moving.lineJoin = 'round';
    moving.setLineDash(NO_DASH);
    for (const print of prints) {
      if (print.from > count) break;
      const age = count - print.to;
      if (age <= 0 || age >= TRAIL_COUNTS || print.to <= from) continue;
      moving.globalAlpha = TRAIL_ALPHA * (1 - age / TRAIL_COUNTS);
      this.place(print.x, print.y, print.angle, length);
      moving.stroke(soles.whole);
    }
    moving.globalAlpha = 1;
  }
}
