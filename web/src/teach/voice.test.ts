import { beforeEach, describe, expect, it } from 'vitest';
import { Voice } from './voice';

interface Said {
  words: string;
  rate: number;
  at: number;
  onstart?: () => void;
  onend?: () => void;
}

let clock = 0;
let said: Said[] = [];
let hushed = 0;

function make(): Voice {
  return new Voice({
    now: () => clock,
    utter: (words) => ({ words, rate: 1, at: NaN }) as unknown as SpeechSynthesisUtterance,
    synth: {
      speak: (u) => said.push(Object.assign(u as unknown as Said, { at: clock })),
      cancel: () => hushed++,
    },
  });
}

beforeEach(() => {
  clock = 0;
  said = [];
  hushed = 0;
});

/** Offers words whose move begins at a time, every 20 ms until they are taken; gives when that was. */
function until(voice: Voice, words: string, due: number, wished: number): number {
  for (;;) {
    if (voice.offer(words, due - clock, wished - clock)) return clock;
    clock += 0.02;
    if (clock > due + 5) throw new Error('never taken');
  }
}

describe('the voice', () => {
  it('begins when the program wished, where there is room', () => {
    const voice = make();
    expect(until(voice, 'box right', 4, 3)).toBeCloseTo(3, 1);
    expect(said.map((s) => s.rate)).toEqual([1]);
    expect(clock + voice.secondsOf('box right')).toBeLessThan(4);
  });

  it('begins earlier than wished for long words, and ends before the move', () => {
    const voice = make();
    const began = until(voice, 'rolling vine right with a touch', 4, 3.9);
    expect(began).toBeLessThan(3);
    expect(began + voice.secondsOf('rolling vine right with a touch')).toBeLessThanOrEqual(4);
  });

  it('waits while it speaks, and speaks faster where that makes it late', () => {
    const voice = make();
    until(voice, 'behind side cross', 2, 0.9);
    clock += 0.1;
    const began = until(voice, 'shuffle forward', 3, 0);
    expect(began).toBeGreaterThan(1);
    expect(said).toHaveLength(2);
    expect(said[1]!.rate).toBeGreaterThan(1);
    expect(said[1]!.rate).toBeLessThanOrEqual(1.5);
  });

  it('leaves out what would name a move that is danced already', () => {
    const voice = make();
    expect(voice.offer('a very long call that nobody could say in time', 0.2, -1)).toBe(true);
    expect(said).toEqual([]);
  });

  it('learns how fast this browser speaks', () => {
    const voice = make();
    const before = voice.secondsOf('coaster step');
    for (let i = 0; i < 12; i++) {
      clock += 10;
      voice.offer('coaster step', 3, 0);
      const utterance = said.at(-1)!;
      clock += 0.4;
      utterance.onstart!();
      clock += 1.8 / utterance.rate;
      utterance.onend!();
    }
    expect(voice.secondsOf('coaster step')).toBeGreaterThan(before + 0.8);
    expect(voice.secondsOf('coaster step')).toBeCloseTo(2.2, 0);
  });

  it('is silent at once', () => {
    const voice = make();
    voice.offer('box', 0.3, 0);
    voice.hush();
    expect(hushed).toBeGreaterThan(0);
  });
});
