import { Clicks } from './clicks';
import { CountTable, SteadyClock } from './player-clocks';
import { latencyOf, PaceDrive, TrackDrive, type Drive } from './player-drives';
import { FrameLoop, type FrameListener } from './player-frames';

/** A stretch of danced counts; its end is not part of it. */
export interface Section {
  from: number;
  to: number;
}

/** What is danced, as far as the playhead needs to know it. */
export interface PlayedDance {
  /** Its first count; below zero with a pick-up. */
  first: number;
  /** Counts danced; where it ends. */
  length: number;
  /** Whether count 0 follows the end. */
  goesRound: boolean;
  /** Places where `step` stops, rising; whole counts are stops anyway. */
  stops: readonly number[];
  /** Counts after which the ones come again: 8, or 6 in three-four. */
  eight: number;
  /** Danced counts where counting begins anew at one, rising. */
  ones: readonly number[];
}

/** Where a playhead is and how it goes on: all that another needs to go along with it. */
export interface Heading {
  /** The danced count; where it will begin while a count-in is heard. */
  count: number;
  playing: boolean;
  /** Counts a second. */
  pace: number;
  /** Counts of the count-in it began with. */
  countIn: number;
  /** Counts of that still to be heard. */
  waits: number;
  loop: Section | null;
}

/** What the player needs from the page around it. */
export interface PlayerSurroundings {
  /** Seconds on a smooth clock that never goes back. */
  now(): number;
  /** Makes what sounds; null where the page gets no sound. */
  createContext(): AudioContext | null;
}

/** The slowest practice speed. */
export const SLOWEST = 0.5;

/** The fastest practice speed. */
export const FASTEST = 1.25;

/** Between one speed and the next. */
export const SPEED_STEP = 0.05;

const NO_SOUND = 'This browser gives the page no sound, so the dance moves without the click.';
const SILENT = 'The sound did not start, so the dance moves without the click. Press pause and play to try again.';
const REFUSED = 'The browser did not let the track play. Press play once more.';
const BROKEN = 'This browser cannot play the track, so the dance goes on without it.';

// Two places nearer than this are one; places come from sums of fractions of a count.
const NEAR = 1e-6;

const TICK_MS = 25;
const AHEAD_SECONDS = 0.1;

// A hidden page is woken about once a second only.
const HIDDEN_AHEAD_SECONDS = 1.7;
const LATE_SECONDS = 0.03;
const SOUND_START_MS = 1000;

const page: PlayerSurroundings = {
  now: () => performance.now() / 1000,
  createContext: () => {
    if (!('AudioContext' in globalThis)) return null;
    try {
      return new AudioContext({ latencyHint: 'interactive' });
    } catch {
      return null;
    }
  },
};

/**
 * The one playhead of the page, in danced counts. It is looked up from a clock whenever it is asked for: that of the click, or that
 * of a track. Nothing is added up, so it cannot drift from what is heard.
 */
export class Player {
  private readonly listeners = new Set<() => void>();
  private readonly frames = new FrameLoop(
    () => this.count(),
    () => this.playing,
  );

  private dance: PlayedDance = { first: 0, length: 0, goesRound: false, stops: [], eight: 8, ones: [0] };
  private track: { element: HTMLAudioElement; table: CountTable; stopHearing: AbortController } | null = null;
  private section: Section | null = null;
  private rate = 1;
  private countsPerMinute = 110;
  private hasClick = true;
  private hasCountIn = false;
  private countsInEach = false;
  private said: string | null = null;

  private context: AudioContext | null | undefined;
  private clicks: Clicks | null = null;
  private heard: SteadyClock | null = null;
  private isSilent = false;

  private drive: Drive | null = null;
  /** Where it stands while it does not play. */
  private held = 0;
  /** The place it danced from; before it a count-in is heard. */
  private start = 0;
  /** The place it was heard from. */
  private origin = 0;
  /** Rounds danced before, as counts; only a track goes on under a dance that comes again. */
  private base = 0;
  /** Clicks up to this place have been given to the sound. */
  private clicked = 0;
  private timer: ReturnType<typeof setInterval> | undefined;
  private soundTimer: ReturnType<typeof setTimeout> | undefined;

  /** @param around What it needs from the page; a test puts clocks of its own here. */
  constructor(private readonly around: PlayerSurroundings = page) {}

