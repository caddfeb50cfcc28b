/** Follows what is danced in the hall: a screen that shows it, and comes back by itself when it loses the network. */
import { get, post, Trouble } from '../lib/api';
import type { HallDance, HallMe, HallNews, HallPlayhead, HallTime } from '../lib/contract';
import { playedOf } from '../floor/steps';
import type { Player } from '../lib/player';
import { HallClock } from './clock';

/** How a screen stands with the hall. */
export type Following = 'opening' | 'strange' | 'following' | 'away' | 'shut';

const AGAIN_MS = [500, 1000, 2000, 3000];
const SYNC_EVERY_MS = 10_000;

// the program says every four seconds that it is there
const SILENT_MS = 10_000;
const LOOK_MS = 2000;

export class HallFollowing {
  standing = $state<Following>('opening');
  circle = $state<HallMe['circle']>('');
  dance = $state.raw<HallDance | null>(null);
  playhead = $state.raw<HallPlayhead | null>(null);
  /** A sentence of the program. */
  said = $state('');

  readonly clock = new HallClock(async () => (await get<HallTime>('/hall/time')).now);
  private stream: EventSource | null = null;
  private news: HallNews | null = null;
  private isFetching = false;
  private heardAt = 0;
  private tries = 0;
  private again: ReturnType<typeof setTimeout> | undefined;
  private readonly timers: ReturnType<typeof setInterval>[];

  /** @param player The playhead of this screen, which goes along with hers. */
  constructor(private readonly player: Player) {
    this.timers = [
      setInterval(() => {
        if (this.stream && performance.now() - this.heardAt > SILENT_MS) this.lost();
      }, LOOK_MS),
      setInterval(() => {
        if (this.stream) void this.clock.sync(1).catch(() => {});
      }, SYNC_EVERY_MS),
    ];
  }

  /** Looks whether this device was let in, and follows if it was. */
  async begin(): Promise<void> {
    clearTimeout(this.again);
    try {
      const me = await get<HallMe>('/hall/me');
      this.circle = me.circle;
      if (!me.isOpen) {
        this.standing = 'shut';
        this.later();
        return;
      }
      this.clock.reset();
      await this.clock.sync(6);
      this.follow();
    } catch (e) {
      if (e instanceof Trouble && e.status === 401) this.standing = 'strange';
      else {
        if (this.standing !== 'shut') this.standing = 'away';
        this.later();
      }
    }
  }

  /** Asks to be let in. */
  async pair(code: string): Promise<void> {
    this.said = '';
    try {
      const me = await post<HallMe>('/hall/pair', { code });
      this.circle = me.circle;
      await this.begin();
    } catch (e) {
      this.said =
        e instanceof Trouble && e.status !== 0
          ? e.message
          : 'The hall does not answer. Look whether this device is in the same Wi-Fi, and try again.';
    }
  }

  /** Tries at once: the device woke up, or has a network again. */
  wake(): void {
    if (this.standing === 'away' || this.standing === 'shut') void this.begin();
  }

  end(): void {
    this.stream?.close();
    this.stream = null;
    clearTimeout(this.again);
    this.timers.forEach((t) => clearInterval(t));
  }

  private follow(): void {
    this.stream?.close();
    this.heardAt = performance.now();
    const stream = (this.stream = new EventSource('/api/hall/follow'));
    stream.onmessage = (e: MessageEvent<string>) => {
      this.heard();
      this.take(JSON.parse(e.data) as HallNews);
    };
    stream.addEventListener('here', () => this.heard());
    stream.addEventListener('shut', () => {
      this.stream?.close();
      this.stream = null;
      this.standing = 'shut';
      this.dance = null;
      this.news = null;
      this.playhead = null;
      this.player.pause();
      this.later();
    });
    // the browser's own way back knows nothing of a hall that was shut and opened again
    stream.onerror = () => this.lost();
  }

  private heard(): void {
    this.heardAt = performance.now();
    this.tries = 0;
    this.standing = 'following';
  }

  private lost(): void {
    this.stream?.close();
    this.stream = null;
    if (this.standing === 'following') this.standing = 'away';
    this.later();
  }

  private later(): void {
    clearTimeout(this.again);
    const ms = AGAIN_MS[Math.min(this.tries++, AGAIN_MS.length - 1)]!;
    this.again = setTimeout(() => void this.begin(), ms);
  }

  private take(news: HallNews): void {
    this.news = news;
    if (news.dance && news.dance.number !== this.dance?.number) void this.fetchDance();
    else this.apply();
  }

  // What came meanwhile counts: the newest dance, then the newest place in it.
  private async fetchDance(): Promise<void> {
    if (this.isFetching) return;
    this.isFetching = true;
    try {
      while (this.news?.dance && this.news.dance.number !== this.dance?.number) {
        const dance = await get<HallDance>('/hall/dance');
        const isOther = dance.number !== this.dance?.number;
        this.dance = dance;
        this.player.setDance(playedOf(dance.floor, dance.eight));
        this.apply();
        // the program is a change behind its news only for a moment
        if (!isOther) break;
      }
    } catch {
      // the stream tells whether it is still there
    } finally {
      this.isFetching = false;
    }
  }

  private apply(): void {
    const now = this.news?.playhead ?? null;
    this.playhead = now;
    if (!now || !this.dance) return;
    const loop = now.loopFrom !== null && now.loopTo !== null ? { from: now.loopFrom, to: now.loopTo } : null;
    this.player.join(
      { count: now.count, playing: now.playing, pace: now.pace, countIn: now.countIn, waits: now.waits, loop },
      (this.clock.now() - now.at) / 1000,
    );
  }
}
