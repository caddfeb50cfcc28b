/** The clock that all devices of the hall go by, told from here. */

/** An answer of the program, and what the way to it and back took. */
interface Sample {
  /** Milliseconds there and back. */
  way: number;
  /** The hall's clock less this device's. */
  offset: number;
}

// Clocks of two devices part by less than a hundredth of a second in this many samples.
const KEPT = 12;

/**
 * Follows the hall's clock by asking for it. The answer whose way was shortest counts: the clock read in it stood somewhere within that
 * way, so the error is at most half of it, however slow the network is at other times. (Cristian 1989; the filter of NTP, RFC 5905, 10.)
 */
export class HallClock {
  private samples: Sample[] = [];
  private best: Sample | null = null;

  /**
   * @param ask Asks for the hall's clock, in milliseconds.
   * @param here This device's clock, in milliseconds.
   */
  constructor(
    private readonly ask: () => Promise<number>,
    private readonly here: () => number = () => performance.now(),
  ) {}

  /** Whether it is known. */
  get isSet(): boolean {
    return this.best !== null;
  }

  /** By how much it may be wrong, in milliseconds. */
  get error(): number {
    return this.best ? this.best.way / 2 : Infinity;
  }

  /** The hall's clock now, in milliseconds. */
  now(): number {
    return this.here() + (this.best?.offset ?? 0);
  }

  /** Asks a few times, one after the other. */
  async sync(times: number): Promise<void> {
    for (let i = 0; i < times; i++) {
      const asked = this.here();
      const told = await this.ask();
      const answered = this.here();
      this.samples.push({ way: answered - asked, offset: told - (asked + answered) / 2 });
      if (this.samples.length > KEPT) this.samples.shift();
      this.best = this.samples.reduce((a, b) => (b.way < a.way ? b : a));
    }
  }

  /** Begins anew: the program was started again, or this device slept. */
  reset(): void {
    this.samples = [];
  }
}
