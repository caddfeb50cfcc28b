/** What a view shows: the dancer from close by, or all the ground of the wall danced. */
export type Framing = 'close' | 'wall';

const SETTLE_SECONDS = 0.7;
const NEAR_METRES = 0.002;
const NEAR_RADIANS = 0.002;
const FULL_TURN = 2 * Math.PI;

/** A point and a direction that go gently where they should. */
export class Camera {
  x = 0;
  y = 0;
  /** Radians clockwise from 12:00. */
  yaw = 0;
  private isPlaced = false;

  /**
   * Goes on.
   * @param seconds Time passed; zero goes nowhere.
   * @param isAtOnce Whether it may not move but only be there.
   * @returns Whether it is still on its way.
   */
  toward(x: number, y: number, yaw: number, seconds: number, isAtOnce: boolean): boolean {
    if (isAtOnce || !this.isPlaced) {
      this.x = x;
      this.y = y;
      this.yaw = yaw;
      this.isPlaced = true;
      return false;
    }
    const part = 1 - Math.exp(-seconds / SETTLE_SECONDS);
    this.x += (x - this.x) * part;
    this.y += (y - this.y) * part;
    // the short way round
    const turn = yaw - this.yaw - FULL_TURN * Math.round((yaw - this.yaw) / FULL_TURN);
    this.yaw += turn * part;
    return Math.hypot(x - this.x, y - this.y) > NEAR_METRES || Math.abs(turn) > NEAR_RADIANS;
  }

  /** Is taken along when the dance begins anew elsewhere, so that nothing is seen to leap but the floor; not further than so many metres. */
  shift([x, y]: [number, number], most: number): void {
    if (Math.hypot(x, y) > most) return;
    this.x += x;
    this.y += y;
  }

  /** Is put where it should be the next time. */
  forget(): void {
    this.isPlaced = false;
  }
}
