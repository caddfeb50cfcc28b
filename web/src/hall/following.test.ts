import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import floor from '../floor/fixtures/tin-lantern.json';
import type { HallNews } from '../lib/contract';
import { Player } from '../lib/player';
import { HallFollowing } from './following.svelte';

/** The stream of changes, in the hands of the test. */
class FakeStream extends EventTarget {
  static all: FakeStream[] = [];
  static get open() {
    return FakeStream.all.filter((s) => !s.isClosed);
  }
  onmessage: ((e: MessageEvent<string>) => void) | null = null;
  onerror: (() => void) | null = null;
  isClosed = false;
  constructor(readonly path: string) {
    super();
    FakeStream.all.push(this);
  }
  close() {
    this.isClosed = true;
  }
  tell(news: Partial<HallNews>) {
    const whole = { number: 1, dance: null, playhead: null, ...news };
    this.onmessage?.(new MessageEvent('message', { data: JSON.stringify(whole) }));
  }
}

let me: { status: number; isOpen: boolean } | null;
let dances: number;
let dance: number;
let player: Player;
let hall: HallFollowing;

const pass = (ms: number) => vi.advanceTimersByTimeAsync(ms);
const stream = () => FakeStream.open.at(-1)!;
const head = (count: number, playing: boolean) => ({
  at: performance.now(),
  count,
  playing,
  pace: 2,
  speed: 1,
  countIn: 0,
  waits: 0,
  loopFrom: null,
  loopTo: null,
  view: 'above',
});

beforeEach(() => {
  vi.useFakeTimers({
    toFake: ['setInterval', 'clearInterval', 'setTimeout', 'clearTimeout', 'performance', 'requestAnimationFrame'],
  });
  me = { status: 200, isOpen: true };
  dances = 0;
  dance = 1;
  FakeStream.all = [];
  vi.stubGlobal('EventSource', FakeStream);
  vi.stubGlobal('fetch', (path: string) => {
    if (!me) return Promise.reject(new TypeError('away'));
    if (path === '/api/hall/time') return Promise.resolve(Response.json({ now: performance.now() }));
    if (path === '/api/hall/dance') {
      dances++;
      return Promise.resolve(Response.json({ number: dance, title: 'Tin Lantern', eight: 8, floor }));
    }
    if (path === '/api/hall/pair') {
      me.status = 200;
      return Promise.resolve(Response.json({ circle: 'floor', isOpen: true }));
    }
    return Promise.resolve(
      Response.json({ circle: 'floor', isOpen: me.isOpen, sentence: 'No.' }, { status: me.status }),
    );
  });
  player = new Player({ now: () => performance.now() / 1000, createContext: () => null });
  hall = new HallFollowing(player);
});

afterEach(() => {
  hall.end();
  player.close();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test('a device that was let in shows the dance where it is', async () => {
  await hall.begin();
  stream().tell({ dance: { number: 1, title: 'Tin Lantern' }, playhead: head(4, true) });
  await pass(500);
  expect(hall.standing).toBe('following');
  expect(hall.dance?.title).toBe('Tin Lantern');
  expect(player.count()).toBeCloseTo(5, 6);
  stream().tell({ dance: { number: 1, title: 'Tin Lantern' }, playhead: head(9, false) });
  expect(player.playing).toBe(false);
  expect(player.count()).toBe(9);
  expect(dances).toBe(1);
});

test('a dance that changes while it is fetched is fetched again', async () => {
  await hall.begin();
  stream().tell({ number: 2, dance: { number: 1, title: 'a' } });
  dance = 2;
  stream().tell({ number: 3, dance: { number: 2, title: 'b' }, playhead: head(3, false) });
  await pass(10);
  expect(hall.dance?.number).toBe(2);
  expect(player.count()).toBe(3);
});

test('a stranger is asked for the code, and follows when it was right', async () => {
  me!.status = 401;
  await hall.begin();
  expect(hall.standing).toBe('strange');
  expect(FakeStream.all).toEqual([]);
  await hall.pair('123456');
  stream().tell({});
  expect(hall.standing).toBe('following');
});

test('it comes back by itself when the network was lost, and the dance goes on meanwhile', async () => {
  await hall.begin();
  stream().tell({ dance: { number: 1, title: 'a' }, playhead: head(0, true) });
  await pass(10);
  me = null;
  stream().onerror?.();
  await pass(2000);
  expect(hall.standing).toBe('away');
  expect(player.playing).toBe(true);
  expect(FakeStream.open).toEqual([]);
  me = { status: 200, isOpen: true };
  await pass(4000);
  stream().tell({ number: 9, dance: { number: 1, title: 'a' }, playhead: head(1, false) });
  expect(hall.standing).toBe('following');
  expect(player.count()).toBe(1);
  expect(FakeStream.open.length).toBe(1);
});

test('a network that is lost without a word is noticed by its silence', async () => {
  await hall.begin();
  stream().tell({});
  for (let i = 0; i < 5; i++) {
    await pass(4000);
    stream().dispatchEvent(new Event('here'));
  }
  expect(FakeStream.all.length).toBe(1);
  await pass(14_000);
  expect(FakeStream.all.length).toBeGreaterThan(1);
});

test('when the hall is shut it stands still, and asks for the new code when it is open again', async () => {
  await hall.begin();
  stream().tell({ dance: { number: 1, title: 'a' }, playhead: head(0, true) });
  await pass(10);
  me = null;
  stream().dispatchEvent(new Event('shut'));
  await pass(20_000);
  expect(hall.standing).toBe('shut');
  expect(hall.dance).toBeNull();
  expect(player.playing).toBe(false);
  me = { status: 401, isOpen: true };
  await pass(4000);
  expect(hall.standing).toBe('strange');
});
