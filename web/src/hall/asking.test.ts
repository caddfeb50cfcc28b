import { beforeEach, describe, expect, it } from 'vitest';
import { Player } from '../lib/player';
import type { FloorAnswer, FloorSection } from '../lib/contract';
import lantern from '../floor/fixtures/tin-lantern.json';
import { Practice } from '../teach/practice.svelte';
import { answer, asked } from './asking';

const section = (at: number, wall: number, name: string): FloorSection => ({
  at,
  counts: 8,
  wall,
  kind: 'wall',
  name,
  title: '',
  lines: [],
});
const wall = (at: number, number: number, facing: string) => ({
  at,
  counts: 16,
  wall: number,
  kind: 'wall',
  name: '',
  facing,
  words: '',
  startsWall: true,
});

const floor = {
  ...(lantern as FloorAnswer),
  length: 32,
  goesRound: true,
  stretches: [wall(0, 1, '12:00'), wall(16, 2, '9:00')],
  sections: [
    section(0, 1, 'section 1'),
    section(8, 1, 'section 2'),
    section(16, 2, 'section 1'),
    section(24, 2, 'section 2'),
  ],
} as FloorAnswer;

let player: Player;
let practice: Practice;
let seen = '';

const ask = (a: ReturnType<typeof asked>, isTeaching = true) =>
  answer(a, { player, practice: isTeaching ? practice : null, see: (view) => (seen = view) });

beforeEach(() => {
  player = new Player({ now: () => performance.now() / 1000, createContext: () => null });
  practice = new Practice(player);
  practice.take(floor, 8);
});

describe('a remote', () => {
  it('plays, stops and sets the speed', () => {
    ask(asked('play'));
    expect(player.playing).toBe(true);
    ask(asked('stop'));
    expect(player.playing).toBe(false);
    ask(asked('speed', { number: 0.8 }));
    expect(player.speed).toBe(0.8);
    player.close();
  });

  it('goes over a section of any wall, and over all again', () => {
    ask(asked('section', { number: 24, to: 32 }));
    expect(player.loop).toEqual({ from: 24, to: 32 });
    expect(practice.now?.number).toBe(2);
    expect(practice.going).toEqual({ kind: 'span', first: 1, last: 1 });
    ask(asked('section'));
    expect(player.loop).toBeNull();
  });

  it('begins on another wall, calls less, looks otherwise', () => {
    ask(asked('wall', { number: 2 }));
    expect(player.count()).toBe(16);
    ask(asked('help', { word: 'warnings' }));
    expect(practice.help).toBe('warnings');
    ask(asked('view', { word: 'mirror' }));
    expect(seen).toBe('mirror');
  });

  it('asks a page that does not teach for what that can do', () => {
    ask(asked('section', { number: 8, to: 16 }), false);
    expect(player.loop).toEqual({ from: 8, to: 16 });
    ask(asked('help', { word: 'warnings' }), false);
    expect(practice.help).toBe('every-step');
  });

  it('and the lesson go over the lines that hold some counts of a wall', () => {
    practice.goOverCounts(2, 4, 10);
    expect(player.loop).toEqual({ from: 16, to: 32 });
    practice.goOverCounts(1, 8, 16);
    expect(player.loop).toEqual({ from: 8, to: 16 });
    practice.goOverCounts(1, 40, 48);
    expect(player.loop).toBeNull();
  });

  it('asks for nothing that is not there', () => {
    ask(asked('wall', { number: 9 }));
    ask(asked('help', { word: 'shouting' }));
    ask(asked('view', { word: 'below' }));
    ask(asked('dance'));
    expect([player.count(), practice.help, seen]).toEqual([0, 'every-step', 'mirror']);
  });
});
