import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Player, type PlayedDance, type PlayerSurroundings } from './player';
import { CountTable, SteadyClock } from './player-clocks';

const DANCE: PlayedDance = { first: 0, length: 32, goesRound: true, stops: [2.5], eight: 8, ones: [0] };

/** The clock of the page: fake time. */
const now = () => performance.now() / 1000;

class FakeSource {
  buffer: { hertz: string } | null = null;
  onended: (() => void) | null = null;
  constructor(private readonly context: FakeContext) {}
  connect() {}
  disconnect() {}
  start(time: number) {
    this.context.struck.push({ time, samples: this.buffer as unknown as { first: Float32Array } });
    this.context.open.add(this);
    this.time = time;
  }
  time = 0;
  stop() {
    // what was not yet heard never will be
    if (this.time > this.context.currentTime) {
      this.context.struck = this.context.struck.filter((s) => s.time !== this.time);
    }
  }
}

/** An audio context whose time is that of the page, in the steps of real ones. */
class FakeContext {
  state = 'suspended';
  sampleRate = 8000;
  outputLatency = 0.02;
  baseLatency = 0;
  destination = {};
  struck: { time: number; samples: { first: Float32Array } }[] = [];
  open = new Set<FakeSource>();
  private since = 0;
  get currentTime(): number {
    return this.state === 'running' ? Math.floor((now() - this.since) * 344) / 344 : 0;
  }
  resume(): Promise<void> {
    if (this.state !== 'stuck') {
      this.state = 'running';
      this.since = now();
    }
    return Promise.resolve();
  }
  close = () => Promise.resolve();
  createGain = () => ({ connect() {}, gain: { value: 1 } });
  createBufferSource = () => new FakeSource(this);
  createBuffer = () => {
    const buffer = {
      first: new Float32Array(),
      copyToChannel: (s: Float32Array<ArrayBuffer>) => void (buffer.first = s),
    };
    return buffer;
  };
}

class FakeAudio extends EventTarget {
  paused = true;
  ended = false;
  playbackRate = 1;
  defaultPlaybackRate = 1;
  preservesPitch = false;
  refuses = false;
  seeks = 0;
  private at = 0;
  private since = 0;
  get currentTime(): number {
    return this.paused ? this.at : this.at + (now() - this.since) * this.playbackRate;
  }
  set currentTime(value: number) {
    this.at = value;
    this.since = now();
    this.seeks++;
  }
  play(): Promise<void> {
    if (this.refuses) return Promise.reject(new DOMException('', 'NotAllowedError'));
    if (this.paused) this.since = now();
    this.paused = false;
    return Promise.resolve();
  }
  pause(): void {
    if (this.paused) return;
    this.at = this.currentTime;
    this.paused = true;
    this.dispatchEvent(new Event('pause'));
  }
}

let context: FakeContext | null;

function make(dance: Partial<PlayedDance> = {}): Player {
  const around: PlayerSurroundings = { now, createContext: () => context as unknown as AudioContext | null };
  const player = new Player(around);
  player.setDance({ ...DANCE, ...dance });
  player.setTempo(120);
  return player;
}

function audio(): { element: FakeAudio; given: HTMLAudioElement } {
  const element = new FakeAudio();
  return { element, given: element as unknown as HTMLAudioElement };
}

beforeEach(() => {
  vi.useFakeTimers({
    toFake: ['setInterval', 'clearInterval', 'setTimeout', 'clearTimeout', 'performance', 'requestAnimationFrame'],
  });
  context = new FakeContext();
});

afterEach(() => {
  vi.useRealTimers();
});