  /** Whether it plays. */
  get playing(): boolean {
    return this.drive !== null;
  }

  /** Where the dance ends. */
  get length(): number {
    return this.dance.length;
  }

  /** The first danced count; below zero with a pick-up. */
  get first(): number {
    return this.dance.first;
  }

  /** Whether it begins anew after its end. */
  get goesRound(): boolean {
    return this.dance.goesRound;
  }

  /** Why something is not as asked, in a sentence; null when all is well. */
  get trouble(): string | null {
    return this.said;
  }

  /** Practice speed, as a part of the full one. */
  get speed(): number {
    return this.rate;
  }

  set speed(value: number) {
    const rate = Math.min(FASTEST, Math.max(SLOWEST, Math.round(value * 100) / 100));
    if (rate === this.rate) return;
    this.rate = rate;
    if (this.track) this.setRate(this.track.element);
    this.restart();
    this.tell();
  }

  /** The section that is danced again and again; null for the whole dance. */
  get loop(): Section | null {
    return this.section;
  }

  set loop(value: Section | null) {
    const at = this.count();
    this.section = value && value.to - value.from > NEAR ? { from: value.from, to: value.to } : null;
    const { section } = this;
    if (section && (at < section.from - NEAR || at >= section.to - NEAR)) this.seek(section.from);
    else {
      this.restart(at);
      this.tell();
    }
  }

  /** Whether clicks are heard. */
  get clickOn(): boolean {
    return this.hasClick;
  }

  /** Whether one eight is clicked before the dance starts. */
  get countIn(): boolean {
    return this.hasCountIn;
  }

  set countIn(value: boolean) {
    this.hasCountIn = value;
    this.tell();
  }

  /** Whether the count-in comes before every round of a section, so that a class can find its places again. */
  get countInEach(): boolean {
    return this.countsInEach;
  }

  set countInEach(value: boolean) {
    this.countsInEach = value;
    this.restart();
    this.tell();
  }

  /** Counts a minute at full speed, where no track gives them. */
  get tempo(): number {
    return this.countsPerMinute;
  }

  /** Whether it follows a track. */
  get hasTrack(): boolean {
    return this.track !== null;
  }

  /** The count now. */
  count(): number {
    if (!this.drive) return this.held;
    // in a count-in the dancer waits a count before, so that she lands on the first as on every other
    const count = this.foldedOf(Math.max(this.drive.place(), this.start - Math.min(1, this.start - this.origin)));
    return Math.min(this.dance.length, Math.max(this.dance.first, count));
  }

  /** The count of the count-in that is heard now, from 1; 0 when the dance is danced. */
  countingIn(): number {
    if (!this.drive) return 0;
    const place = this.drive.place();
    return place < this.start - NEAR ? Math.floor(place - this.origin + NEAR) + 1 : 0;
  }

  /** Where it is, and in how many seconds it is there: the sound needs a moment to begin. */
  heading(): { heading: Heading; inSeconds: number } {
    const { drive, section } = this;
    const place = drive?.place() ?? this.held;
    const waits = drive ? Math.max(0, this.start - place) : 0;
    const heading = {
      count: waits > 0 ? this.start - this.base : this.count(),
      playing: drive !== null,
      pace: drive?.paceAt(place) ?? this.pace,
      countIn: drive ? this.start - this.origin : 0,
      waits,
      loop: section,
    };
    return { heading, inSeconds: drive?.begins() ?? 0 };
  }

  /**
   * Goes along with another playhead, without sound.
   * @param heading Where that is.
   * @param secondsAgo When it was there.
   */
  join(heading: Heading, secondsAgo: number): void {
    this.section = heading.loop && heading.loop.to - heading.loop.from > NEAR ? heading.loop : null;
    if (!heading.playing || !(heading.pace > 0)) {
      this.halt();
      this.held = this.within(heading.count);
      this.tell();
      return;
    }
    const place = heading.count - heading.waits + secondsAgo * heading.pace;
    const goesAlong = this.drive !== null;
    this.start = heading.count;
    this.origin = heading.count - heading.countIn;
    this.base = 0;
    this.rate = 1;
    this.countsPerMinute = heading.pace * 60;
    this.drive = new PaceDrive(this.around.now, null, heading.pace);
    this.drive.start(place, false);
    if (!goesAlong) this.wind();
    this.tell();
  }

