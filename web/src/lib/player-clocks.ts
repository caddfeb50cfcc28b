/** Clocks that the playhead is looked up from. */

/** Counts of a dance against seconds of a track: straight between its pairs, and beyond its ends at the last pace. */
export class CountTable {
  private readonly counts: Float64Array;
  private readonly seconds: Float64Array;

  /**
   * @param pairs Counts and seconds, both rising.
   * @throws When there are fewer than two pairs or one does not rise.
   */
  constructor(pairs: readonly (readonly [number, number])[]) {
    if (pairs.length < 2) throw new RangeError('A table of counts needs two pairs at least.');
    this.counts = Float64Array.from(pairs, (p) => p[0]);
    this.seconds = Float64Array.from(pairs, (p) => p[1]);
    for (let i = 1; i < pairs.length; i++) {
      if (!(this.counts[i]! > this.counts[i - 1]! && this.seconds[i]! > this.seconds[i - 1]!)) {
        throw new RangeError(`Pair ${i} of the table of counts does not rise.`);
      }
    }
  }

  /** Seconds of the track at a count; below zero before the track begins. */
  secondsAt(count: number): number {
    return between(this.counts, this.seconds, count);
  }

  /** The count at a second of the track. */
  countAt(seconds: number): number {
    return between(this.seconds, this.counts, seconds);
  }
}

function between(from: Float64Array, to: Float64Array, at: number): number {
  let low = 0;
  let high = from.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (from[middle]! <= at) low = middle;
    else high = middle - 1;
  }
  const share = (at - from[low]!) / (from[low + 1]! - from[low]!);
  return to[low]! + share * (to[low + 1]! - to[low]!);
}

// Sound clocks tell their time in steps of up to some hundredths of a second, which the eye sees as stutter.
const SNAP_SECONDS = 0.05;
const STALL_SECONDS = 0.15;
const SETTLE_SECONDS = 0.3;

/**
 * A sound clock made smooth by a fine one: it runs on between the steps of the first, never further than 0.05 s from it, and
 * stands where that stands.
 */
export class SteadyClock {
  private value = NaN;
  private fineAt = 0;
  private coarse = NaN;
  private coarseAt = 0;

  /**
   * @param source The clock that is right, in seconds.
   * @param fine A clock that is smooth, in seconds.
   * @param rate Seconds of the source to a second of the fine one.
   */
  constructor(
    private readonly source: () => number,
    private readonly fine: () => number,
    private readonly rate: () => number,
  ) {}

  /** Seconds of the source, now. */
  read(): number {
    const fine = this.fine();
    const coarse = this.source();
    if (coarse !== this.coarse) {
      this.coarse = coarse;
      this.coarseAt = fine;
    }
    const passed = fine - this.fineAt;
    const guess = this.value + passed * this.rate();
    const off = coarse - guess;
    this.fineAt = fine;
    const stands = fine - this.coarseAt > STALL_SECONDS;
    if (stands || !(Math.abs(off) <= SNAP_SECONDS)) this.value = coarse;
    else this.value = Math.max(this.value, guess + off * (1 - Math.exp(-passed / SETTLE_SECONDS)));
    return this.value;
  }

  /** Forgets what it knew: the source has been put elsewhere. */
  reset(): void {
    this.value = NaN;
  }
}