describe('a table of counts', () => {
  const table = new CountTable([
    [0, 10],
    [4, 12],
    [8, 16],
  ]);

  it('is straight between its pairs and goes on beyond its ends at the last pace', () => {
    expect(table.secondsAt(2)).toBe(11);
    expect(table.secondsAt(6)).toBe(14);
    expect(table.secondsAt(-4)).toBe(8);
    expect(table.secondsAt(10)).toBe(18);
    expect(table.countAt(9)).toBe(-2);
    expect(table.countAt(18)).toBe(10);
  });

  it('finds back what it gave', () => {
    for (let count = -3; count < 12; count += 0.37)
      expect(table.countAt(table.secondsAt(count))).toBeCloseTo(count, 12);
  });

  it('takes no table that stands or goes back', () => {
    expect(() => new CountTable([[0, 1]])).toThrow(RangeError);
    expect(() => new CountTable([[0, 1], [1, 1]])).toThrow(/Pair 1/); // prettier-ignore
    expect(() => new CountTable([[0, 1], [0, 2]])).toThrow(/Pair 1/); // prettier-ignore
  });
});

describe('a steady clock', () => {
  it('is smooth over a clock that moves in steps, and stays near it', () => {
    let fine = 0;
    const clock = new SteadyClock(
      () => Math.floor(fine / 0.04) * 0.04,
      () => fine,
      () => 1,
    );
    let before = clock.read();
    let longest = 0;
    for (let i = 0; i < 600; i++) {
      fine += 1 / 60;
      const read = clock.read();
      expect(read).toBeGreaterThanOrEqual(before);
      expect(Math.abs(read - fine)).toBeLessThan(0.06);
      if (i > 60) longest = Math.max(longest, Math.abs(read - before - 1 / 60));
      before = read;
    }
    expect(longest).toBeLessThan(0.004);
  });

  it('stands where its source stands, and leaps with it', () => {
    let fine = 0;
    let source = 5;
    const clock = new SteadyClock(
      () => source,
      () => fine,
      () => 1,
    );
    clock.read();
    for (; fine < 1; fine += 0.016) clock.read();
    expect(clock.read()).toBe(5);
    source = 9;
    expect(clock.read()).toBe(9);
  });
});

describe('the playhead', () => {
  it('keeps to the clock of the sound however long it plays', () => {
    const player = make();
    player.play();
    vi.advanceTimersByTime(60_060);
    // the lead before the first click is 0.06 s and the sound is heard 0.02 s after its time
    expect(player.count()).toBeCloseTo((120 - 0.02 * 2) % 32, 1);
    vi.advanceTimersByTime(3_600_000);
    expect(Math.abs(player.count() - ((7320 - 0.04) % 32))).toBeLessThan(0.02);
  });

  it('goes by the page where the click is off', () => {
    const player = make();
    player.setClickOn(false);
    player.play();
    vi.advanceTimersByTime(2000);
    expect(player.count()).toBeCloseTo(4, 9);
    expect(context!.state).toBe('suspended');
  });

  it('moves at the speed asked for, from where it is', () => {
    const player = make();
    player.setClickOn(false);
    player.play();
    vi.advanceTimersByTime(2000);
    player.speed = 0.5;
    vi.advanceTimersByTime(2000);
    expect(player.count()).toBeCloseTo(6, 9);
    player.speed = 7;
    expect(player.speed).toBe(1.25);
    player.speed = 0;
    expect(player.speed).toBe(0.5);
  });

  it('goes round, and stands at the end of what does not', () => {
    const round = make();
    round.setClickOn(false);
    round.play();
    vi.advanceTimersByTime(17_000);
    expect(round.count()).toBeCloseTo(2, 9);
    round.pause();

    const once = make({ goesRound: false });
    once.setClickOn(false);
    once.play();
    vi.advanceTimersByTime(17_000);
    expect(once.count()).toBe(32);
    expect(once.playing).toBe(false);
    once.play();
    expect(once.count()).toBe(0);
  });

  it('dances a section again and again', () => {
    const player = make();
    player.setClickOn(false);
    player.loop = { from: 8, to: 12 };
    expect(player.count()).toBe(8);
    player.play();
    vi.advanceTimersByTime(2500);
    expect(player.count()).toBeCloseTo(9, 9);
    player.loop = null;
    vi.advanceTimersByTime(2000);
    expect(player.count()).toBeCloseTo(13, 9);
    player.loop = { from: 0, to: 4 };
    expect(player.count()).toBe(0);
  });

  it('steps from count to count over what is danced between, and round', () => {
    const player = make();
    player.seek(2);
    const told = vi.fn();
    player.subscribe(told);
    player.step(1);
    expect(player.count()).toBe(2.5);
    player.step(1);
    expect(player.count()).toBe(3);
    player.step(-1);
    expect(player.count()).toBe(2.5);
    expect(told).toHaveBeenCalledTimes(3);
    player.seek(31);
    player.step(1);
    expect(player.count()).toBe(0);
    player.step(-1);
    expect(player.count()).toBe(31);
    player.loop = { from: 4, to: 8 };
    player.step(-1);
    expect(player.count()).toBe(7);
    player.step(1);
    expect(player.count()).toBe(4);
  });

  it('steps to the end of what does not go round and no further', () => {
    const player = make({ goesRound: false, first: -1 });
    player.seek(31.5);
    player.step(1);
    player.step(1);
    expect(player.count()).toBe(32);
    player.seek(-0.5);
    player.step(-1);
    player.step(-1);
    expect(player.count()).toBe(-1);
  });

  it('stays where it is when the dance is changed under it', () => {
    const player = make();
    player.setClickOn(false);
    player.play();
    vi.advanceTimersByTime(5000);
    player.setDance({ ...DANCE, stops: [] });
    expect(player.count()).toBeCloseTo(10, 9);
    player.setDance({ ...DANCE, length: 8, goesRound: false });
    expect(player.count()).toBe(8);
  });
});