  /** Takes another dance, or the same changed; the playhead stays as near as it can. */
  setDance(dance: PlayedDance): void {
    const at = this.count();
    const isAsLong = dance.length === this.dance.length && dance.goesRound === this.dance.goesRound;
    this.dance = dance;
    if (this.section && this.section.from >= dance.length) this.section = null;
    if (!this.drive) this.held = this.within(at);
    else if (isAsLong) this.restart();
    else this.restartAt(this.within(at));
    this.tell();
  }

  /** Sets the pace of the click. */
  setTempo(countsPerMinute: number): void {
    if (!(countsPerMinute > 0) || countsPerMinute === this.countsPerMinute) return;
    this.countsPerMinute = countsPerMinute;
    this.restart();
    this.tell();
  }

  /**
   * Follows a track from now on, or the click again.
   * @param element What plays it; null for the click.
   * @param table Counts and seconds of the track, both rising, two pairs at least.
   */
  setTrack(element: HTMLAudioElement | null, table: readonly (readonly [number, number])[] = []): void {
    const at = this.count();
    const wasPlaying = this.playing;
    this.halt();
    this.track?.stopHearing.abort();
    this.track = null;
    this.base = 0;
    this.said = null;
    if (element) {
      const stopHearing = new AbortController();
      this.track = { element, table: new CountTable(table), stopHearing };
      this.hear(element, stopHearing.signal);
      this.setRate(element);
    }
    this.held = at;
    if (wasPlaying) this.play();
    else {
      this.cueTrack();
      this.tell();
    }
  }

  /** Puts clicks on or off. */
  setClickOn(value: boolean): void {
    if (value === this.hasClick) return;
    this.hasClick = value;
    this.isSilent = false;
    this.said = null;
    this.clicks?.cancel();
    if (this.drive && value) this.wakeSound();
    this.restart();
    this.tell();
  }

  /** Plays, from the beginning when it stands at the end. */
  play(): void {
    if (this.drive || !(this.dance.length > this.dance.first)) return;
    this.said = null;
    this.isSilent = false;
    const { section } = this;
    if (section && (this.held < section.from - NEAR || this.held >= section.to - NEAR)) this.held = section.from;
    else if (this.held >= this.dance.length - NEAR) this.held = this.dance.goesRound ? 0 : this.dance.first;
    if (this.hasClick) this.wakeSound();
    this.startAt(this.held, this.hasCountIn ? this.dance.eight : 0, true);
    this.wind();
    this.tell();
  }

  /** Stands still. */
  pause(): void {
    if (!this.drive) return;
    this.halt();
    this.tell();
  }

  /** Plays or stands still. */
  toggle(): void {
    if (this.drive) this.pause();
    else this.play();
  }

  /** Goes to a count. */
  seek(count: number): void {
    const to = this.within(count);
    if (this.drive) this.restartAt(to);
    else {
      this.held = to;
      this.cueTrack();
    }
    this.tell();
  }

  /** Stands at the next (1) or the previous (-1) count that is danced. */
  step(way: 1 | -1): void {
    const at = this.count();
    this.halt();
    const [begin, end] = this.section ? [this.section.from, this.section.to] : [this.dance.first, this.dance.length];
    const wraps = this.section !== null || this.dance.goesRound;
    let to = this.stopBeside(at, way);
    if (way > 0 && wraps && to >= end - NEAR) to = this.section ? begin : 0;
    else if (way > 0 && to > end) to = end;
    if (way < 0 && to < begin - NEAR) to = wraps ? this.stopBeside(end, -1) : begin;
    this.held = to;
    this.cueTrack();
    this.tell();
  }

  /** Goes one step slower. */
  slower(): void {
    this.speed -= SPEED_STEP;
  }

  /** Goes one step faster. */
  faster(): void {
    this.speed += SPEED_STEP;
  }

  /** Calls back after every change that is not the passing of time; returns how to end that. */
  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Calls back in every animation frame while something moves, and once after every change; returns how to end that. */
  onFrame(listener: FrameListener): () => void {
    return this.frames.add(listener);
  }

  /** Asks for one frame. */
  redraw(): void {
    this.frames.wake();
  }

