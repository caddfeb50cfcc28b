/** Tells the hall what is danced on this page, and where the playhead is. */
import { get, post, Trouble } from '../lib/api';
import type { CallQuestion, FloorQuestion, HallPlayhead, HallTime, HallTold } from '../lib/contract';
import type { Player } from '../lib/player';
import type { View } from '../floor/views';
import { HallClock } from './clock';

/** What is danced on this page. */
export interface Shown {
  title: string;
  eight: number;
  floor: FloorQuestion;
  /** What is called; null where nothing is. */
  calls: CallQuestion | null;
}

// Sound clocks and page clocks part by a few hundredths of a second in minutes; a track goes on at a pace of its own.
const AGAIN_MS = 1000;

// The sound may begin a moment after play was pressed.
const SETTLED_MS = [150, 500];

const SYNC_EVERY_MS = 10_000;

/** One page tells at a time, the one on which play was pressed last; what the others tell is not taken. */
export class HallTeller {
  readonly clock: HallClock;
  private leads = true;
  private takes = false;
  private isNewDance = true;
  private isBusy = false;
  private hasMore = false;
  private wasPlaying = false;
  private ends: (() => void)[] = [];

  /**
   * @param hand A name for this page.
   * @param player Its playhead.
   * @param shown What is danced now; null while nothing is.
   * @param view From where it is seen.
   */
  constructor(
    private readonly hand: string,
    private readonly player: Player,
    private readonly shown: () => Shown | null,
    private readonly view: () => View,
  ) {
    this.clock = new HallClock(async () => (await get<HallTime>('/hall/time')).now);
  }

  /** Whether the hall follows this page. */
  get isLeading(): boolean {
    return this.isTelling && this.leads;
  }

  /** Whether it tells. */
  get isTelling(): boolean {
    return this.ends.length > 0;
  }

  /**
   * Begins to tell.
   * @param takes Whether the hall follows this page from now on.
   */
  async start(takes: boolean): Promise<void> {
    if (takes) this.takes = true;
    if (!this.isTelling) {
      this.isNewDance = true;
      this.leads = true;
      this.wasPlaying = this.player.playing;
      this.clock.reset();
      const timers = [
        setInterval(() => {
          if (this.player.playing && this.leads) this.tell();
        }, AGAIN_MS),
        setInterval(() => void this.clock.sync(1).catch(() => {}), SYNC_EVERY_MS),
      ];
      this.ends = [this.player.subscribe(() => this.changed()), () => timers.forEach((t) => clearInterval(t))];
      await this.clock.sync(5).catch(() => {});
    }
    this.tell();
  }

  /** Tells no longer. */
  stop(): void {
    for (const end of this.ends) end();
    this.ends = [];
  }

  /** The dance, or what of it is shown, is another. */
  danced(): void {
    this.isNewDance = true;
    this.tell();
  }

  private changed(): void {
    const { playing } = this.player;
    // pressing play is what takes the hall
    if (playing && !this.wasPlaying) this.takes = true;
    this.wasPlaying = playing;
    this.tell();
    if (playing) for (const ms of SETTLED_MS) setTimeout(() => this.player.playing && this.tell(), ms);
  }

  /** Tells what is new; of what changes faster than it can be told, the latest. */
  tell(): void {
    if (!this.isTelling || !this.clock.isSet || !(this.leads || this.takes)) return;
    this.hasMore = true;
    if (!this.isBusy) void this.send();
  }

  private async send(): Promise<void> {
    this.isBusy = true;
    try {
      while (this.hasMore && this.isTelling) {
        this.hasMore = false;
        const { takes } = this;
        this.takes = false;
        const shown = this.shown();
        if (shown && (this.isNewDance || takes)) {
          this.isNewDance = false;
          await this.post('/hall/dance', { ...shown }, takes);
        }
        await this.post('/hall/playhead', { playhead: this.playhead() }, takes);
      }
    } catch (e) {
      this.isNewDance = true;
      // the hall is shut to this page; away is told again in a second
      if (e instanceof Trouble && e.status !== 0) this.stop();
    } finally {
      this.isBusy = false;
    }
  }

  private async post(path: string, body: object, takes: boolean): Promise<void> {
    const told = await post<HallTold>(path, { hand: this.hand, takes, ...body });
    this.leads = told.leads;
  }

  private playhead(): HallPlayhead {
    const { heading, inSeconds } = this.player.heading();
    return {
      at: this.clock.now() + inSeconds * 1000,
      count: heading.count,
      playing: heading.playing,
      pace: heading.pace,
      speed: this.player.speed,
      countIn: heading.countIn,
      waits: heading.waits,
      loopFrom: heading.loop?.from ?? null,
      loopTo: heading.loop?.to ?? null,
      view: this.view(),
    };
  }
}