describe('clicks', () => {
  const strikes = () => [...context!.struck].sort((a, b) => a.time - b.time);

  it('fall on whole counts, evenly, the one on another wood', () => {
    const player = make();
    player.play();
    vi.advanceTimersByTime(6000);
    const times = strikes();
    expect(times.length).toBeGreaterThanOrEqual(12);
    for (let i = 1; i < 12; i++) expect(times[i]!.time - times[i - 1]!.time).toBeCloseTo(0.5, 6);
    const low = times[0]!.samples;
    expect(times.slice(0, 12).map((s) => s.samples === low)).toEqual(
      Array.from({ length: 12 }, (_, i) => i === 0 || i === 8),
    );
  });

  it('are given to the sound ahead of their time', () => {
    const player = make();
    const given: number[] = [];
    const { struck } = context!;
    struck.push = (...s) => {
      for (const x of s) given.push(x.time - context!.currentTime);
      return Array.prototype.push.apply(struck, s);
    };
    player.play();
    vi.advanceTimersByTime(4000);
    expect(given.length).toBeGreaterThan(6);
    expect(Math.min(...given)).toBeGreaterThan(0.04);
    expect(Math.max(...given)).toBeLessThan(0.2);
  });

  it('begin anew at one after a tag of four', () => {
    const player = make({ ones: [0, 4] });
    player.play();
    vi.advanceTimersByTime(6500);
    const low = strikes()[0]!.samples;
    expect(
      strikes()
        .slice(0, 13)
        .map((s) => s.samples === low),
    ).toEqual(Array.from({ length: 13 }, (_, i) => i === 0 || i === 4 || i === 12));
  });

  it('go by six in three-four', () => {
    const player = make({ eight: 6, length: 24 });
    player.play();
    vi.advanceTimersByTime(6500);
    const low = strikes()[0]!.samples;
    expect(
      strikes()
        .slice(0, 13)
        .map((s) => s.samples === low),
    ).toEqual(Array.from({ length: 13 }, (_, i) => i % 6 === 0));
  });

  it('stay even over the seam of a section', () => {
    const player = make();
    player.loop = { from: 8, to: 12 };
    player.play();
    vi.advanceTimersByTime(7000);
    const times = strikes();
    expect(times.length).toBeGreaterThanOrEqual(13);
    for (let i = 1; i < times.length; i++) expect(times[i]!.time - times[i - 1]!.time).toBeCloseTo(0.5, 6);
    const low = times[0]!.samples;
    expect(times.slice(0, 9).map((s) => s.samples === low)).toEqual(Array.from({ length: 9 }, (_, i) => i % 4 === 0));
  });

  it('are taken back when it stands', () => {
    const player = make();
    player.play();
    vi.advanceTimersByTime(1990);
    player.pause();
    const after = strikes().filter((s) => s.time > context!.currentTime);
    expect(after).toEqual([]);
    vi.advanceTimersByTime(2000);
    expect(strikes().length).toBeLessThanOrEqual(5);
  });

  it('count one eight in while the dancer waits', () => {
    const player = make();
    player.seek(4);
    player.countIn = true;
    player.play();
    vi.advanceTimersByTime(2200);
    expect(player.count()).toBe(3);
    expect(player.countingIn()).toBe(5);
    vi.advanceTimersByTime(1600);
    expect(player.count()).toBeCloseTo(3.5, 0);
    expect(player.countingIn()).toBe(8);
    vi.advanceTimersByTime(1400);
    expect(player.countingIn()).toBe(0);
    expect(player.count()).toBeGreaterThan(6);
    const times = strikes();
    for (let i = 1; i < times.length; i++) expect(times[i]!.time - times[i - 1]!.time).toBeCloseTo(0.5, 6);
  });

  it('count in before every round of a section when asked', () => {
    const player = make();
    player.countIn = true;
    player.countInEach = true;
    player.loop = { from: 8, to: 12 };
    player.play();
    // 60 ms until the sound begins, eight counts in, four danced
    vi.advanceTimersByTime(60 + 100 + 4000 + 1000);
    expect(player.countingIn()).toBe(0);
    expect(player.count()).toBeCloseTo(10, 0);
    vi.advanceTimersByTime(1000 + 250);
    expect(player.countingIn()).toBe(1);
    expect(player.count()).toBe(7);
    vi.advanceTimersByTime(4000);
    expect(player.countingIn()).toBe(0);
    expect(player.count()).toBeGreaterThan(8);
    expect(player.count()).toBeLessThan(9.5);
  });

  it('are not made up for after the page slept', () => {
    const player = make();
    player.play();
    vi.advanceTimersByTime(1000);
    const before = strikes().length;
    // timers do not run while the page sleeps, the sound's clock does
    const real = performance.now.bind(performance);
    vi.spyOn(performance, 'now').mockImplementation(() => real() + 20_000);
    vi.advanceTimersByTime(30);
    expect(strikes().length - before).toBeLessThanOrEqual(2);
    expect(player.count()).toBeCloseTo((42 - 0.1) % 32, 0);
    vi.restoreAllMocks();
  });

  it('are left out with a sentence where there is no sound, and the dance goes on', () => {
    context = null;
    const player = make();
    player.play();
    vi.advanceTimersByTime(2000);
    expect(player.trouble).toMatch(/no sound/);
    expect(player.count()).toBeCloseTo(4, 9);
  });

  it('are left out with a sentence where the sound does not start', () => {
    context!.state = 'stuck';
    const player = make();
    player.play();
    vi.advanceTimersByTime(3000);
    expect(player.trouble).toMatch(/did not start/);
    expect(player.count()).toBeGreaterThan(3);
  });
});