  /** Gives back what it holds of the browser. */
  close(): void {
    this.halt();
    this.track?.stopHearing.abort();
    this.track = null;
    void this.context?.close();
    this.context = undefined;
    this.clicks = null;
  }

  private tell(): void {
    for (const listener of this.listeners) listener();
    this.frames.wake();
  }

  private within(count: number): number {
    return Math.min(this.dance.length, Math.max(this.dance.first, count));
  }

  private stopBeside(at: number, way: 1 | -1): number {
    let to = way > 0 ? Math.floor(at + NEAR) + 1 : Math.ceil(at - NEAR) - 1;
    for (const stop of this.dance.stops) {
      if (way > 0 && stop > at + NEAR && stop < to) to = stop;
      if (way < 0 && stop < at - NEAR && stop > to) to = stop;
    }
    return to;
  }

  // A section is danced again and again only by who has not gone past it.
  private get loops(): Section | null {
    return this.section && this.start - this.base < this.section.to - NEAR ? this.section : null;
  }

  // Whether each round of a section has a count-in of its own.
  private get isLed(): boolean {
    return this.hasCountIn && this.countsInEach;
  }

  private foldedOf(place: number): number {
    const count = place - this.base;
    const { loops, dance } = this;
    if (loops && this.isLed) return Math.min(count, loops.to - NEAR);
    if (loops) return count < loops.to ? count : loops.from + ((count - loops.from) % (loops.to - loops.from));
    return dance.goesRound && count >= dance.length ? count % dance.length : count;
  }

  private get pace(): number {
    return (this.countsPerMinute / 60) * this.rate;
  }

  private startAt(count: number, lead: number, isFresh: boolean): void {
    this.start = count + this.base;
    this.origin = this.start - lead;
    const { track } = this;
    if (track) {
      // the track is its own count-in, as far as there is any of it before
      const beginning = Math.min(this.start, track.table.countAt(0));
      this.origin = Math.max(this.origin, beginning);
      this.drive = new TrackDrive(track.element, track.table, this.around.now, () => this.giveUp(REFUSED));
    } else {
      const { sound, heard, around } = this;
      this.drive = new PaceDrive(sound && heard ? () => heard.read() : around.now, sound, this.pace);
    }
    this.clicked = this.origin - 2 * NEAR;
    this.drive.start(this.origin, isFresh);
    this.strike();
  }

  // Something about the time or the clicks is not as before; where it is stays.
  private restart(at = this.count()): void {
    if (!this.drive) return;
    const place = this.drive.place();
    const countsIn = place < this.start - NEAR;
    if (this.drive instanceof TrackDrive) {
      // putting a track to where it is already would be heard
      this.clicks?.cancel();
      if (!countsIn) this.start = place;
      this.clicked = place;
      this.strike();
    } else if (countsIn) {
      // in the middle of a count-in it is counted in anew
      this.restartAt(this.start - this.base, this.start - this.origin);
    } else this.restartAt(at);
  }

  private restartAt(count: number, lead = 0): void {
    this.clicks?.cancel();
    this.keepRound();
    this.startAt(count, lead, false);
  }

  private halt(): void {
    if (!this.drive) return;
    this.held = this.count();
    this.keepRound();
    const { drive } = this;
    this.drive = null;
    drive.stop();
    this.clicks?.cancel();
    clearInterval(this.timer);
    clearTimeout(this.soundTimer);
    if (typeof document !== 'undefined') document.removeEventListener('visibilitychange', this.cameBack);
  }

  private wind(): void {
    this.timer = setInterval(() => this.tick(), TICK_MS);
    if (typeof document !== 'undefined') document.addEventListener('visibilitychange', this.cameBack);
  }

  private keepRound(): void {
    if (this.drive instanceof TrackDrive && this.dance.goesRound && !this.loops) {
      this.base = Math.max(0, Math.floor(this.drive.place() / this.dance.length) * this.dance.length);
    }
  }

  private giveUp(sentence: string): void {
    this.halt();
    this.said = sentence;
    this.tell();
  }

  private readonly cameBack = (): void => {
    this.tick();
    this.frames.wake();
  };

