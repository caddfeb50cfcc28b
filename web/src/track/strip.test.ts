import { describe, expect, it } from 'vitest';
import { sample } from './sample';
import { columns, landing, moved, scaleFor, seen, Strip } from './strip';
import { boxes, eightAt } from './tide';

describe('the strip of a track', () => {
  const strip = new Strip(100, 20);

  it('goes from seconds to pixels and back, and not beyond its ends', () => {
    expect(strip.xOf(12.5)).toBe(250);
    expect(strip.secondsOf(250)).toBe(12.5);
    expect(strip.secondsOf(-9)).toBe(0);
    expect(strip.secondsOf(99_999)).toBe(100);
  });

  it('stays where it is while the playhead is seen, and turns like a page when it leaves', () => {
    expect(strip.scrollTo(10, 0, 400)).toBeNull();
    expect(strip.scrollTo(17, 0, 400)).toBe(240);
    expect(strip.scrollTo(99.9, 0, 400)).toBe(1600);
    expect(strip.scrollTo(0, 900, 400)).toBe(0);
  });

  it('shows so many beats, and never less than fills the view', () => {
    const music = sample();
    expect(scaleFor(music, 640, 32)).toBeCloseTo(640 / 32 / 0.5, 9);
    expect(scaleFor(music, 640, 1000)).toBeCloseTo(640 / 31, 9);
  });

  it('finds the beats that are seen', () => {
    expect(seen([0, 1, 2, 3, 4], 1.5, 3)).toEqual([1, 4]);
    expect(seen([], 0, 9)).toEqual([0, 0]);
  });

  it('loses no hit between two columns', () => {
    const tops = columns([0, 0, 100, 0, 0, 0, 0, 0], 10, 0, 0.8, 2);
    expect([...tops]).toEqual([1, 0]);
    expect([...columns([50], 10, 0, 3, 3)]).toEqual([0.5, 0, 0]);
  });

  it('lands on a count 1, or on any beat when she asks for it', () => {
    const music = sample();
    expect(landing(music, music.beats[26]!, false)).toBe(24);
    expect(landing(music, music.beats[26]! + 0.1, true)).toBe(26);
    expect(landing(music, music.beats[50]! + 0.2, false)).toBe(52);
  });

  it('moves by an eight or a beat with the keys, also over a cut eight', () => {
    const music = sample();
    expect(moved(music, 40, 1, false)).toBe(48);
    expect(moved(music, 48, 1, false)).toBe(52);
    expect(moved(music, 52, 1, false)).toBe(52);
    expect(moved(music, 45, -1, false)).toBe(40);
    expect(moved(music, 40, -1, false)).toBe(32);
    expect(moved(music, 0, -1, true)).toBe(0);
    expect(moved(music, 40, 1, true)).toBe(41);
  });
});

describe('the tide', () => {
  it('puts every eight where its time is, with letters where sections begin', () => {
    const music = sample();
    const drawn = boxes(music, 310);
    expect(drawn.map((b) => b.letter)).toEqual(['A', '', 'B', '', '', '', '', 'A']);
    expect(drawn[2]!.x).toBeCloseTo(85, 9);
    expect(drawn[2]!.width).toBeCloseTo(40, 9);
    expect(drawn[6]!.isOdd).toBe(true);
    expect(drawn[0]!.loud).toBeLessThan(drawn[3]!.loud);
  });

  it('knows the eight that sounds', () => {
    const music = sample();
    expect(eightAt(music, 0)).toBe(-1);
    expect(eightAt(music, 8.6)).toBe(2);
    expect(eightAt(music, 99)).toBe(7);
  });
});