describe('a track', () => {
  const TABLE = [
    [0, 10],
    [16, 18],
    [48, 42],
  ] as const;

  it('carries the playhead, swing, drift and all', () => {
    const player = make({ length: 64, goesRound: false });
    const { element, given } = audio();
    player.setClickOn(false);
    player.setTrack(given, TABLE);
    expect(element.currentTime).toBe(10);
    player.play();
    vi.advanceTimersByTime(4000);
    expect(player.count()).toBeCloseTo(8, 6);
    vi.advanceTimersByTime(7000);
    expect(player.count()).toBeCloseTo(20, 6);
    player.seek(16);
    expect(element.currentTime).toBe(18);
    player.pause();
    expect(element.paused).toBe(true);
    expect(player.count()).toBeCloseTo(16, 6);
  });

  it('is played slower at its own pitch, also after it has been loaded anew', () => {
    const player = make();
    const { element, given } = audio();
    player.setTrack(given, TABLE);
    player.speed = 0.8;
    expect([element.playbackRate, element.preservesPitch]).toEqual([0.8, true]);
    element.playbackRate = 1;
    element.dispatchEvent(new Event('loadedmetadata'));
    expect(element.playbackRate).toBe(0.8);
    player.setClickOn(false);
    player.play();
    vi.advanceTimersByTime(5000);
    expect(player.count()).toBeCloseTo(8, 6);
  });

  it('is not put anywhere when only the speed changes', () => {
    const player = make();
    const { element, given } = audio();
    player.setTrack(given, TABLE);
    player.play();
    vi.advanceTimersByTime(1000);
    const { seeks } = element;
    player.speed = 0.9;
    player.setClickOn(false);
    player.setDance({ ...DANCE });
    expect(element.seeks).toBe(seeks);
  });

  it('is put back at the end of a section', () => {
    const player = make();
    const { element, given } = audio();
    player.setTrack(given, TABLE);
    player.loop = { from: 4, to: 8 };
    player.setClickOn(false);
    player.play();
    vi.advanceTimersByTime(2040);
    expect(player.count()).toBeLessThan(4.2);
    expect(element.currentTime).toBeLessThan(12.1);
  });

  it('goes on under a dance that comes again', () => {
    const player = make();
    const { element, given } = audio();
    player.setTrack(given, TABLE);
    player.setClickOn(false);
    player.play();
    vi.advanceTimersByTime(8000 + 18 * 750);
    expect(player.count()).toBeCloseTo(2, 6);
    player.seek(4);
    expect(element.currentTime).toBeCloseTo(18 + 20 * 0.75, 6);
  });

  it('has clicks laid over it where its counts are', () => {
    const player = make({ length: 64 });
    const { given } = audio();
    player.setTrack(given, TABLE);
    player.play();
    vi.advanceTimersByTime(12_000);
    const times = [...context!.struck].map((s) => s.time).sort((a, b) => a - b);
    for (let i = 4; i < 15; i++) expect(times[i]! - times[i - 1]!).toBeCloseTo(0.5, 1);
    for (let i = 18; i < 20; i++) expect(times[i]! - times[i - 1]!).toBeCloseTo(0.75, 1);
  });

  it('counts in with its own counts', () => {
    const player = make();
    const { element, given } = audio();
    player.setTrack(given, TABLE);
    player.countIn = true;
    player.play();
    expect(element.currentTime).toBeCloseTo(6, 6);
    vi.advanceTimersByTime(1600);
    expect(player.countingIn()).toBe(4);
    expect(player.count()).toBe(0);
    vi.advanceTimersByTime(3000);
    expect(player.count()).toBeCloseTo(1.2, 1);
  });

  it('stops the dance when somebody else stops it', () => {
    const player = make();
    const { element, given } = audio();
    player.setTrack(given, TABLE);
    player.play();
    vi.advanceTimersByTime(1000);
    element.pause();
    expect(player.playing).toBe(false);
  });

  it('that may not play says so', async () => {
    const player = make();
    const { element, given } = audio();
    element.refuses = true;
    player.setTrack(given, TABLE);
    player.play();
    await vi.advanceTimersByTimeAsync(1);
    expect(player.playing).toBe(false);
    expect(player.trouble).toMatch(/Press play once more/);
  });

  it('that cannot be read gives way to the click', () => {
    const player = make();
    const { element, given } = audio();
    player.setTrack(given, TABLE);
    player.play();
    element.dispatchEvent(new Event('error'));
    expect(player.hasTrack).toBe(false);
    expect(player.trouble).toMatch(/cannot play the track/);
    expect(player.playing).toBe(true);
  });
});

