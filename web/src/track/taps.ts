/** Taps along with the music: when they fell in the track. */

/** Taps further apart than this begin a new row: she has stopped and starts again. */
const REST_SECONDS = 6;

/** Fewer say nothing about a pace. */
export const FEWEST = 4;

/** Taps of one row. */
export class Taps {
  /** When they fell, in seconds of the track, rising. */
  readonly seconds: readonly number[];

  constructor(seconds: readonly number[] = []) {
    this.seconds = seconds;
  }

  /** One more; earlier ones are forgotten after a rest or a jump back in the track. */
  and(seconds: number): Taps {
    const last = this.seconds.at(-1);
    if (last === undefined) return new Taps([seconds]);
    if (seconds <= last || seconds - last > REST_SECONDS) return new Taps([seconds]);
    return new Taps([...this.seconds, seconds]);
  }

  /** Whether there are enough to say something by. */
  get isEnough(): boolean {
    return this.seconds.length >= FEWEST;
  }

  /** Taps a minute, by the middle of the gaps; 0 with fewer than two. */
  get perMinute(): number {
    const gaps = this.seconds.slice(1).map((s, i) => s - this.seconds[i]!);
    if (gaps.length === 0) return 0;
    gaps.sort((a, b) => a - b);
    return 60 / gaps[Math.floor(gaps.length / 2)]!;
  }
}
