import { SteadyClock, type CountTable } from './player-clocks';

/** What moves the playhead on: places are counts that do not go round. */
export interface Drive {
  /** The place now. */
  place(): number;
  /**
   * Goes on from a place.
   * @param place Where.
   * @param isFresh Whether it stood before, so that nobody sees it begin a moment later.
   */
  start(place: number, isFresh: boolean): void;
  /** Stands still. */
  stop(): void;
  /** When a place is heard, on the clock of an audio context. */
  heardAt(place: number, context: AudioContext): number;
  /** Counts a second at a place. */
  paceAt(place: number): number;
  /** Seconds until it moves; 0 when it does. */
  begins(): number;
}

// Enough for the first click to be put on its time.
const LEAD_SECONDS = 0.06;

/** Seconds from a context's time until it is heard; zero where the browser does not tell. */
export function latencyOf(context: AudioContext): number {
  const told = context.outputLatency || context.baseLatency || 0;
  return Number.isFinite(told) ? told : 0;
}

/** Goes on at an even pace, by a clock. */
export class PaceDrive implements Drive {
  private from = 0;
  private since = 0;

  /**
   * @param heard Seconds on the clock of the context as they are heard, or on the page's own where nothing sounds.
   * @param context Whose clock it follows; null for the page's own.
   * @param pace Counts a second.
   */
  constructor(
    private readonly heard: () => number,
    private readonly context: AudioContext | null,
    private readonly pace: number,
  ) {}

  place(): number {
    return this.from + Math.max(0, this.heard() - this.since) * this.pace;
  }

  start(place: number, isFresh: boolean): void {
    this.from = place;
    this.since = this.context && isFresh ? this.context.currentTime + LEAD_SECONDS : this.heard();
  }

  stop(): void {
    // a clock needs no stopping
  }

  heardAt(place: number): number {
    return this.since + (place - this.from) / this.pace;
  }

  paceAt(): number {
    return this.pace;
  }

  begins(): number {
    return Math.max(0, this.since - this.heard());
  }
}

/** Follows a track. */
export class TrackDrive implements Drive {
  private readonly clock: SteadyClock;

  /**
   * @param element What plays it.
   * @param table Counts against its seconds.
   * @param fine The page's clock, in seconds.
   * @param refused Called when the browser does not let it play.
   */
  constructor(
    private readonly element: HTMLAudioElement,
    private readonly table: CountTable,
    fine: () => number,
    private readonly refused: () => void,
  ) {
    this.clock = new SteadyClock(
      () => element.currentTime,
      fine,
      () => (element.paused ? 0 : element.playbackRate),
    );
  }

  place(): number {
    return this.table.countAt(this.clock.read());
  }

  start(place: number): void {
    this.moveTo(place);
    this.element.play().catch((e: unknown) => {
      // a pause that came before the sound did is no refusal
      if (!(e instanceof DOMException && e.name === 'AbortError')) this.refused();
    });
  }

  stop(): void {
    this.element.pause();
  }

  heardAt(place: number, context: AudioContext): number {
    const ahead = (this.table.secondsAt(place) - this.clock.read()) / this.element.playbackRate;
    return context.currentTime - latencyOf(context) + ahead;
  }

  paceAt(place: number): number {
    const { table, element } = this;
    return element.playbackRate / (table.secondsAt(place + 0.5) - table.secondsAt(place - 0.5));
  }

  begins(): number {
    return 0;
  }

  /** Puts the track to a place, whether it plays or not. */
  moveTo(place: number): void {
    this.element.currentTime = Math.max(0, this.table.secondsAt(place));
    this.clock.reset();
  }
}