describe('frames', () => {
  it('come while it plays and stop when it stands', () => {
    const player = make();
    player.setClickOn(false);
    const counts: number[] = [];
    player.onFrame((count) => void counts.push(count));
    vi.advanceTimersByTime(200);
    expect(counts).toEqual([0]);
    player.play();
    vi.advanceTimersByTime(500);
    expect(counts.length).toBeGreaterThan(20);
    player.pause();
    vi.advanceTimersByTime(50);
    const { length } = counts;
    vi.advanceTimersByTime(500);
    expect(counts.length).toBe(length);
  });

  it('go on while a listener still moves', () => {
    const player = make();
    let left = 5;
    const end = player.onFrame(() => --left > 0);
    vi.advanceTimersByTime(500);
    expect(left).toBe(0);
    end();
    player.redraw();
    vi.advanceTimersByTime(100);
    expect(left).toBe(0);
  });
});

describe('two playheads', () => {
  const silent = () => new Player({ now, createContext: () => null });
  let hers: Player;
  let mine: Player;

  beforeEach(() => {
    hers = silent();
    mine = silent();
    for (const one of [hers, mine]) {
      one.setDance(DANCE);
      one.setClickOn(false);
    }
    hers.setTempo(96);
  });

  afterEach(() => {
    hers.close();
    mine.close();
  });

  /** What she said some time ago reaches the other now. */
  function tell(wayMs: number) {
    const { heading, inSeconds } = hers.heading();
    const at = now() + inSeconds;
    vi.advanceTimersByTime(wayMs);
    mine.join(heading, now() - at);
  }

  it('go together however long the way from one to the other is', () => {
    hers.seek(5);
    hers.play();
    vi.advanceTimersByTime(700);
    for (const way of [0, 40, 900, 25_000]) {
      tell(way);
      expect(mine.count()).toBeCloseTo(hers.count(), 9);
      vi.advanceTimersByTime(1234);
      expect(mine.count()).toBeCloseTo(hers.count(), 9);
    }
  });

  it('go round a section together, and stand together', () => {
    hers.loop = { from: 8, to: 16 };
    hers.speed = 0.8;
    hers.play();
    tell(30);
    for (let i = 0; i < 40; i++) {
      vi.advanceTimersByTime(777);
      expect(mine.count()).toBeCloseTo(hers.count(), 9);
    }
    expect(mine.loop).toEqual({ from: 8, to: 16 });
    hers.pause();
    tell(30);
    expect(mine.playing).toBe(false);
    expect(mine.count()).toBe(hers.count());
  });

  it('are counted in together', () => {
    hers.countIn = true;
    hers.play();
    vi.advanceTimersByTime(1500);
    tell(100);
    expect(hers.countingIn()).toBe(3);
    for (let i = 0; i < 30; i++) {
      expect(mine.countingIn()).toBe(hers.countingIn());
      expect(mine.count()).toBeCloseTo(hers.count(), 9);
      vi.advanceTimersByTime(313);
    }
    expect(mine.countingIn()).toBe(0);
  });

  it('go together with a track whose pace changes, as often as one tells', () => {
    const { element, given } = audio();
    hers.setTrack(given, [
      [0, 2],
      [16, 10],
      [32, 20],
    ]);
    hers.play();
    for (let i = 0; i < 14; i++) {
      vi.advanceTimersByTime(1000);
      tell(20);
      expect(Math.abs(mine.count() - hers.count())).toBeLessThan(0.05);
    }
    expect(element.paused).toBe(false);
    expect(hers.count()).toBeGreaterThan(20);
  });

  it('begin together although the sound of one needs a moment', () => {
    hers.close();
    hers = new Player({ now, createContext: () => context as unknown as AudioContext });
    hers.setDance(DANCE);
    hers.setTempo(120);
    hers.play();
    tell(10);
    vi.advanceTimersByTime(600);
    expect(Math.abs(mine.count() - hers.count())).toBeLessThan(0.02);
  });
});