  private tick(): void {
    if (!this.drive) return;
    const place = this.drive.place();
    const { loops } = this;
    if (loops) {
      // a track has to be put back, and so has who is counted in; else the click's clock goes on and is folded
      if ((this.track || this.isLed) && place - this.base >= loops.to) {
        this.restartAt(loops.from, this.isLed ? this.dance.eight : 0);
        if (this.isLed) this.tell();
      }
    } else if (!this.dance.goesRound && place - this.base >= this.dance.length - NEAR) {
      this.halt();
      this.held = this.dance.length;
      this.tell();
      return;
    }
    this.strike();
  }

  private get sound(): AudioContext | null {
    return this.hasClick && !this.isSilent ? (this.context ?? null) : null;
  }

  private wakeSound(): void {
    if (this.context === undefined) {
      this.context = this.around.createContext();
      const made = this.context;
      if (made) {
        this.clicks = new Clicks(made);
        this.heard = new SteadyClock(
          () => made.currentTime - latencyOf(made),
          this.around.now,
          () => 1,
        );
      }
    }
    const { context } = this;
    if (!context) {
      this.said = NO_SOUND;
      return;
    }
    if (context.state === 'running') return;
    context.resume().catch(() => undefined);
    clearTimeout(this.soundTimer);
    this.soundTimer = setTimeout(() => {
      if (!this.drive || context.state === 'running') return;
      this.isSilent = true;
      this.said = SILENT;
      this.restart();
      this.tell();
    }, SOUND_START_MS);
  }

  private strike(): void {
    const { drive, clicks, sound } = this;
    if (!drive || !clicks || !sound) return;
    const isHidden = typeof document !== 'undefined' && document.hidden;
    const ahead = latencyOf(sound) + (isHidden ? HIDDEN_AHEAD_SECONDS : AHEAD_SECONDS);
    // after a sleep what was missed is not made up for
    this.clicked = Math.max(this.clicked, drive.place() - 2);
    for (;;) {
      const next = this.wholeAfter(this.clicked);
      const time = drive.heardAt(next, sound);
      if (!(time < sound.currentTime + ahead)) return;
      if (time >= sound.currentTime - LATE_SECONDS) clicks.strike(time, this.isOne(next));
      this.clicked = next;
    }
  }

  // The next place of a whole count; Infinity after the end.
  private wholeAfter(place: number): number {
    if (place < this.start - NEAR) {
      const next = this.origin + Math.floor(place - this.origin + NEAR) + 1;
      if (next < this.start - NEAR) return next;
      place = this.start - 2 * NEAR;
    }
    const { loops, dance } = this;
    const past = place + NEAR;
    const count = this.foldedOf(past);
    const next = Math.floor(count) + 1;
    const end = loops ? loops.to : dance.length;
    if (next < end - NEAR) return past + (next - count);
    if ((loops && (this.track || this.isLed)) || !(loops || dance.goesRound)) return Infinity;
    const begin = loops ? loops.from : 0;
    return past + (end - count) + (Math.ceil(begin - NEAR) - begin);
  }

  private isOne(place: number): boolean {
    const { eight, ones } = this.dance;
    if (place < this.start - NEAR) return Math.round(place - this.origin) % eight === 0;
    const count = Math.round(this.foldedOf(place + NEAR));
    let since = ones[0] ?? 0;
    for (const one of ones) {
      if (one > count + NEAR) break;
      since = one;
    }
    return Math.round(count - since) % eight === 0;
  }

  private setRate(element: HTMLAudioElement): void {
    element.preservesPitch = true;
    // loading puts the rate back to the default one
    element.defaultPlaybackRate = this.rate;
    element.playbackRate = this.rate;
  }

  private cueTrack(): void {
    const { track } = this;
    if (track) track.element.currentTime = Math.max(0, track.table.secondsAt(this.held + this.base));
  }

  private hear(element: HTMLAudioElement, signal: AbortSignal): void {
    const stand = () => {
      // the event of an earlier pause may come when it plays again
      if (this.drive instanceof TrackDrive && (element.paused || element.ended)) this.pause();
    };
    element.addEventListener('pause', stand, { signal });
    element.addEventListener('ended', stand, { signal });
    element.addEventListener('loadedmetadata', () => this.setRate(element), { signal });
    element.addEventListener(
      'error',
      () => {
        this.setTrack(null);
        this.said = BROKEN;
        this.tell();
      },
      { signal },
    );
  }
}
