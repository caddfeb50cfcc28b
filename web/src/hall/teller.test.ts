import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Player } from '../lib/player';
import { HallTeller, type Shown } from './teller';

interface Sent {
  path: string;
  body: { hand: string; takes: boolean; title?: string; playhead?: { count: number; playing: boolean; at: number } };
}

let sent: Sent[];
let leads: boolean;
let fails: number;
let player: Player;
let shown: Shown | null;
let teller: HallTeller;

const settle = () => vi.advanceTimersByTimeAsync(0);

beforeEach(() => {
  vi.useFakeTimers({
    toFake: ['setInterval', 'clearInterval', 'setTimeout', 'clearTimeout', 'performance', 'requestAnimationFrame'],
  });
  sent = [];
  leads = true;
  fails = 0;
  vi.stubGlobal('fetch', (path: string, asked: { body: string | null }) => {
    if (path === '/api/hall/time') return Promise.resolve(Response.json({ now: performance.now() + 5000 }));
    if (fails) return Promise.resolve(Response.json({ sentence: 'Shut.' }, { status: fails }));
    sent.push({ path: path.replace('/api/hall/', ''), body: JSON.parse(asked.body!) as Sent['body'] });
    return Promise.resolve(Response.json({ leads }));
  });
  player = new Player({ now: () => performance.now() / 1000, createContext: () => null });
  player.setDance({ first: 0, length: 32, goesRound: true, stops: [], eight: 8, ones: [0] });
  player.setTempo(120);
  player.setClickOn(false);
  shown = {
    title: 'Shown',
    eight: 8,
    floor: { text: 'Shown', track: null, height: null, ending: false, easier: false, plays: null },
    calls: null,
  };
  teller = new HallTeller(
    'hand',
    player,
    () => shown,
    () => 'above',
  );
});

afterEach(() => {
  teller.stop();
  player.close();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test('nothing is told before the hall is open', async () => {
  player.play();
  teller.danced();
  await vi.advanceTimersByTimeAsync(5000);
  expect(sent).toEqual([]);
});

test('who opens the hall tells the dance first, then the place, on the clock of the hall', async () => {
  player.seek(4);
  await teller.start(true);
  await settle();
  expect(sent.map((s) => [s.path, s.body.takes])).toEqual([
    ['dance', true],
    ['playhead', true],
  ]);
  expect(sent[1]!.body.playhead).toMatchObject({ count: 4, playing: false, at: performance.now() + 5000 });
});

test('every move is told, and while it plays the place again each second', async () => {
  await teller.start(true);
  await settle();
  sent = [];
  player.play();
  await vi.advanceTimersByTimeAsync(3050);
  const places = sent.filter((s) => s.path === 'playhead').map((s) => s.body.playhead!);
  expect(places.length).toBeGreaterThanOrEqual(5);
  for (const p of places) expect(p.count).toBeCloseTo((2 * (p.at - places[0]!.at)) / 1000, 6);
  player.pause();
  await settle();
  expect(sent.at(-1)!.body.playhead!.playing).toBe(false);
  const before = sent.length;
  await vi.advanceTimersByTimeAsync(5000);
  expect(sent.length).toBe(before);
});

test('a page that does not lead is silent until play is pressed on it', async () => {
  leads = false;
  await teller.start(false);
  await settle();
  sent = [];
  player.seek(8);
  teller.danced();
  await settle();
  expect(sent).toEqual([]);
  leads = true;
  player.play();
  await settle();
  expect(sent.map((s) => [s.path, s.body.takes])).toEqual([
    ['dance', true],
    ['playhead', true],
  ]);
});

test('a dance that was told is told again only when it changed', async () => {
  await teller.start(true);
  await settle();
  sent = [];
  player.seek(3);
  await settle();
  expect(sent.map((s) => s.path)).toEqual(['playhead']);
  teller.danced();
  await settle();
  expect(sent.map((s) => s.path)).toEqual(['playhead', 'dance', 'playhead']);
});

test('it ends when the hall is shut to it', async () => {
  await teller.start(true);
  await settle();
  fails = 401;
  player.play();
  await settle();
  expect(teller.isTelling).toBe(false);
});
